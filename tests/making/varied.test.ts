import { describe, expect, it } from 'vitest';
import { readNotes } from '../../src/decks/notes.ts';
import { explained } from '../../src/making/explained.ts';
import { endedAt, keptRulings, ruled, splitAt, unruled } from '../../src/making/ruled.ts';
import {
  elsewhere,
  inOtherKey,
  rulingsMoved,
  varied,
  type Making,
} from '../../src/making/varied.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import type { Ruling } from '../../src/theory/analysis/ruling.ts';
import { chordOn } from '../../src/theory/chord.ts';
import type { Key } from '../../src/theory/key.ts';
import type { Phrase } from '../../src/theory/phrase.ts';
import type { ScaleKind } from '../../src/theory/scale.ts';

const B_FLAT = { key: { tonic: 'Bb', scale: 'major' }, instrument: GUITAR } as const;

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

/** What is made, without the pauses between. */
const madeBy = (making: Making) => [...making].filter((one) => one !== undefined);

describe('variations', () => {
  const stairs = explained(STAIRS, B_FLAT);
  const all = [...madeBy(varied(stairs)), ...madeBy(elsewhere(stairs))];

  it('each say in a sentence what they change, and can be played where they lie', () => {
    expect(all.length).toBeGreaterThanOrEqual(9);
    expect(new Set(all.map(({ says }) => says)).size).toBe(all.length);
    for (const { phrase: one } of all) {
      const { fault, places } = explained(one, B_FLAT);
      expect(fault).toBeNull();
      expect(places).toEqual(one.notes.map(({ place }) => place));
    }
  });

  it('stay in the key', () => {
    for (const { phrase: one } of all)
      expect(explained(one, B_FLAT).analysis.notes.every(({ inKey }) => inKey)).toBe(true);
  });

  it('of the same notes lie a hand’s width apart', () => {
    const others = madeBy(elsewhere(stairs)).map(({ phrase: one }) => one);
    expect(others.length).toBeGreaterThan(0);
    for (const { notes } of others)
      expect(notes.map(({ midi }) => midi)).toEqual(STAIRS.notes.map(({ midi }) => midi));
    const positions = madeBy(elsewhere(stairs)).filter(({ name }) => name.startsWith('position'));
    const middles = positions.map(
      ({ phrase: { notes } }) => notes.reduce((sum, { place }) => sum + place!.fret, 0) / 16,
    );
    const apart = middles
      .toSorted((a, b) => a - b)
      .map((at, i, sorted) => at - (sorted[i - 1] ?? 0));
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(4);
  });
});

describe('a variation in another key', () => {
  const stairs = explained(STAIRS, B_FLAT);
  const moved = (tonic: string, scale: ScaleKind, from = stairs) =>
    madeBy(inOtherKey(from, { tonic, scale }))[0]!;
  const degrees = ({ phrase: one }: { phrase: Phrase }, key: Key) =>
    explained(one, { ...B_FLAT, key }).analysis.notes.map(({ degree }) => degree);

  it('keeps the degrees, is in that key and can be played', () => {
    for (const key of [
      { tonic: 'Eb', scale: 'major' },
      { tonic: 'G', scale: 'harmonic minor' },
      { tonic: 'Bb', scale: 'dorian' },
    ] as const) {
      const one = moved(key.tonic, key.scale);
      const there = explained(one.phrase, { ...B_FLAT, key });
      expect(there.fault).toBeNull();
      expect(there.analysis.notes.every(({ inKey }) => inKey)).toBe(true);
      expect(degrees(one, key)).toEqual(stairs.analysis.notes.map(({ degree }) => degree));
    }
  });

  it('says where it is and how it lies', () => {
    expect(moved('Eb', 'major')).toMatchObject({
      name: 'in E♭ major',
      says: 'It is moved to E♭ major, 5 semitones higher.',
    });
    expect(moved('Bb', 'dorian').says).toBe(
      'It is moved to B♭ dorian, with the notes of that scale on the same degrees.',
    );
  });

  it('says what becomes of altered notes', () => {
    const altered = explained(phrase('Bb3 for 1/3', 'D4', 'F4', 'E4', 'F4', 'D4'), B_FLAT);
    expect(moved('Eb', 'major', altered).phrase.notes[3]!.name).toBe('A');
    const minor = moved('G', 'minor', altered);
    expect(minor.phrase.notes[3]!.name).toBe('C');
    expect(minor.says).toContain('what was altered (1 note) becomes the scale’s own');
  });

  it('lies an octave away where the neck ends, and says so', () => {
    const low = explained(phrase('F#2 for 1/3', 'B2', 'D#3'), {
      ...B_FLAT,
      key: { tonic: 'B', scale: 'major' },
    });
    const one = moved('F#', 'major', low);
    expect(one.says).toMatch(/ So that it fits on the neck it lies an octave higher\.$/);
    expect(one.phrase.notes.every(({ place }) => place)).toBe(true);
    // From B2 up to F sharp it is five semitones down, below the low E: an octave higher it is seven up.
    expect(one.phrase.notes.map(({ midi }) => midi)).toEqual([49, 54, 58]);
    // The last fret of the first string sounds D6, MIDI 86.
    const high = explained(phrase('Eb5 for 1/3', 'G5', 'Bb5'), B_FLAT);
    const other = moved('Eb', 'major', high);
    expect(other.says).toBe(
      'It is moved to E♭ major, 5 semitones higher. So that it fits on the neck it lies an octave lower.',
    );
    expect(other.phrase.notes.map(({ midi }) => midi)).toEqual([68, 72, 75]);
  });

  it('takes the rulings along to the same degrees', () => {
    const other = { tonic: 'Eb', scale: 'major' } as const;
    const V7 = chordOn(B_FLAT.key, 5, 'seventh');
    const tone = { note: 3, embellishment: 'passing' } as const;
    expect(rulingsMoved([{ span: [0, 6], chord: V7 }, tone], B_FLAT.key, other)).toEqual([
      { span: [0, 6], chord: chordOn(other, 5, 'seventh') },
      tone,
    ]);
    const foreign = chordOn({ tonic: 'E', scale: 'major' }, 1, 'triad');
    expect(rulingsMoved([{ span: [0, 6], chord: foreign }], B_FLAT.key, other)).toEqual([
      { span: [0, 6] },
    ]);
  });
});

