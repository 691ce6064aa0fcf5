import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { fretsLeft, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { fretsAround, midiAt, placeLabel, placesOf } from '../../src/neck/place.ts';
import { parsePlace, placeText } from '../../src/neck/placeText.ts';

const place = fc.record({
  string: fc.integer({ min: 1, max: 9 }),
  fret: fc.integer({ min: 0, max: 29 }),
});

test('a place’s text reads back as the place', () => {
  fc.assert(
    fc.property(place, (one) => {
      expect(parsePlace(placeText(one))).toEqual(one);
    }),
  );
});

test.each(['', '5', '0/3', '5/30', '5/-1', '10/1', 'x5/3', '5/03', '5/3 '])(
  '“%s” is no place',
  (text) => {
    expect(parsePlace(text)).toBeNull();
  },
);

test('places are said as players say them', () => {
  expect(placeLabel({ string: 5, fret: 3 })).toBe('string 5, fret 3');
  expect(placeLabel({ string: 5, fret: 0 })).toBe('string 5, open');
});

test.each([
  [
    [3, 5, 4],
    [3, 6],
  ],
  [
    [2, 9],
    [2, 9],
  ],
  [[7], [7, 10]],
  [
    [0, 3],
    [0, 3],
  ],
])('around frets %j frets %j are drawn', (frets, drawn) => {
  expect(fretsAround(frets.map((fret) => ({ string: 5, fret })))).toEqual(drawn);
});

test('places of a note are all there are, on every instrument', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...INSTRUMENTS),
      fc.integer({ min: 0, max: 11 }),
      fc.integer({ min: 0, max: 7 }),
      (listed, chroma, capo) => {
        const instrument = { ...listed, capo };
        const strings = instrument.tuning.map((_, i) => i + 1);
        const highest = fretsLeft(instrument);
        const counted = strings.flatMap((string) =>
          Array.from({ length: highest + 1 }, (_, fret) => ({ string, fret })).filter(
            (one) => midiAt(instrument, one) % 12 === chroma,
          ),
        );
        expect(placesOf(instrument, chroma, strings, [0, highest])).toEqual(counted);
      },
    ),
  );
});

test('what is named after a property of objects is no place', () => {
  for (const name of ['constructor', '__proto__', 'toString', 'constructor/3', '5/constructor'])
    expect(parsePlace(name)).toBeNull();
});
