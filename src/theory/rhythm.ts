/**
 * Time in music as exact fractions of a beat, so that three triplets make one beat and no more.
 */

/** A time or a length in beats: `n / d` in lowest terms, `d` ≥ 1. */
export interface Beats {
  readonly n: number;
  readonly d: number;
}
