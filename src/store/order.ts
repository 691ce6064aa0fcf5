import { lineOf } from './line.ts';
import type { Review } from './review.ts';

/**
 * Reviews of any devices in one order, the same for the same set however it came together. A device's own reviews
 * stay in the order of its count, whatever its clock did; between devices the earlier one comes first, by the latest
 * time that the device had shown until then.
 */
export function inOrder(reviews: readonly Review[]): readonly Review[] {
  if (areOneDevices(reviews)) return reviews;
  const placed = reviews
    .map((review) => ({ review, time: review.at }))
    .toSorted((a, b) => byCount(a.review, b.review));
  for (let k = 1; k < placed.length; k++) {
    const [before, one] = [placed[k - 1]!, placed[k]!];
    if (before.review.device === one.review.device) one.time = Math.max(one.time, before.time);
  }
  // Sorting is stable: within one time, by device and count.
  return placed.toSorted((a, b) => a.time - b.time).map(({ review }) => review);
}

/** Whether they are of one device and in its order already, as on most phones. */
function areOneDevices(reviews: readonly Review[]): boolean {
  return reviews.every(({ device, n }, k) => {
    const before = reviews[k - 1];
    return !before || (before.device === device && before.n < n);
  });
}

/**
 * What tells a review from all others. Should a device's memory have been copied, so that two devices went on under one
 * id, two reviews with one count are two.
 */
export function nameOf(review: Review): string {
  return `${review.device} ${lineOf(review)}`;
}

function byCount(a: Review, b: Review): number {
  return (
    compareWords(a.device, b.device) ||
    a.n - b.n ||
    a.at - b.at ||
    compareWords(lineOf(a), lineOf(b))
  );
}

function compareWords(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
