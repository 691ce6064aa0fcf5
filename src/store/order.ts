import { lineOf } from './logLine.ts';
import type { Review, Reviews } from './review.ts';

/**
 * Runs of reviews of any devices in one order, the same for the same set however it came together. A device's reviews
 * stay in the order of its count, whatever its clock did; between devices the earlier one comes first, by the latest
 * time that the device had shown until then.
 */
export function inOrder(runs: readonly Reviews[]): readonly Reviews[] {
  if (areOneDevices(runs)) return runs;
  const timed = runs
    .flatMap((run) => Array.from(run, (review) => ({ review, time: review.at })))
    .toSorted((a, b) => byCount(a.review, b.review));
  for (let k = 1; k < timed.length; k++) {
    const [before, one] = [timed[k - 1]!, timed[k]!];
    if (before.review.device === one.review.device) one.time = Math.max(one.time, before.time);
  }
  // Sorting is stable: within one time, by device and count.
  return [timed.toSorted((a, b) => a.time - b.time).map(({ review }) => review)];
}

/** Whether they are of one device and in its order already, as on most phones. */
function areOneDevices(runs: readonly Reviews[]): boolean {
  let before: Review | undefined;
  for (const run of runs) {
    // Within a pack the counts follow one another.
    for (const review of Array.isArray(run) ? (run as Review[]) : [run.at(0)!, run.at(-1)!]) {
      if (before && !(before.device === review.device && before.n < review.n)) return false;
      before = review;
    }
  }
  return true;
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
