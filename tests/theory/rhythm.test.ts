import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { add, beats, compare, subtract, toNumber, times } from '../../src/theory/rhythm.ts';
import { beatsText, parseBeats } from '../../src/theory/rhythmText.ts';

const fraction = fc
  .tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 1, max: 96 }))
  .map(([n, d]) => beats(n, d));

test('three triplets make one beat and no more', () => {
  const triplet = beats(1, 3);
  expect(add(add(triplet, triplet), triplet)).toEqual(beats(1));
  expect(times(triplet, 3)).toEqual(beats(1));
});

test('beats are kept in lowest terms', () => {
  expect(beats(4, 6)).toEqual({ n: 2, d: 3 });
  expect(beats(1, -2)).toEqual({ n: -1, d: 2 });
  expect(Object.is(beats(0, -3).n, 0)).toBe(true);
});

test('adding and taking away again changes nothing', () =>
  fc.assert(
    fc.property(fraction, fraction, (a, b) => {
      expect(subtract(add(a, b), b)).toEqual(a);
    }),
  ));

test('times multiplies as numbers do', () =>
  fc.assert(
    fc.property(fraction, fraction, (a, b) => {
      expect(toNumber(times(a, b))).toBeCloseTo(toNumber(a) * toNumber(b), 6);
    }),
  ));

test('compare orders as numbers do', () =>
  fc.assert(
    fc.property(fraction, fraction, (a, b) => {
      expect(Math.sign(compare(a, b))).toBe(Math.sign(toNumber(a) - toNumber(b)));
    }),
  ));

test('a text reads back as its beats', () => {
  expect([beats(0), beats(1, 3), beats(4, 3), beats(-2)].map(beatsText)).toEqual([
    '0',
    '1/3',
    '4/3',
    '-2',
  ]);
  fc.assert(
    fc.property(fraction, (a) => {
      expect(parseBeats(beatsText(a))).toEqual(a);
    }),
  );
});

test.each(['', '1/0', '1.5', '1/3/5', 'x', '1/-3'])('“%s” is no time', (text) =>
  expect(parseBeats(text)).toBeNull(),
);

test('what is no fraction of whole numbers is refused', () => {
  expect(() => beats(1, 0)).toThrow('1/0');
  expect(() => beats(0.5)).toThrow('0.5/1');
});
