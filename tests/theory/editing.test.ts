import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  byOctaves,
  emptySketch,
  insert,
  articulate,
  articulationFault,
  movedLater,
  lengthen,
  move,
  phraseOf,
  remove,
  rest,
  restAfter,
  sameSketch,
  sketchOf,
  unplace,
  type Sketch,
} from '../../src/theory/editing.ts';
import { ARTICULATIONS, type Articulation } from '../../src/theory/phrase.ts';
import { add, beats, compare, type Beats } from '../../src/theory/rhythm.ts';
import { drawPhrase } from './analysis-random.ts';

const TRIPLET = beats(1, 3);
const note = (midi: number, string: number, fret: number, length = TRIPLET) => ({
  midi,
  name: 'C',
  length,
  place: { string, fret },
});

/** C on string 3, E flat and G on strings 2 and 1. */
const CHORD = [note(60, 3, 5), note(63, 2, 4), note(67, 1, 3)].reduce(
  (sketch, one, i) => insert(sketch, i, one),
  emptySketch(72),
);
const times = (sketch: Sketch) => phraseOf(sketch).notes.map(({ at }) => at);

describe('a phrase in the making', () => {
  it('gets its notes one after the other', () =>
    expect(times(CHORD)).toEqual([beats(0), beats(1, 3), beats(2, 3)]));

  it('makes room for a note between and closes again where one goes', () => {
    const more = insert(CHORD, 1, note(62, 3, 7, beats(1)));
    expect(times(more)).toEqual([beats(0), beats(1, 3), beats(4, 3), beats(5, 3)]);
    expect(remove(more, 1)).toEqual(CHORD);
  });

  it('keeps a rest after its note when that gets another length', () => {
    const rested = rest(CHORD, 0, beats(1));
    expect(restAfter(rested, 0)).toEqual(beats(1));
    expect(times(lengthen(rested, 0, beats(1, 2)))[1]).toEqual(beats(3, 2));
    expect(times(rest(CHORD, -1, beats(2)))[0]).toEqual(beats(2));
  });

  it('may end in a rest, which passes before the next note', () => {
    const rested = rest(CHORD, 2, TRIPLET);
    expect(phraseOf(rested)).toEqual(phraseOf(CHORD));
    expect(times(insert(rested, 3, note(70, 1, 6)))[3]).toEqual(beats(4, 3));
  });

  it('puts a note later, with its length', () => {
    const long = lengthen(CHORD, 0, beats(1));
    const moved = phraseOf(movedLater(long, 0)).notes;
    expect(moved.map(({ midi }) => midi)).toEqual([63, 60, 67]);
    expect(moved.map(({ length }) => length)).toEqual([TRIPLET, beats(1), TRIPLET]);
    expect(movedLater(CHORD, 2)).toBe(CHORD);
  });

  it('is moved by octaves without its places', () =>
    expect(phraseOf(byOctaves(CHORD, 1)).notes[0]).toMatchObject({ midi: 72, at: beats(0) }));
});

describe('an articulation', () => {
  it('stays on its string and goes its way', () => {
    const [low, high] = [note(60, 3, 5), note(62, 3, 7)];
    expect(articulationFault(low, high, 'hammer-on')).toBeNull();
    expect(articulationFault(high, low, 'pull-off')).toBeNull();
    expect(articulationFault(high, low, 'slide')).toBeNull();
    expect(articulationFault(high, low, 'hammer-on')).toBe('A hammer-on leads to a higher note.');
    expect(articulationFault(low, high, 'pull-off')).toBe('A pull-off leads to a lower note.');
    expect(articulationFault(low, low, 'slide')).toBe('A slide leads to another pitch.');
    expect(articulationFault(note(55, 3, 0), high, 'slide')).toBe('A slide has no open string.');
    expect(articulationFault(low, note(62, 2, 3), 'hammer-on')).toBe(
      'The note before it lies on another string.',
    );
    expect(articulationFault(undefined, low, 'slide')).toBe('The first note is joined to nothing.');
  });

  it('is let go of when what comes before its note goes elsewhere', () => {
    const two = insert(insert(emptySketch(72), 0, note(60, 3, 5)), 1, note(62, 3, 7));
    const joined = articulate(two, 1, 'hammer-on');
    expect(joined.notes[1]!.articulation).toBe('hammer-on');
    expect(move(joined, 0, note(60, 4, 10)).notes[1]!.articulation).toBeUndefined();
    expect(movedLater(joined, 0).notes.every((one) => !one.articulation)).toBe(true);
    expect(remove(joined, 0).notes[0]!.articulation).toBeUndefined();
    expect(insert(joined, 1, note(67, 1, 3)).notes[2]!.articulation).toBeUndefined();
  });

  it('is looked at again behind two notes that change places', () => {
    const low = insert(emptySketch(72), 0, note(60, 3, 5));
    const three = insert(insert(low, 1, note(64, 2, 5)), 2, note(62, 3, 7));
    const swapped = articulate(movedLater(three, 0), 2, 'hammer-on');
    expect(swapped.notes.map(({ articulation }) => articulation)).toEqual([
      undefined,
      undefined,
      'hammer-on',
    ]);
    expect(movedLater(swapped, 0).notes[2]!.articulation).toBeUndefined();
  });
});

