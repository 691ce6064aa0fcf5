import { describe, expect, it } from 'vitest';
import { phraseDots, stripOf } from '../../src/app/phrases/drawn.ts';
import {
  chordWords,
  embellishmentWords,
  kindWords,
  motionWords,
  outlineWords,
  pathWords,
  sheetWords,
  toneWords,
  travelWords,
  withArticle,
} from '../../src/app/phrases/phraseWords.ts';
import { readNotes } from '../../src/decks/notes.ts';
import { explained, soundingOf } from '../../src/making/explained.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { fretsAround } from '../../src/neck/place.ts';
import { SURE_READING } from '../../src/theory/analysis/analysis.ts';
import { chordOn } from '../../src/theory/chord.ts';
import type { Phrase } from '../../src/theory/phrase.ts';

const B_FLAT = { key: { tonic: 'Bb', scale: 'major' }, instrument: GUITAR } as const;
const SAID = { naming: 'english', chordNames: true } as const;

function phrase(...notes: string[]): Phrase {
  const read = readNotes(notes);
  if ('fault' in read) throw new Error(read.fault);
  return { tempo: 72, notes: read };
}

/** The harbour stairs: ii7 up, V7 down, home on the tonic chord, in triplets. */
const STAIRS = phrase(
  ...'C4 for 1/3, Eb4, G4, Bb4, G4, Eb4, F4, A4, C5, Eb5, C5, A4, Bb4, F4, D4, Bb3 for 1'.split(
    ', ',
  ),
);
const PASSING = phrase('Bb3 for 1/2', 'C4', 'D4', 'F4', 'D4', 'Bb3');

