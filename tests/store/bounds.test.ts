/** What is on devices already rests on these sizes; what is taken in is held to these bounds. */
import { expect, it } from 'vitest';
import { CHUNK, chunkOf } from '../../src/store/chunk.ts';
import { isReview } from '../../src/store/logLine.ts';
import { PACK, packOf } from '../../src/store/chunk.ts';
import { laterOf, MOST_REPORTS } from '../../src/store/reports.ts';
import { reviewOf } from '../memory/reviews.ts';

it('a log lies in chunks of 512 answers, eight of them to a pack, and 2,000 reports are kept', () => {
  expect([CHUNK, PACK, MOST_REPORTS]).toEqual([512, 8, 2000]);
  expect([1, 512, 513, 1024, 1025].map(chunkOf)).toEqual([0, 0, 1, 1, 2]);
  expect([0, 7, 8, 15, 16].map(packOf)).toEqual([0, 0, 8, 8, 16]);
});

// The least and the most of each part of a review, and what is just beyond.
it.each([
  ['n', 1, 10_000_000],
  ['seed', 0, 0xffff_ffff],
  ['at', 0, Date.UTC(2200)],
  ['offset', -1440, 1440],
  ['ms', 0, 1e11],
  ['sounded', 0, 1e11],
  ['taps', 0, 1000],
] as const)('%s lies from %i to %i', (part, least, most) => {
  const is = (value: number) => isReview({ ...reviewOf({}), [part]: value });
  expect([is(least - 1), is(least), is(most), is(most + 1), is(least + 0.5)]).toEqual([
    false,
    true,
    true,
    false,
    false,
  ]);
});

it('words of a review are as long as they are allowed to be', () => {
  const is = (part: object) => isReview({ ...reviewOf({}), ...part });
  for (const [part, most] of [
    ['device', 40],
    ['item', 500],
  ] as const)
    expect([0, 1, most, most + 1].map((length) => is({ [part]: 'x'.repeat(length) }))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  const wrong = { right: false, grade: 1 };
  expect([1, 200, 201].map((length) => is({ ...wrong, takenFor: 'x'.repeat(length) }))).toEqual([
    true,
    true,
    false,
  ]);
});

it('a grade says as well whether the answer was right', () => {
  const is = (right: boolean, grade: number) => isReview({ ...reviewOf({}), right, grade });
  expect([1, 2, 3, 4].map((grade) => is(true, grade))).toEqual([false, true, true, false]);
  expect([1, 2, 3].map((grade) => is(false, grade))).toEqual([true, false, false]);
});

it('of two reports the later is that of the later day, and of one day that of the later minute', () => {
  const at = (day: number, minute: number) => ({ day, minute });
  expect(laterOf(at(21, 0), at(20, 1439))).toBeGreaterThan(0);
  expect(laterOf(at(20, 9), at(20, 5))).toBeGreaterThan(0);
  expect(laterOf(at(20, 5), at(20, 9))).toBeLessThan(0);
  expect(laterOf(at(20, 5), at(20, 5))).toBe(0);
});
