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