it('whatever is made of a phrase is made with pauses, so that nothing waits for it', () => {
  const stairs = explained(STAIRS, B_FLAT);
  const other = { tonic: 'Eb', scale: 'major' } as const;
  for (const making of [varied(stairs), elsewhere(stairs), inOtherKey(stairs, other)]) {
    const all = [...making];
    const pauses = all.filter((one) => one === undefined).length;
    expect(pauses).toBeGreaterThanOrEqual(all.length - pauses);
    expect(pauses).toBeGreaterThanOrEqual(STAIRS.notes.length);
  }
});

describe('rulings', () => {
  const first = { span: [0, 6] as const };
  const last = { span: [12, 16] as const };

  it('take the place of those on the same notes', () => {
    const other = { span: [4, 8] as const };
    expect(ruled([first, last], other)).toEqual([last, other]);
    expect(unruled([first, last], [0, 6])).toEqual([last]);
  });

  it('on what a note is stay where its group is ruled, and the other way round', () => {
    const tone = { note: 2, embellishment: 'passing' } as const;
    const other = { note: 2, embellishment: null } as const;
    expect(ruled([tone], first)).toEqual([tone, first]);
    expect(ruled([first, tone], other)).toEqual([first, other]);
    expect(unruled([first, tone], [2, 3], true)).toEqual([first]);
  });

  it('move a group’s end, join it to the next, and cut it in two', () => {
    const { groups } = explained(STAIRS, B_FLAT).analysis;
    const [ii, V] = [groups[0]!, groups[1]!];
    const pathOf = (rulings: readonly Ruling[]) =>
      explained(STAIRS, B_FLAT, rulings).analysis.groups.map(({ from, to }) => `${from}-${to}`);
    expect(pathOf([])).toEqual(['0-6', '6-12', '12-16']);
    expect(pathOf(endedAt([], ii, V, 5))).toEqual(['0-5', '5-12', '12-16']);
    expect(pathOf(endedAt([], ii, V, 8))).toEqual(['0-8', '8-12', '12-16']);
    expect(pathOf(endedAt([], ii, V, 12))).toEqual(['0-12', '12-16']);
    expect(pathOf(splitAt([], ii, 3))).toEqual(['0-3', '3-6', '6-12', '12-16']);
    const told = [{ span: [0, 6] as const, chord: ii.chord }];
    expect(endedAt(told, ii, V, 5)[0]).toEqual({ span: [0, 5], chord: ii.chord });
  });

  it('stay with their notes when others come and go', () => {
    const { notes } = STAIRS;
    const without = { ...STAIRS, notes: notes.toSpliced(8, 1) };
    expect(keptRulings([first, last], STAIRS, without)).toEqual([first, { span: [11, 15] }]);
    expect(keptRulings([{ span: [6, 12] }], STAIRS, without)).toEqual([]);
    expect(keptRulings([first, last], STAIRS, STAIRS)).toEqual([first, last]);
  });

  // Of six notes one is put in before the fourth, or taken out there; what is ruled on notes beside it goes with them.
  it.each([
    [1, { span: [0, 3] }, [{ span: [0, 3] }]],
    [1, { span: [3, 6] }, [{ span: [4, 7] }]],
    [1, { span: [2, 4] }, []],
    [1, { note: 2, embellishment: 'passing' }, [{ note: 2, embellishment: 'passing' }]],
    [1, { note: 3, embellishment: null }, [{ note: 4, embellishment: null }]],
    [-1, { span: [4, 6] }, [{ span: [3, 5] }]],
    [-1, { span: [3, 6] }, []],
    [-1, { note: 3, embellishment: null }, []],
  ] as [number, Ruling, Ruling[]][])('at %i note more keep of %o %o', (more, ruling, kept) => {
    const midis = [60, 62, 64, 65, 67, 69];
    const lines = [midis, more > 0 ? midis.toSpliced(3, 0, 70) : midis.toSpliced(3, 1)];
    const [before, after] = lines.map((line) => ({ notes: line.map((midi) => ({ midi })) }));
    expect(keptRulings([ruling], before!, after!)).toEqual(kept);
  });
});