describe('a phrase explained', () => {
  const stairs = explained(STAIRS, B_FLAT);

  it('has a place for every note that sounds it', () => {
    expect(stairs.fault).toBeNull();
    expect(stairs.places).toHaveLength(STAIRS.notes.length);
  });

  it('is told by the arpeggios it outlines', () => {
    expect(pathWords(stairs)).toBe('ii7 V7 I');
    expect(outlineWords(stairs, SAID)).toBe('It outlines ii7 (Cm7), then V7 (F7), then I (B♭).');
    expect(outlineWords(stairs, { ...SAID, chordNames: false })).toBe(
      'It outlines ii7, then V7, then I.',
    );
    expect(embellishmentWords(stairs)).toBeNull();
  });

  it('shows a place that several arpeggios have as that of the one that is looked at', () => {
    // E flat and G of Cm, where they lie again in E flat major; C and B flat are another's alone.
    const shared = phrase(
      'C4 for 1/3 on 3/5',
      'Eb4 on 2/4',
      'G4 on 1/3',
      'Bb4 on 1/6',
      'G4 on 1/3',
      'Eb4 on 2/4',
    );
    const { key } = B_FLAT;
    const ruled = [
      { span: [0, 3] as const, chord: chordOn(key, 2, 'triad') },
      { span: [3, 6] as const, chord: chordOn(key, 4, 'triad') },
    ];
    const told = explained(shared, B_FLAT, ruled);
    const dots = (group: number | null) =>
      phraseDots(told, group).map(({ string, fret, member, look }) => [string, fret, member, look]);
    expect(dots(0)).toEqual([
      [3, 5, 1, undefined],
      [2, 4, 3, undefined],
      [1, 3, 5, undefined],
      [1, 6, undefined, 'faint'],
    ]);
    expect(dots(1)).toEqual([
      [3, 5, undefined, 'faint'],
      [2, 4, 1, undefined],
      [1, 3, 3, undefined],
      [1, 6, 5, undefined],
    ]);
    expect(dots(null).map(([, , , look]) => look)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('tells tones that only pass', () => {
    expect(embellishmentWords(explained(PASSING, B_FLAT))).toBe('Note 2 is a passing tone.');
  });

  it('tells what a single note is, as it is found and as it is said to be', () => {
    expect(toneWords(stairs, 1)).toBe('the third of ii7');
    const passing = explained(PASSING, B_FLAT);
    expect(toneWords(passing, 1)).toBe('a passing tone');
    const told = explained(PASSING, B_FLAT, [{ note: 1, embellishment: null }]);
    expect(toneWords(told, 1)).toMatch(/^the \w+ of /);
  });

  it('tells for which notes the hand stretches', () => {
    const wide = phrase(
      'G3 for 1/3 on 4/5',
      'A3 on 4/7',
      'B3 on 4/9',
      'C4 on 3/5',
      'D4 on 3/7',
      'E4 on 3/9',
    );
    const told = explained(wide, { ...B_FLAT, key: { tonic: 'G', scale: 'major' } });
    expect(told.stretches.length).toBeGreaterThan(0);
    expect(travelWords(told)).toMatch(/ and stretches at notes? [\d, and]+\.$/);
  });

  it('tells what leaps, what steps, and the way along the neck', () => {
    expect(motionWords(stairs)).toMatch(/^\d+ leaps and \d+ steps?\.$/);
    expect(travelWords(stairs)).toMatch(
      /^Frets \d+ to \d+, \d+ cm along the neck, on \d strings; /,
    );
  });

  it.each([
    [['Bb3', 'C4', 'D4', 'F4', 'D4', 'Bb3'], '3 leaps and 2 steps.'],
    [['Bb3', 'C4', 'E4'], '1 leap and 1 step.'],
    [['Bb3', 'Bb3', 'C4', 'C4', 'D4'], '0 leaps, 2 steps and 2 repeated notes.'],
    [['Bb3', 'D4', 'D4'], '1 leap, 0 steps and 1 repeated note.'],
  ])('%o moves by %s', (notes, words) => {
    expect(motionWords(explained(phrase(...notes), B_FLAT))).toBe(words);
  });

  // On strings of 648 mm the fifth fret lies 126 mm from the first, the twelfth 161 mm from the fifth, the third and the fifth 59 mm apart.
  it.each([
    [['E4 on 1/0', 'B3 on 2/0'], /^Open strings only, on 2 strings; the hand stays where it is\.$/],
    [
      ['A4 on 1/5', 'B3 on 2/0', 'A4 on 1/5'],
      /^Fret 5, on 2 strings; the hand stays where it is\.$/,
    ],
    [['F4 on 1/1', 'A4 on 1/5'], /^Frets 1 to 5, 13 cm along the neck, on 1 string; the hand /],
    [
      ['A4 on 1/5', 'E4 on 1/0', 'E5 on 1/12'],
      /^Frets 5 to 12, 16 cm along the neck, on 1 string; the hand shifts at note 3/,
    ],
    [
      ['C4 on 3/5', 'E4 on 2/5', 'G4 on 1/3'],
      /^Frets 3 to 5, 6 cm along the neck, on 3 strings; the hand stays/,
    ],
  ])('%o lies so: %s', (notes, words) => {
    expect(travelWords(explained(phrase(...notes), B_FLAT))).toMatch(words);
  });

  it('names what embellishes, each kind with the notes that are it', () => {
    const told = (
      ...kinds: (readonly [number, 'passing' | 'appoggiatura' | 'double neighbour' | 'escape'])[]
    ) =>
      embellishmentWords(
        explained(
          STAIRS,
          B_FLAT,
          kinds.map(([note, embellishment]) => ({ note: note - 1, embellishment })),
        ),
      );
    expect(told([2, 'passing'])).toBe('Note 2 is a passing tone.');
    expect(told([2, 'passing'], [5, 'passing'])).toBe('Notes 2 and 5 are passing tones.');
    expect(told([2, 'appoggiatura'], [5, 'escape'])).toBe(
      'Note 2 is an appoggiatura. Note 5 is an escape tone.',
    );
    expect(told([3, 'double neighbour'], [5, 'passing'])).toBe(
      'Note 3 is a double neighbour tone. Note 5 is a passing tone.',
    );
    expect(
      toneWords(explained(STAIRS, B_FLAT, [{ note: 1, embellishment: 'appoggiatura' }]), 1),
    ).toBe('an appoggiatura');
    const foreign = explained(phrase('Bb3', 'D4', 'F4', 'C#5', 'Bb3', 'D4', 'F4', 'Bb4'), B_FLAT);
    expect(embellishmentWords(foreign)).toBe('Note 4 is a foreign note.');
    expect(toneWords(foreign, 3)).toBe('a foreign note');
    expect(['suspension', 'anticipation', 'neighbour'].map(kindWords)).toEqual([
      'suspension',
      'anticipation',
      'neighbour tone',
    ]);
    expect([withArticle('escape tone'), withArticle('suspension')]).toEqual([
      'an escape tone',
      'a suspension',
    ]);
  });

  it('has a head for its sheet, and a chord’s name behind its numeral where names are shown', () => {
    expect(sheetWords(stairs, 'english')).toBe('B♭ major · guitar · ♩ = 72');
    expect(sheetWords(stairs, 'german')).toBe('B major · guitar · ♩ = 72');
    const { chord } = stairs.analysis.groups[0]!;
    expect(chordWords(chord, SAID)).toBe('ii7 (Cm7)');
    expect(chordWords(chord, { naming: 'movable', chordNames: true })).toBe('ii7');
    expect(chordWords(chord, { naming: 'english', chordNames: false })).toBe('ii7');
  });

  it('shows every place once, and of one group the members of its arpeggio', () => {
    const all = phraseDots(stairs);
    expect(new Set(all.map(({ string, fret }) => `${string}/${fret}`)).size).toBe(all.length);
    expect(all.every(({ text, note }) => text && note)).toBe(true);
    const members = phraseDots(stairs, 0).flatMap(({ member }) => member ?? []);
    expect(new Set(members)).toEqual(new Set([1, 3, 5, 7]));
    const [low, high] = fretsAround(stairs.places!);
    expect(all.every(({ fret }) => fret >= low && fret <= high)).toBe(true);
  });

  it('shows and sounds the same notes at the same places and times', () => {
    const strip = stripOf(stairs);
    const { notes } = soundingOf(stairs);
    expect(notes.map(({ at, string }) => [at, string])).toEqual(
      strip.map(({ at, string }) => [at, string]),
    );
    expect(strip.slice(0, 4).map(({ label }) => label)).toEqual(['2', '4', '6', '1']);
  });

  it('is drawn as near as can be where it has no places: on the highest string that has the note', () => {
    const strip = stripOf(explained(phrase('C2', 'E4', 'D4', 'G3', 'E2'), B_FLAT));
    expect(strip.map(({ string, fret }) => [string, fret])).toEqual([
      [6, -4],
      [1, 0],
      [2, 3],
      [3, 0],
      [6, 0],
    ]);
  });

  it('says where no hand can play it, and shows the places that were written all the same', () => {
    const low = explained(phrase('C2 for 1/3', 'Eb4'), B_FLAT);
    expect(low.fault).toBe('Note 1 lies outside what the guitar can sound.');
    expect(low.places).toBeNull();
    const joined = explained(phrase('C4 for 1/3 on 3/5', 'Bb3 on 3/3 by hammer-on'), B_FLAT);
    expect(joined.fault).toContain('hammer-on');
    expect(joined.places).toEqual([
      { string: 3, fret: 5 },
      { string: 3, fret: 3 },
    ]);
  });

  it('says with which neighbour a group may be one, once', () => {
    const { key } = B_FLAT;
    const about = { from: 0, to: 3, alternatives: [], regrouped: [] };
    const joined = { chord: chordOn(key, 5, 'ninth'), confidence: 0.4 };
    const groups = [
      { ...about, chord: chordOn(key, 5, 'triad'), confidence: 0.6, joined },
      { ...about, chord: chordOn(key, 4, 'triad'), confidence: 0.6, from: 3, to: 6, joined: null },
    ];
    const cut = { ...stairs, analysis: { groups, notes: [] } };
    expect(outlineWords(cut, SAID)).toBe(
      'It outlines V (F), then IV (E♭) or V9 (F9) with the one before.',
    );
  });

  it('says once where else a group may begin', () => {
    const { key } = B_FLAT;
    const about = { alternatives: [], joined: null, confidence: 0.6 };
    const tonic = chordOn(key, 1, 'triad');
    const regrouped = [{ from: 3, to: 6, chord: tonic, confidence: 0.3 }];
    const groups = [
      { ...about, from: 0, to: 4, chord: chordOn(key, 2, 'seventh'), regrouped },
      { ...about, from: 4, to: 6, chord: tonic, regrouped },
    ];
    expect(outlineWords({ ...stairs, analysis: { groups, notes: [] } }, SAID)).toBe(
      'It outlines ii7 (Cm7), then I (B♭) of notes 5 to 6 or notes 4 to 6.',
    );
    const fifth = chordOn(key, 5, 'triad');
    const other = [groups[0]!, { ...groups[1]!, chord: fifth }];
    expect(outlineWords({ ...stairs, analysis: { groups: other, notes: [] } }, SAID)).toBe(
      'It outlines ii7 (Cm7), then V (F) or I (B♭) of notes 4 to 6.',
    );
  });

  it('says “or” where it is not sure, and takes a ruling for what it is', () => {
    const two = phrase('F4', 'D4');
    const undecided = explained(two, B_FLAT);
    const unsure = undecided.analysis.groups.find(({ confidence }) => confidence < SURE_READING)!;
    expect(outlineWords(undecided, SAID)).toContain('I (B♭) or iii (Dm)');
    const [other] = unsure.alternatives;
    const { from, to } = unsure;
    const decided = explained(two, B_FLAT, [{ span: [from, to], chord: other!.chord }]);
    expect(pathWords(decided)).toBe('iii');
  });
});
