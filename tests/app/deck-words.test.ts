import { beforeAll, describe, expect, it } from 'vitest';
import { drillWords, instrumentWords } from '../../src/app/deckWords.ts';
import { heardAgain, isSilent, USUAL } from '../../src/app/settings.ts';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';

/** As on a page that has every kind of card. */
beforeAll(() => import('../../src/cards/index.ts'));

const named = (name: string) => INSTRUMENTS.find((one) => one.name === name)!;

describe('an instrument in words', () => {
  it.each([
    [GUITAR, 'guitar'],
    [{ ...GUITAR, capo: 3 }, 'guitar, capo on fret 3'],
    [{ ...GUITAR, leftHanded: true }, 'guitar, left-handed'],
    [{ ...named('drop D'), capo: 1, leftHanded: true }, 'drop D, capo on fret 1, left-handed'],
    [named('5-string bass'), '5-string bass'],
  ])('%#: %s', (instrument, words) => expect(instrumentWords(instrument)).toBe(words));
});

describe('a drill in words', () => {
  it.each([
    [
      {
        kind: 'spot',
        degrees: [1, 7],
        sizes: ['triad', 'seventh'],
        strings: [
          [5, 4],
          [4, 3],
        ],
        frets: [1, 8],
      },
      'name triads and sevenths on strings 5–4 and 4–3, frets 1 to 8',
    ],
    [
      { kind: 'trace', degrees: [1], sizes: ['ninth'], contours: ['up'], tempo: 72 },
      'hear ninths and find their paths',
    ],
    [
      { kind: 'pulse', figures: ['triplets', 'phrase'], tempos: [60, 72, 84], clicks: ['beat'] },
      'keep triplets and the phrase’s rhythm even at 60 to 84',
    ],
    [
      { kind: 'pulse', figures: ['eighths'], tempos: [60], clicks: ['bar'] },
      'keep eighths even at 60',
    ],
    [{ kind: 'order', phrases: [1, 2] }, 'hear the order of the arpeggios of phrases 1 and 2'],
    [{ kind: 'fill', phrases: [2] }, 'hear which note is missing from phrase 2'],
    [{ kind: 'vary' }, 'hear variations of the phrases'],
  ] as const)('%o', (drill, words) => expect(drillWords(drill)).toBe(words));
});

describe('silence', () => {
  it.each([
    [0.7, false, false],
    [0.7, true, true],
    [0, false, true],
    [0.01, false, false],
  ])('at loudness %f, muted %s, is %s', (volume, muted, silent) => {
    const settings = { ...USUAL, volume, muted };
    expect(isSilent(settings)).toBe(silent);
    expect(isSilent({ ...settings, ...heardAgain(settings) })).toBe(false);
  });

  it('ends as loud as it was, or as it is for everybody', () => {
    expect(heardAgain({ ...USUAL, volume: 0.3, muted: true })).toEqual({
      volume: 0.3,
      muted: false,
    });
    expect(heardAgain({ ...USUAL, volume: 0 })).toEqual({ volume: 0.7, muted: false });
  });
});
