import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cursorAtEnd,
  entryOf,
  isBegun,
  keptEntry,
  cursorMoved,
  newEntry,
  redone,
  removed,
  rested,
  step,
  taken,
  tapped,
  undone,
  type Entry,
} from '../../src/making/entry.ts';
import { readEntry, writeEntry } from '../../src/making/entryDocument.ts';
import { explained } from '../../src/making/explained.ts';
import {
  readUpToNow,
  changed,
  oddTime,
  readText,
  textOf,
  writtenPhrase,
} from '../../src/making/reading.ts';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import type { Place } from '../../src/neck/place.ts';
import { chordOn } from '../../src/theory/chord.ts';
import {
  articulate,
  byOctaves,
  lengthen,
  phraseOf,
  restAfter,
  sketchOf,
} from '../../src/theory/editing.ts';
import { beats } from '../../src/theory/rhythm.ts';

const B_FLAT = { key: { tonic: 'Bb', scale: 'major' }, instrument: GUITAR } as const;
const NEW = newEntry(72);
const TAB = [
  'e|-------3-6-3---|',
  'B|-----4-------4-|',
  'G|---5-----------|',
  'D|---------------|',
  'A|---------------|',
  'E|---------------|',
].join('\n');

const at = (string: number, fret: number): Place => ({ string, fret });
const CHORD = [at(3, 5), at(2, 4), at(1, 3)];
const tapAll = (entry: Entry, places: readonly Place[]) =>
  places.reduce((now, place) => tapped(now, place, B_FLAT), entry);
const names = (entry: Entry) =>
  writtenPhrase(entry.sketch, B_FLAT)
    .notes.map(({ name }) => name)
    .join(' ');

describe('a phrase that is begun', () => {
  it('has nothing said of it yet, and triplets to be written at its end', () => {
    expect(NEW).toEqual({
      sketch: { tempo: 72, lead: beats(0), notes: [] },
      rulings: [],
      cursor: { on: 'gap', at: 0 },
      undo: [],
      redo: [],
      text: null,
      length: beats(1, 3),
      hand: null,
      of: null,
    });
  });

  it('of the lesson goes on with what was said of it, in notes as long as its last', () => {
    const phrase = phraseOf(lengthen(tapAll(NEW, CHORD).sketch, 2, beats(1)));
    const rulings = [{ span: [0, 3] as const }];
    const entry = entryOf(phrase, rulings, 4, 'open strings');
    expect(entry).toMatchObject({ rulings, length: beats(1), hand: 'open strings', of: 4 });
    expect(entry.cursor).toEqual({ on: 'gap', at: 3 });
    expect(entryOf(phrase, [], 0).hand).toBeNull();
  });

  it('is shown in bars of four beats, and read in them', () => {
    const quarters = Array.from({ length: 9 }, (_, i) => at(1, i + 1));
    const entry = tapAll({ ...NEW, length: beats(1) }, quarters);
    const text = textOf(explained(writtenPhrase(entry.sketch, B_FLAT), B_FLAT));
    const top = text.split('\n').find((row) => row.includes('|'))!;
    const bars = top
      .slice(top.indexOf('|') + 1)
      .split('|')
      .map((bar) => bar.match(/\d+/g) ?? []);
    expect(bars.slice(0, 3).map((notes) => notes.map(Number))).toEqual([
      [1, 2, 3, 4],
      [5, 6, 7, 8],
      [9],
    ]);
  });
});

describe('tapping the neck', () => {
  const three = tapAll(NEW, CHORD);

  it('writes notes of the chosen length, one after the other', () => {
    expect(names(three)).toBe('C Eb G');
    expect(phraseOf(three.sketch).notes.map((note) => note.at)).toEqual([
      beats(0),
      beats(1, 3),
      beats(2, 3),
    ]);
    const eighths = tapAll({ ...three, length: beats(1, 2) }, [at(1, 6)]);
    expect(eighths.sketch.notes.at(-1)!.length).toEqual(beats(1, 2));
  });

  it('inserts where the cursor stands, and moves the note that it is on', () => {
    const between = { ...three, cursor: { on: 'gap', at: 1 } } as const;
    const inserted = tapAll(between, [at(3, 7), at(2, 3)]);
    expect(names(inserted)).toBe('C D D Eb G');
    const second = { ...three, cursor: { on: 'note', at: 1 } } as const;
    expect(names(tapAll(second, [at(2, 6)]))).toBe('C F G');
    expect(tapAll(second, [at(2, 6)]).cursor).toEqual({ on: 'note', at: 1 });
  });

  it('rests after the cursor, and takes a rest out before a note', () => {
    const rest = rested(three);
    expect(restAfter(rest.sketch, 2)).toEqual(beats(1, 3));
    expect(restAfter(rested(rest).sketch, 2)).toEqual(beats(2, 3));
    expect(removed(rest).sketch).toEqual(three.sketch);
    expect(names(removed(three))).toBe('C Eb');
    expect(rested({ ...three, cursor: { on: 'gap', at: 0 } }).sketch.lead).toEqual(beats(1, 3));
  });

  it('has its cursor go from note to note and to the end', () => {
    const first = { ...three, cursor: cursorMoved(three, -1) };
    expect(first.cursor).toEqual({ on: 'note', at: 2 });
    expect(cursorMoved(first, 1)).toEqual(cursorAtEnd(three.sketch));
    expect(cursorMoved({ ...three, cursor: { on: 'note', at: 0 } }, -1)).toEqual({
      on: 'note',
      at: 0,
    });
    expect(cursorMoved({ ...three, cursor: { on: 'gap', at: 1 } }, 1)).toEqual({
      on: 'note',
      at: 1,
    });
    expect(removed({ ...three, cursor: { on: 'note', at: 2 } }).cursor).toEqual({
      on: 'gap',
      at: 2,
    });
  });

  it('writes no more notes than a phrase can have', () => {
    const full = tapAll(
      NEW,
      Array.from({ length: 201 }, () => at(1, 3)),
    );
    expect(full.sketch.notes).toHaveLength(200);
  });
});

