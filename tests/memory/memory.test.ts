import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  learn,
  localDay,
  type Memory,
  emptyMemory,
  recall,
  replay,
} from '../../src/memory/memory.ts';
import { DAY, recallAfter, strengthAfter } from '../../src/memory/model.ts';
import type { Review } from '../../src/store/review.ts';
import { anyReview } from '../store/reviews.ts';
import { reviewOf } from './reviews.ts';

const NOON = Date.UTC(2026, 2, 2, 12);
const ITEM = reviewOf({}).item;

/** Reviews of one item, right, on these days from the first. */
const onDays = (days: readonly number[]): Review[] =>
  days.map((day, k) => reviewOf({ n: k + 1, at: NOON + day * DAY }));

describe('the memory', () => {
  it('knows nothing of what was never asked', () => {
    expect(recall(emptyMemory(), ITEM, NOON)).toBeNull();
  });

  it('is that of the model, in days between the answers', () => {
    const memory = replay(onDays([0, 2, 7]));
    const first = strengthAfter(null, 0, 3);
    const strength = strengthAfter(strengthAfter(first, 2, 3), 5, 3);
    expect(memory.items.get(ITEM)!.strength).toEqual(strength);
    expect(recall(memory, ITEM, NOON + 17 * DAY)).toBe(recallAfter(strength, 10));
  });

  it('is the same in whatever parts the log is replayed', () => {
    fc.assert(
      fc.property(fc.array(anyReview, { maxLength: 40 }), fc.nat(40), (reviews, at) => {
        const memory = replay(reviews.slice(0, at));
        for (const review of reviews.slice(at)) learn(memory, review);
        expect(memory).toEqual(replay(reviews));
      }),
    );
  });

  it('stays within its bounds whatever the log says', () => {
    fc.assert(
      fc.property(fc.array(anyReview, { maxLength: 60 }), fc.nat(8.64e15), (reviews, now) => {
        const memory = replay(reviews);
        for (const [id, known] of memory.items) {
          const value = recall(memory, id, now)!;
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(1);
          expect(known.strength.stability).toBeLessThanOrEqual(36_500);
          expect(Number.isFinite(known.ease.mean) && known.ease.variance > 0).toBe(true);
          expect(known.imprints.every(Number.isFinite)).toBe(true);
        }
      }),
    );
  });

  it('keeps what an item was taken for, and how often', () => {
    const wrong = [4, 4, 6].map((degree, n) =>
      reviewOf({ n, at: NOON + n, right: false, takenFor: String(degree) }),
    );
    expect([...replay(wrong).items.get(ITEM)!.takenFor]).toEqual([
      ['4', 2],
      ['6', 1],
    ]);
  });

  it('takes an item named after what every object has for one of no known kind', () => {
    for (const item of ['constructor', '__proto__', 'toString', 'hasOwnProperty:C major:1']) {
      const memory = replay([reviewOf({ item }), reviewOf({ item, n: 2, at: DAY, right: false })]);
      expect(recall(memory, item, 2 * DAY)).toBeGreaterThanOrEqual(0);
      expect(memory.ease.mean).not.toBeNaN();
    }
  });

  it("leaves the page's dates as they were", () => {
    const added: string[] = [];
    for (const name in new Date()) added.push(name);
    expect(added).toEqual([]);
  });
});

describe('a clock that is wrong for a while', () => {
  const YEAR = 365 * DAY;
  /** Two items by turns every day for twenty days, the clock of the middle ten off by so much. */
  const log = (off: number): Review[] =>
    Array.from({ length: 20 }, (_, day) =>
      ['one', 'two'].map((item, k) =>
        reviewOf({
          n: 2 * day + k + 1,
          item: `spot:${item}`,
          at: NOON + day * DAY + k * 60_000 + (day >= 5 && day < 15 ? off : 0),
        }),
      ),
    ).flat();
  const strengths = (memory: Memory) =>
    [...memory.items.values()].map(({ strength }) => strength.stability);
  const soon = NOON + 25 * DAY;

  it.each([
    ['a year behind', -YEAR],
    ['an hour behind', -3_600_000],
    ['a year ahead', YEAR],
    ['an hour ahead', 3_600_000],
  ])('%s, leaves no such time in what is remembered', (_, off) => {
    const [right, wrong] = [replay(log(0)), replay(log(off))];
    strengths(wrong).forEach((stability, k) => {
      expect(stability / strengths(right)[k]!).toBeGreaterThan(0.3);
      expect(stability / strengths(right)[k]!).toBeLessThan(4);
    });
    for (const item of right.items.keys()) {
      expect(recall(wrong, item, soon)!).toBeCloseTo(recall(right, item, soon)!, 1);
    }
  });

  it('counts the day by the local clock, from four in the morning', () => {
    const lateEvening = Date.UTC(2026, 2, 3, 1);
    expect(localDay(lateEvening, 60)).toBe(localDay(NOON, 60));
    expect(localDay(lateEvening, 180)).toBe(localDay(NOON, 180) + 1);
  });

  it('does not heed the time zone or daylight saving', () => {
    const moved = log(0).map((review, k) => ({ ...review, offset: k < 20 ? -480 : 540 }));
    expect(strengths(replay(moved))).toEqual(strengths(replay(log(0))));
  });
});
