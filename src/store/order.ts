import type { Review } from './review.ts';

/**
 * Reviews of any devices in one order, the same for the same set however it came together. A device's own reviews
 * stay in the order of its count, whatever its clock did; between devices the earlier one comes first, by the latest
 * time that the device had shown until then.
 */
export function inOrder(reviews: readonly Review[]): Review[] {
  const placed = reviews
    .map((review) => ({ review, time: review.at }))
    .toSorted((a, b) => compareWords(a.review.device, b.review.device) || a.review.n - b.review.n);
  for (let k = 1; k < placed.length; k++) {
    const [before, one] = [placed[k - 1]!, placed[k]!];
    if (before.review.device === one.review.device) one.time = Math.max(one.time, before.time);
  }
  // Sorting is stable: within one time, by device and count.
  return placed.toSorted((a, b) => a.time - b.time).map(({ review }) => review);
}

function compareWords(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
