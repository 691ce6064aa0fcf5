import { expect, it } from 'vitest';
import { beats } from '../../src/theory/rhythm.ts';
import { dotted, noteValue, valueWords } from '../../src/theory/value.ts';

it('a length is told as the note that is written for it (common practice)', () => {
  expect(valueWords(beats(1, 3))).toBe('triplet eighth');
  expect(valueWords(beats(1, 2))).toBe('eighth');
  expect(valueWords(beats(2, 3))).toBe('triplet quarter');
  expect(valueWords(beats(3, 4))).toBe('dotted eighth');
  expect(valueWords(beats(3))).toBe('dotted half');
  expect(valueWords(beats(5, 6))).toBe('5/6 beats');
  expect(noteValue(beats(1, 6))).toEqual({ flags: 2, dotted: false, triplet: true });
});

it('a dot makes a length half as long again, and goes', () => {
  expect(dotted(beats(1, 2), true)).toEqual(beats(3, 4));
  expect(dotted(beats(3, 4), false)).toEqual(beats(1, 2));
});

it('every plain length has its name, dotted and in triplets too', () => {
  const names = (factor: [number, number]) =>
    [8, 4, 2, 1].map((n) => valueWords(beats(n * factor[0], 2 * factor[1])));
  expect(names([1, 1])).toEqual(['whole', 'half', 'quarter', 'eighth']);
  expect(names([3, 2])).toEqual(['dotted whole', 'dotted half', 'dotted quarter', 'dotted eighth']);
  expect(names([2, 3])).toEqual([
    'triplet whole',
    'triplet half',
    'triplet quarter',
    'triplet eighth',
  ]);
  expect(valueWords(beats(1, 4))).toBe('sixteenth');
  expect(valueWords(beats(1, 8))).toBe('thirty-second');
  expect([valueWords(beats(5)), valueWords(beats(7, 8))]).toEqual(['5 beats', '7/8 beats']);
  expect([4, 2, 1].map((n) => noteValue(beats(n))!.flags)).toEqual([-2, -1, 0]);
});

it('a dot that goes leaves two thirds', () => {
  expect(dotted(beats(3, 2), false)).toEqual(beats(1));
  expect(dotted(beats(1), true)).toEqual(beats(3, 2));
});
