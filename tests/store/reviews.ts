import fc from 'fast-check';
import { LATEST, type Review } from '../../src/store/review.ts';

/** Any review that the log can hold; few devices and times, so that they meet. */
export const anyReview: fc.Arbitrary<Review> = fc
  .record({
    device: fc.constantFrom('phone', 'tablet', 'x'),
    n: fc.integer({ min: 1, max: 300 }),
    item: fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }),
    seed: fc.integer({ min: 0, max: 0xffffffff }),
    at: fc.integer({ min: 0, max: LATEST }),
    offset: fc.integer({ min: -1440, max: 1440 }),
    right: fc.boolean(),
    takenFor: fc.option(fc.string({ minLength: 1, maxLength: 20 })),
    ms: fc.nat(),
    sounded: fc.nat(),
    taps: fc.integer({ min: 0, max: 1000 }),
    hidden: fc.boolean(),
    slow: fc.boolean(),
  })
  .map(({ slow, ...review }) => ({ ...review, grade: review.right ? (slow ? 2 : 3) : 1 }));
