import { beforeAll, describe, expect, it } from 'vitest';
import { drillWords, instrumentWords, itemPlace, itemWords } from '../../src/app/deckWords.ts';
import { heardAgain, isSilent, USUAL } from '../../src/app/settings.ts';
import { itemOf } from '../../src/cards/index.ts';
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
      'hear ninths and find their paths, up',
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
    [{ kind: 'outline', phrases: [3] }, 'name the arpeggios of phrase 3'],
    [{ kind: 'follow', phrases: [1, 2, 4] }, 'place each next arpeggio of phrases 1, 2 and 4'],
    [
      {
        kind: 'place',
        degrees: [1],
        sizes: ['triad'],
        strings: [[3, 2, 1]],
        frets: [5, 9],
        shapes: 'inversions',
      },
      'place triads in inversion on strings 3–2–1, frets 5 to 9',
    ],
    [
      {
        kind: 'play',
        degrees: [1],
        sizes: ['seventh'],
        strings: [[5, 4]],
        frets: [0, 7],
        ways: ['up', 'down', 'turn'],
        shapes: 'root position',
        tempo: 60,
      },
      'play up, down and up and back sevenths in root position on strings 5–4, frets 0 to 7 at 60',
    ],
    [{ kind: 'play', phrases: [1], tempo: 84 }, 'play the arpeggios of phrase 1 at 84'],
    [
      { kind: 'echo', degrees: [1], sizes: ['triad'], contours: ['up', 'turn'], tempo: 66 },
      'play back lines of triads, up and turn, at 66',
    ],
    [{ kind: 'echo', phrases: [1, 3] }, 'play back the arpeggios of phrases 1 and 3'],
  ] as const)('%o', (drill, words) => expect(drillWords(drill)).toBe(words));
});

describe('an item in words', () => {
  const ii = 'ii 3/5 2/4 1/3';
  it.each([
    [
      'spot:Bb major:7:seventh:guitar:4-3-2-1:5-9',
      'viiø7 on strings 4–3–2–1',
      'name viiø7 on strings 4–3–2–1, frets 5 to 9',
    ],
    [
      'spot:Bb major:7:triad:guitar:3-2-1:5-9:root',
      'vii° in root position on strings 3–2–1',
      'name vii° in root position on strings 3–2–1, frets 5 to 9',
    ],
    [
      'place:G minor:3:triad:guitar:5-4:1-7:inversions',
      'III in inversion on strings 5–4',
      'place III in inversion on strings 5–4, frets 1 to 7',
    ],
    ['trace:Bb major:2:ninth:guitar:turn:72', 'ii9 by ear', 'ii9 by ear, turn'],
    [
      `outline:Bb major:2:triad:guitar:${ii}`,
      'ii in a phrase',
      'ii in a phrase, from string 3, fret 5',
    ],
    [
      `follow:Bb major:5:triad:guitar:${ii} V on 3-2-1 1-5`,
      'V after ii',
      'V after ii, from string 3, fret 5',
    ],
    [
      'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3 vi 4/5 3/3 2/3',
      'the order from ii on',
      'the order from ii on, from string 3, fret 5',
    ],
    [
      'vary:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3',
      'a variation from ii on',
      'a variation from ii on, from string 3, fret 5',
    ],
    [
      'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3',
      'a 4 missing from ii on',
      'a 4 missing from ii on, from string 3, fret 5',
    ],
    [
      'play:Bb major:2:triad:guitar:5-4:1-7:turn',
      'ii on strings 5–4 up and back',
      'play ii on strings 5–4 up and back, frets 1 to 7',
    ],
    [
      'play:Bb major:2:triad:guitar:5-4:1-7:down:60',
      'ii on strings 5–4 down at 60',
      'play ii on strings 5–4 down at 60, frets 1 to 7',
    ],
    [
      `play:Bb major:2:triad:guitar:${ii}`,
      'ii as the phrase has it',
      'play ii as the phrase has it, from string 3, fret 5',
    ],
    [
      `play:Bb major:2:triad:guitar:72 ${ii}`,
      'ii as the phrase has it at 72',
      'play ii as the phrase has it at 72, from string 3, fret 5',
    ],
    ['echo:Bb major:2:triad:guitar:up:72', 'ii played back at 72', 'ii played back at 72, up'],
    [
      'echo:Bb major:7:seventh:guitar:skip:60:eighths',
      'viiø7 played back at 60',
      'viiø7 played back at 60, skip in eighths',
    ],
    [
      `echo:Bb major:2:triad:guitar:72 ${ii}`,
      'ii played back in a phrase at 72',
      'ii played back in a phrase at 72, from string 3, fret 5',
    ],
    [
      'pulse:Bb major:1:triad:guitar:triplets:80:beat',
      'triplets at 80',
      'triplets at 80, a click on every beat',
    ],
    [
      'pulse:Bb major:1:triad:guitar:eighths:80:bar',
      'eighths at 80',
      'eighths at 80, a click on the first of the bar',
    ],
    [
      'pulse:Bb major:1:triad:guitar:quarters:60:gone',
      'quarters at 60',
      'quarters at 60, the click gone for every second bar',
    ],
    [
      'pulse:Bb major:1:triad:guitar:phrase:1/3x3:2:60:gone',
      'the phrase’s rhythm at 60',
      'the phrase’s rhythm at 60, the click gone for every second bar',
    ],
  ])('%s is %s', (id, words, place) => {
    const item = itemOf(id)!;
    expect(itemWords(item)).toBe(words);
    expect(itemPlace(item)).toBe(place);
  });

  it('from an open string says so', () => {
    expect(itemPlace(itemOf('outline:Bb major:6:triad:guitar:vi 3/0 3/3 2/3')!)).toBe(
      'vi in a phrase, from string 3, open',
    );
  });
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
