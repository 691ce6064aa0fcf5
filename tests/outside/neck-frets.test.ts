import { describe, expect, test } from 'vitest';
import { fretDistance, fretDistances } from '../../src/neck/fret.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { midiAt, placesOf } from '../../src/neck/place.ts';

// M. Koch, Building Electric Guitars: the divisor is 17.817.
test('each fret takes the same part of what is left of the string', () => {
  for (let fret = 1; fret <= 24; fret++) {
    const left = 1 - fretDistance(1, fret - 1);
    expect(left / (fretDistance(1, fret) - fretDistance(1, fret - 1))).toBeCloseTo(17.817154, 6);
  }
});

// noah.org, "fret positioning": the part of the string from the nut to frets 1 to 24.
const FACTORS = [
  0.056126, 0.109101, 0.159104, 0.206291, 0.250847, 0.292893, 0.33258, 0.370039, 0.405396, 0.438769,
  0.470268, 0.5, 0.528063, 0.554551, 0.579552, 0.60315, 0.625423, 0.646447, 0.66629, 0.68502,
  0.702698, 0.719385, 0.735134, 0.75,
];

test('the fret factors', () => {
  // The table's fourth is 0.000008 short of 1 − 2^(−4/12) = 0.2062995; the others are rounded to their last digit.
  FACTORS.forEach((factor, i) => {
    expect(Math.abs(fretDistance(1, i + 1) - factor)).toBeLessThan(i === 3 ? 1e-5 : 1e-6);
  });
});

// The same table, from a capo on fret 5: fret 2 there is the table's seventh, fret 7 its twelfth.
test('the frets behind a capo lie as far from it as the table has them', () => {
  const capo = fretDistances({ ...GUITAR, capo: 5 });
  const open = fretDistances(GUITAR);
  expect(open[12]).toBeCloseTo(648 * 0.5, 2);
  expect(capo[0]).toBe(0);
  expect(capo[2]).toBeCloseTo(648 * (0.33258 - 0.250847), 2);
  expect(capo[7]).toBeCloseTo(648 * (0.5 - 0.250847), 2);
  // A few frets beyond the last, and no more.
  expect([open.length, capo.length]).toEqual([28, 23]);
  expect(fretDistances(GUITAR)).toBe(fretDistances(GUITAR));
});

// stuphi.co.uk fret table: fret to bridge on a 635 mm scale, frets 1 to 10, mm.
test('the fret-to-bridge table', () => {
  const left = [
    599.36, 565.721, 533.969, 504.0, 475.712, 449.013, 423.812, 400.025, 377.573, 356.382,
  ];
  left.forEach((mm, i) => expect(635 - fretDistance(635, i + 1)).toBeCloseTo(mm, 2));
});

// Mottola, American Lutherie 130 (2017): the old rule of 18 puts fret 12 of 650 mm at 322.64 mm.
test('the rule of 18 is not what we do', () => {
  let left = 650;
  for (let fret = 1; fret <= 12; fret++) left -= left / 18;
  expect(650 - left).toBeCloseTo(322.64, 1);
  expect(fretDistance(650, 12)).toBeCloseTo(325, 9);
});

// Radicioni & Lombardo, Guitar Fingering for Music Performance, ICMC 2005, Fig. 1.
describe('the neck', () => {
  const STRINGS = [1, 2, 3, 4, 5, 6];
  const at = (fret: number) => STRINGS.map((string) => midiAt(GUITAR, { string, fret }));

  test('open strings and fret 12', () => {
    expect(at(0)).toEqual([64, 59, 55, 50, 45, 40]);
    expect(at(12)).toEqual([76, 71, 67, 62, 57, 52]);
  });

  test('MIDI 64 lies at 1/0, 2/5, 3/9, 4/14 and 5/19', () => {
    const places = placesOf(GUITAR, 64 % 12, STRINGS, [0, 19]).filter(
      (place) => midiAt(GUITAR, place) === 64,
    );
    expect(places.map(({ string, fret }) => `${string}/${fret}`)).toEqual([
      '1/0',
      '2/5',
      '3/9',
      '4/14',
      '5/19',
    ]);
  });

  // Common practice.
  test('one string up is a fourth, from string 3 to string 2 a major third', () => {
    const open = at(0);
    expect(open.slice(1).map((midi, i) => open[i]! - midi)).toEqual([5, 4, 5, 5, 5]);
  });
});
