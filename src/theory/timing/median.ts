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
