import fc from 'fast-check';
import { expect, it } from 'vitest';
import { reviewsOf } from '../../src/store/columns.ts';
import { columnsOf } from '../../src/store/toColumns.ts';
import type { Review, Reviews } from '../../src/store/review.ts';
import { Runs } from '../../src/store/runs.ts';
import { anyReview } from './reviews.ts';

const anyList = fc
  .array(anyReview, { maxLength: 10 })
  .map((reviews) => reviews.map((review, k) => ({ ...review, device: 'phone', n: k + 1 })));

/** A list as it is, or packed. */
const anyRun = fc.tuple(anyList, fc.boolean()).map(([list, packed]) => ({
  list,
  run: packed && list.length > 0 ? (reviewsOf('phone', columnsOf(list)) as Reviews) : list,
}));

it('runs of reviews are what one list of them would be, while it grows and shrinks at its end', () => {
  fc.assert(
    fc.property(fc.array(anyRun, { maxLength: 4 }), anyList, fc.nat(10), (runs, pushed, less) => {
      const reviews = new Runs();
      for (const review of pushed) reviews.push(review);
      reviews.begin(runs.map(({ run }) => run));
      for (const review of pushed) reviews.push(review);
      const dropped = Math.min(less, pushed.length);
      reviews.drop(dropped);
      const list = runs.flatMap((one) => one.list).concat(pushed.slice(0, pushed.length - dropped));
      const seen: Review[] = [];
      reviews.forEach((review) => seen.push(review));
      expect(seen).toEqual(list);
      expect([...reviews]).toEqual(list);
      expect(reviews.length).toBe(list.length);
      for (let place = -list.length - 1; place <= list.length; place++) {
        expect(reviews.at(place)).toEqual(list.at(place));
      }
    }),
  );
});
