import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { inOrder } from '../../src/store/order.ts';
import type { Review } from '../../src/store/review.ts';
import { reviewOf } from '../memory/reviews.ts';
import { anyReview } from './reviews.ts';

const anyLog = fc.array(anyReview, { maxLength: 30 });

const ordered = (...runs: (readonly Review[])[]) => inOrder(runs).flatMap((run) => [...run]);

describe('the order of reviews', () => {
  it("keeps each device's own order, whatever its clock did", () => {
    fc.assert(
      fc.property(anyLog, (reviews) => {
        const last = new Map<string, number>();
        for (const { device, n } of ordered(reviews)) {
          expect(n).toBeGreaterThanOrEqual(last.get(device) ?? 0);
          last.set(device, n);
        }
      }),
    );
  });

  it('puts the reviews of two phones by the time they were given', () => {
    const one = [10, 30].map((at, k) => reviewOf({ device: 'one', n: k + 1, at }));
    const two = [20, 40].map((at, k) => reviewOf({ device: 'two', n: k + 1, at }));
    expect(ordered([...two, ...one]).map(({ at }) => at)).toEqual([10, 20, 30, 40]);
  });
});