describe('pasted tablature', () => {
  const pasted = readUpToNow({ ...NEW, text: TAB }, B_FLAT);

  it('is the phrase at once where it can be read, and one step to be taken back', () => {
    expect(names(pasted)).toBe('C Eb G Bb G Eb');
    expect(names(undone(pasted))).toBe('');
    expect(readUpToNow(pasted, B_FLAT)).toBe(pasted);
  });

  it('takes the length that is chosen afterwards while nothing else was done', () => {
    const eighths = readUpToNow({ ...pasted, length: beats(1, 2) }, B_FLAT);
    expect(eighths.sketch.notes[0]!.length).toEqual(beats(1, 2));
  });

  it('is tapped on: then the field shows what is written', () => {
    const more = changed(pasted, B_FLAT, (now) => tapped(now, at(1, 1), B_FLAT));
    expect(names(more)).toBe('C Eb G Bb G Eb F');
    expect(more.text).toBeNull();
    const shown = textOf(explained(writtenPhrase(more.sketch, B_FLAT), B_FLAT));
    const read = readText({ ...more, text: shown }, B_FLAT);
    expect(read).toMatchObject({ phrase: writtenPhrase(more.sketch, B_FLAT) });
  });

  it('counts also when it was typed a moment ago', () => {
    const more = changed({ ...NEW, text: TAB }, B_FLAT, (now) => tapped(now, at(1, 1), B_FLAT));
    expect(names(more)).toBe('C Eb G Bb G Eb F');
  });

  it('stays as it is and is pointed at where it cannot be read, whatever else is done', () => {
    const text = TAB.replace('-4-------4', '-x-------4');
    const faulty = { ...tapAll(NEW, CHORD), text };
    expect(readText(faulty, B_FLAT)).toMatchObject({ faults: [{ line: 2, column: 8 }] });
    const more = changed(faulty, B_FLAT, (now) => tapped(now, at(1, 1), B_FLAT));
    expect(more.text).toBe(text);
    expect(names(more)).toBe('C Eb G F');
    expect(names(changed(more, B_FLAT, undone))).toBe('C Eb G');
  });

  it('that is cleared clears the phrase, which can be taken back', () => {
    const cleared = readUpToNow({ ...pasted, text: ' \n' }, B_FLAT);
    expect(isBegun(cleared)).toBe(false);
    expect(names(changed(cleared, B_FLAT, undone))).toBe('C Eb G Bb G Eb');
  });
});

describe('a phrase of the lesson', () => {
  const phrase = writtenPhrase(tapAll(NEW, CHORD).sketch, B_FLAT);

  it('is opened as it is', () => {
    const entry = entryOf(phrase, [], 2);
    expect(writtenPhrase(entry.sketch, B_FLAT)).toEqual(phrase);
    expect(entry.of).toBe(2);
  });

  it('is called as another key calls it, and placed anew on another instrument', () => {
    const sketch = sketchOf(phrase);
    const sharp = writtenPhrase(sketch, { ...B_FLAT, key: { tonic: 'E', scale: 'major' } });
    expect(sharp.notes.map(({ name }) => name)).toEqual(['C', 'D#', 'G']);
    const bass = INSTRUMENTS.find(({ name }) => name === 'bass')!;
    const low = writtenPhrase(sketch, { ...B_FLAT, instrument: bass });
    expect(low.notes.every(({ place }) => place === undefined)).toBe(true);
  });

  it('says which note lies where the instrument has none, until it is moved by an octave', () => {
    const low = byOctaves(sketchOf(phrase), -2);
    const says = explained(writtenPhrase(low, B_FLAT), B_FLAT);
    expect(says.fault).toBe('Note 1 lies outside what the guitar can sound.');
    expect(explained(writtenPhrase(byOctaves(low, 1), B_FLAT), B_FLAT).fault).toBeNull();
  });

  it('says where its times are too fine for a deck', () => {
    const { sketch } = tapAll(NEW, CHORD);
    expect(oddTime(phraseOf(sketch))).toBeNull();
    expect(oddTime(phraseOf(lengthen(sketch, 0, beats(1, 1001))))).toBe(1);
  });
});

