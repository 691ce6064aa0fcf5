/** What the judge of times needs of statistics, in closed approximations that hold from four observations on. */

export function mean(of: readonly number[]): number {
  return of.reduce((sum, x) => sum + x, 0) / of.length;
}

/** Of a sample, n − 1 in the denominator; NaN for fewer than two. */
export function variance(of: readonly number[]): number {
  const middle = mean(of);
  return of.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (of.length - 1);
}
