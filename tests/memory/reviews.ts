import type { Review } from '../../src/store/review.ts';

/** A review of which a test says only what matters to it. */
export function reviewOf(some: Partial<Review>): Review {
  const right = some.right ?? true;
  return {
    device: 'phone',
    n: 1,
    item: 'spot:Bb major:2:triad:guitar:5-4:1-5',
    seed: 1,
    at: 0,
    offset: 0,
    right,
    takenFor: null,
    ms: 4000,
    sounded: 0,
    taps: 1,
    hidden: false,
    grade: right ? 3 : 1,
    ...some,
  };
}
