import { describe, expect, it } from 'vitest';
import { drillFormOf } from '../../src/decks/drills/index.ts';
import { readInstrument, writeInstrument } from '../../src/decks/instrument.ts';
import type { Deck, Drill } from '../../src/decks/deck.ts';
import { GUITAR, INSTRUMENTS, type Instrument } from '../../src/neck/instrument.ts';

describe('an instrument in a document', () => {
  it.each([
    ['as it is listed', { name: 'guitar' }, GUITAR],
    ['with a capo', { name: 'guitar', capo: 3 }, { ...GUITAR, capo: 3 }],
    ['with fewer frets', { name: 'guitar', frets: 19 }, { ...GUITAR, frets: 19 }],
    ['with its own length', { name: 'guitar', scaleLength: 628 }, { ...GUITAR, scaleLength: 628 }],
    ['in the left hand', { name: 'guitar', leftHanded: true }, { ...GUITAR, leftHanded: true }],
    [
      'tuned otherwise, as a teacher writes it',
      { name: 'guitar', tuning: ['d2', 'A2', 'D3', 'F♯3', ' A3', 'D4'] },
      { ...GUITAR, tuning: ['D2', 'A2', 'D3', 'F#3', 'A3', 'D4'] },
    ],
    [
      'that is not listed',
      { name: 'the old one', tuning: ['E♭2', 'Ab2', 'D♭3', 'Gb3'], frets: 18, scaleLength: 610 },
      {
        name: 'the old one',
        tuning: ['Eb2', 'Ab2', 'Db3', 'Gb3'],
        frets: 18,
        scaleLength: 610,
        capo: 0,
        leftHanded: false,
      },
    ],
  ])('is read %s', (_, words, instrument) => expect(readInstrument(words)).toEqual(instrument));

  it.each([
    [GUITAR, 'guitar'],
    [
      { ...GUITAR, capo: 2 },
      { name: 'guitar', capo: 2 },
    ],
    [
      { ...GUITAR, leftHanded: true },
      { name: 'guitar', leftHanded: true },
    ],
    [
      { ...GUITAR, frets: 19 },
      { name: 'guitar', frets: 19 },
    ],
    [INSTRUMENTS.at(-1)!, 'ukulele'],
  ] as [Instrument, unknown][])('is written in the fewest words: %o', (instrument, words) =>
    expect(writeInstrument(instrument)).toEqual(words),
  );
});

const HEARD = { degrees: [1], sizes: ['triad'], contours: ['up'], tempo: 72 } as const;
const fault = (
  drill: Drill,
  instrument: Instrument,
  key: Deck['key'] = { tonic: 'C', scale: 'major' },
) =>
  drillFormOf(drill.kind).misfit(drill, { instrument, key, phrases: [] } as unknown as Deck)
    ?.says ?? null;

describe('a line to be heard', () => {
  const alike = { ...GUITAR, name: 'box', tuning: ['G3', 'G3', 'G3', 'G3'], frets: 12 };

  // Four strings in unison: twelve frets are an octave, and so are eleven with one string a semitone lower.
  it.each([
    [alike, null],
    [{ ...alike, frets: 11, tuning: ['F#3', 'G3', 'G3', 'G3'] }, null],
    [
      { ...alike, frets: 11 },
      'the box spans 11 semitones, too few for a phrase to be heard: tune its strings apart, or take this drill out.',
    ],
    [
      { ...alike, capo: 1 },
      'the box spans 11 semitones above the capo, too few for a phrase to be heard: put the capo lower, or take this drill out.',
    ],
    [
      { ...alike, capo: 11 },
      'the box spans 1 semitone above the capo, too few for a phrase to be heard: put the capo lower, or take this drill out.',
    ],
  ] as [Instrument, string | null][])('needs an octave: %o', (instrument, says) => {
    expect(fault({ kind: 'trace', ...HEARD }, instrument)).toBe(says);
    expect(fault({ kind: 'echo', ...HEARD }, instrument)).toBe(says);
  });

  it('is written without what goes without saying', () => {
    const { write } = drillFormOf('trace');
    const plain = { kind: 'trace', ...HEARD, degrees: [1] };
    expect(write({ kind: 'trace', ...HEARD })).toEqual(plain);
    expect(write({ kind: 'trace', ...HEARD, rhythm: 'triplets' })).toEqual(plain);
    expect(write({ kind: 'trace', ...HEARD, rhythm: 'eighths' })).toEqual({
      ...plain,
      rhythm: 'eighths',
    });
    const { degrees: _, ...all } = plain;
    expect(write({ kind: 'trace', ...HEARD, degrees: [1, 2, 3, 4, 5, 6, 7] })).toEqual(all);
  });
});

describe('a drill on the neck', () => {
  const spot = (
    strings: readonly (readonly number[])[],
    frets: readonly [number, number],
  ): Drill => ({
    kind: 'spot',
    degrees: [1],
    sizes: ['triad'],
    strings,
    frets,
  });
  it.each([
    [spot([[5, 4]], [1, 22]), GUITAR, null],
    [spot([[5, 4]], [1, 23]), GUITAR, 'the guitar ends at fret 22: end there or lower.'],
    [spot([[5, 4]], [1, 19]), { ...GUITAR, capo: 3 }, null],
    [
      spot([[5, 4]], [1, 20]),
      { ...GUITAR, capo: 3 },
      'the guitar ends at fret 19 above the capo: end there or lower.',
    ],
    [spot([[6, 5]], [1, 8]), GUITAR, null],
    [spot([[7, 6]], [1, 8]), GUITAR, 'the guitar has 6 strings, so there is no string 7.'],
  ] as [Drill, Instrument, string | null][])(
    '%o lies on the instrument',
    (drill, instrument, says) => expect(fault(drill, instrument)).toBe(says),
  );

  it('needs a key of seven notes', () => {
    const key = { tonic: 'A', scale: 'blues' } as const;
    expect(fault(spot([[5, 4]], [1, 8]), GUITAR, key)).toBe(
      'A blues has fewer than seven notes, and no chords stand on its degrees: take this drill out, or choose a key like "A minor".',
    );
  });
});