const place = fc.record({ string: fc.integer({ min: 1, max: 6 }), fret: fc.nat(15) });
type Edit = (entry: Entry) => Entry;
const edit: fc.Arbitrary<Edit> = fc.oneof(
  place.map(
    (one): Edit =>
      (entry) =>
        tapped(entry, one, B_FLAT),
  ),
  fc.constant<Edit>(removed),
  fc.constant<Edit>(rested),
  fc.tuple(fc.constantFrom('note' as const, 'gap' as const), fc.nat(8)).map(
    ([on, index]): Edit =>
      (entry) =>
        index < entry.sketch.notes.length ? { ...entry, cursor: { on, at: index } } : entry,
  ),
  fc.constant<Edit>((entry) => {
    if (entry.sketch.notes.length < 2) return entry;
    const span = [0, 2] as const;
    return step(entry, { rulings: [{ span, chord: chordOn(B_FLAT.key, 2, 'seventh') }] });
  }),
);

describe('undo and redo', () => {
  const written = ({ sketch, rulings }: Entry) => ({ sketch, rulings });

  it('go back through every step to the beginning, and forward to the end', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 30 }), (edits) => {
        const end = edits.reduce((entry, one) => one(entry), NEW);
        const steps = end.undo.length;
        let entry = end;
        for (let i = 0; i < steps; i++) {
          const before = undone(entry);
          expect(written(redone(before))).toEqual(written(entry));
          entry = before;
        }
        expect(written(entry)).toEqual(written(NEW));
        expect(undone(entry)).toBe(entry);
        for (let i = 0; i < steps; i++) entry = redone(entry);
        expect(written(entry)).toEqual(written(end));
        expect(redone(entry)).toBe(entry);
      }),
      { numRuns: 100 },
    );
  });

  it('forget what was taken back once something else is written', () => {
    const two = tapAll(NEW, CHORD.slice(0, 2));
    const other = tapAll(undone(two), [at(1, 8)]);
    expect(other.redo).toEqual([]);
    expect(names(other)).toBe('C C');
  });

  it('are no steps where nothing changes', () => {
    const entry = tapAll(NEW, CHORD);
    expect(taken(entry, entry.sketch)).toBe(entry);
    expect(removed(NEW)).toBe(NEW);
  });
});

describe('what the device keeps of an entry', () => {
  it('is read as it was written', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 15 }), (edits) => {
        const begun: Entry = { ...NEW, text: 'e|-x-|', of: 3 };
        const entry = edits.reduce((now, one) => one(now), begun);
        const document: unknown = JSON.parse(JSON.stringify(writeEntry(entry, B_FLAT.key)));
        expect(readEntry(document, B_FLAT.key)).toEqual(entry);
      }),
      { numRuns: 50 },
    );
  });

  it('has the steps next to it, so that a long sitting stays small', () => {
    let entry: Entry = NEW;
    for (let i = 0; i < 400; i++)
      entry = i % 20 < 16 ? tapped(entry, at(1, 3), B_FLAT) : removed(entry);
    const kept = keptEntry(entry);
    expect(kept.undo.length).toBeGreaterThan(5);
    expect(kept.undo).toEqual(entry.undo.slice(-kept.undo.length));
    const back = readEntry(writeEntry(entry, B_FLAT.key), B_FLAT.key)!;
    expect(names(undone(back))).toBe(names(undone(entry)));
    expect(JSON.stringify(writeEntry(entry, B_FLAT.key)).length).toBeLessThan(300_000);
  });

  it('has its slurs also where it was kept while they were called joins', () => {
    const three = tapAll(NEW, [at(3, 5), at(3, 7), at(3, 5)]);
    const slurred = articulate(articulate(three.sketch, 1, 'hammer-on'), 2, 'pull-off');
    const entry = step(three, { sketch: slurred });
    const text = JSON.stringify(writeEntry(entry, B_FLAT.key));
    const former = text.replaceAll('"articulation":', '"join":');
    expect(former).not.toBe(text);
    expect(readEntry(JSON.parse(former), B_FLAT.key)).toEqual(entry);
    expect(readEntry(JSON.parse(former.replace('pull-off', 'bend')), B_FLAT.key)).toBeNull();
  });

  it('is nothing where it is not whole', () => {
    expect(readEntry({ text: '' }, B_FLAT.key)).toBeNull();
    expect(readEntry(null, B_FLAT.key)).toBeNull();
  });
});
