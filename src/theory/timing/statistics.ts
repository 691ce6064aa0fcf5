/** What the judge of times needs of statistics, in closed approximations that hold from four observations on. */

export function mean(of: readonly number[]): number {
  return of.reduce((sum, x) => sum + x, 0) / of.length;
}

/** Of a sample, n − 1 in the denominator; NaN for fewer than two. */
export function variance(of: readonly number[]): number {
  const middle = mean(of);
  return of.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (of.length - 1);
}

/** NaN for none. */
export function median(of: readonly number[]): number {
  const sorted = of.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** A spread that a few far-off values hardly move: 1.4826 × the median distance from the median, σ of a normal sample. */
export function medianDeviation(of: readonly number[]): number {
  const middle = median(of);
  return 1.4826 * median(of.map((x) => Math.abs(x - middle)));
}