const LENGTHS: readonly Beats[] = [TRIPLET, beats(1, 2), beats(1, 4), beats(1), beats(3, 4)];
const index = fc.nat(12);
const length = fc.constantFrom(...LENGTHS);
const placed = fc
  .record({ string: fc.integer({ min: 1, max: 6 }), fret: fc.nat(20), length })
  .map(({ string, fret, length: long }) => note(70 - 5 * string + fret, string, fret, long));
const how = fc.constantFrom<Articulation | null>(...ARTICULATIONS, null);

type Edit = (sketch: Sketch) => Sketch;
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(index, placed).map(
    ([i, one]): Edit =>
      (sketch) =>
        insert(sketch, i, one),
  ),
  fc.tuple(index, placed).map(
    ([i, one]): Edit =>
      (sketch) =>
        move(sketch, i, one),
  ),
  fc.tuple(index, length).map(
    ([i, long]): Edit =>
      (sketch) =>
        lengthen(sketch, i, long),
  ),
  fc.tuple(index, length).map(
    ([i, long]): Edit =>
      (sketch) =>
        rest(sketch, i - 1, long),
  ),
  fc.tuple(index, how).map(
    ([i, one]): Edit =>
      (sketch) =>
        articulate(sketch, i, one),
  ),
  index.map(
    (i): Edit =>
      (sketch) =>
        remove(sketch, i),
  ),
  index.map(
    (i): Edit =>
      (sketch) =>
        movedLater(sketch, i),
  ),
  index.map(
    (i): Edit =>
      (sketch) =>
        unplace(sketch, i),
  ),
);

describe('any editing', () => {
  it('leaves a phrase in order, without overlaps, with articulations that can be', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 40 }), (edits) => {
        const sketch = edits.reduce((before, one) => one(before), emptySketch(72));
        const { notes } = phraseOf(sketch);
        notes.forEach((one, i) => {
          const next = notes[i + 1];
          expect(one.length.n).toBeGreaterThan(0);
          if (next) expect(compare(add(one.at, one.length), next.at)).toBeLessThanOrEqual(0);
          if (one.articulation)
            expect(articulationFault(notes[i - 1], one, one.articulation)).toBeNull();
        });
      }),
      { numRuns: 200 },
    );
  });

  it('changes nothing that was there before, so that it can be taken back', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 20 }), edit, (edits, last) => {
        const before = edits.reduce((sketch, one) => one(sketch), emptySketch(72));
        const copy = structuredClone(before);
        last(before);
        expect(before).toEqual(copy);
        expect(sameSketch(before, copy)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

it.each([
  ['its tempo', { ...CHORD, tempo: 73 }],
  ['what passes before it', rest(CHORD, -1, TRIPLET)],
  ['a note less', remove(CHORD, 2)],
  ['a pitch', move(CHORD, 1, { ...note(64, 2, 5), place: CHORD.notes[1]!.place! })],
  ['a string', move(CHORD, 1, { ...note(63, 3, 4) })],
  ['a fret', move(CHORD, 1, { ...note(63, 2, 5) })],
  ['a place', unplace(CHORD, 1)],
  [
    'a length',
    { ...CHORD, notes: CHORD.notes.with(1, { ...CHORD.notes[1]!, length: beats(1, 6) }) },
  ],
  ['a rest', rest(CHORD, 1, TRIPLET)],
  [
    'how a note is reached',
    { ...CHORD, notes: CHORD.notes.with(1, { ...CHORD.notes[1]!, articulation: 'slide' }) },
  ],
] as [string, Sketch][])('two sketches that differ in %s say not the same', (_, other) => {
  expect(sameSketch(CHORD, other)).toBe(false);
  expect(sameSketch(other, structuredClone(other))).toBe(true);
});

it('a sketch of a phrase says that phrase again', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), fc.nat(8), (seed, pause) => {
      const drawn = drawPhrase(seed).phrase;
      const phrase = {
        ...drawn,
        notes: drawn.notes.map((one) => ({ ...one, at: add(one.at, beats(pause, 3)) })),
      };
      expect(phraseOf(sketchOf(phrase))).toEqual(phrase);
    }),
    { numRuns: 50 },
  );
});
