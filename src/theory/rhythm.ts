/**
 * Time in music as exact fractions of a beat, so that three triplets make one beat and no more.
 */

/** A time or a length in beats: `n / d` in lowest terms, `d` ≥ 1. */
export interface Beats {
  readonly n: number;
  readonly d: number;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? Math.abs(a) : commonDivisor(b, a % b);
}

/**
 * `n / d` beats in lowest terms.
 * @throws RangeError where either is no whole number, or `d` is 0.
 */
export function beats(n: number, d = 1): Beats {
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d) || d === 0)
    throw new RangeError(`${n}/${d} is not a fraction of whole numbers.`);
  const divisor = commonDivisor(n, d) * Math.sign(d);
  // Adding 0 turns −0 into 0.
  return { n: n / divisor + 0, d: d / divisor };
}

export function add(a: Beats, b: Beats): Beats {
  return beats(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function subtract(a: Beats, b: Beats): Beats {
  return beats(a.n * b.d - b.n * a.d, a.d * b.d);
}

/** Below 0 where `a` is the earlier or shorter, 0 where they are equal. */
export function compare(a: Beats, b: Beats): number {
  return a.n * b.d - b.n * a.d;
}

export function toNumber(a: Beats): number {
  return a.n / a.d;
}

/** `a` times a whole number or another fraction. */
export function times(a: Beats, factor: Beats | number): Beats {
  const by = typeof factor === 'number' ? beats(factor) : factor;
  return beats(a.n * by.n, a.d * by.d);
}
