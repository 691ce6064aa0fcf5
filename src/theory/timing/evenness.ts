import type { TimeStep } from './steps.ts';
import { mean, variance } from './statistics.ts';
import { median, medianDeviation } from './median.ts';
import { outliers, varianceQuantile } from './quantiles.ts';

/** How even steps are: how much their lengths spread. A step counts as a fraction of how long it should be. */
export interface Evenness {
  /** How many steps it was reckoned from. */
  readonly steps: number;
  /**
   * Standard deviation of the steps as a fraction of a step, the error of the clock that timed them taken out; null
   * where it is below `finest`: as even as this clock can tell.
   */
  readonly fraction: number | null;
  /** The same in seconds of the usual step. */
  readonly spread: number | null;
  /** Between which two fractions the player's own spread lies, with a confidence of 95 %. */
  readonly range: readonly [number, number];
  /** What a few far-off taps hardly move, to be shown beside `spread`, in seconds: that of the median, of all steps. */
  readonly medianSpread: number;
  /** The least spread that can be told from none, in seconds. */
  readonly finest: number;
  /** Steps set aside as slips: far out among the others, and few. They are in none of the figures but the median's. */
  readonly setAside: readonly TimeStep[];
}

/** What screens and hands leave in the dark whatever is known of their clock, in seconds (measured on simulated taps). */
const FINEST = 0.006;
/** Both tails of the range. */
const TAIL = 0.025;
/** Below so many steps a spread says nothing. */
const FEWEST = 4;
/** In so many steps two may be set aside, which is one tap. */
const SLIP_IN = 15;

/**
 * The evenness of steps.
 *
 * Two clocks and more are in them: the player's, the hand's delay, and the panel's rounding. The variance of a step is
 * C + 2M (A. Wing & A. Kristofferson, *Response delays and the timing of discrete motor responses*, Perception &
 * Psychophysics 14, 1973), and as an error of one onset is in the two steps beside it, the clock's adds 2·error².
 *
 * @param error standard deviation of a time's own error, in seconds
 * @returns null below 4 steps
 */
export function evennessOf(steps: readonly TimeStep[], error: number): Evenness | null {
  const all = steps.map(({ ratio }) => ratio);
  const far = new Set(outliers(all, 2 * Math.floor(steps.length / SLIP_IN)));
  const kept = steps.filter((_, i) => !far.has(i));
  if (kept.length < FEWEST) return null;
  const usual = median(steps.map(({ expected }) => expected));
  const ratios = kept.map(({ ratio }) => ratio);
  const clock = mean(kept.map(({ expected }) => 2 * (error / expected) ** 2));
  const square = variance(ratios);
  const freedom = (kept.length - 1) / dependence(kept);
  const limit = (p: number) => own(square / varianceQuantile(p, freedom), clock);
  const sure = Math.sqrt(clock * (varianceQuantile(1 - TAIL, freedom) - 1));
  const finest = Math.max(FINEST, sure * usual);
  const fraction = own(square, clock);
  const told = fraction * usual >= finest;
  return {
    steps: kept.length,
    fraction: told ? fraction : null,
    spread: told ? fraction * usual : null,
    range: [limit(1 - TAIL), limit(TAIL)],
    medianSpread: usual * own(medianDeviation(all) ** 2, clock),
    finest,
    setAside: steps.filter((_, i) => far.has(i)),
  };
}

/** A standard deviation without the clock's part of the variance. */
const own = (square: number, clock: number) => Math.sqrt(Math.max(0, square - clock));

/**
 * By how much less steps say of their variance than if they were drawn apart: 1 + 2 Σ r², their correlations with
 * those after them (M. Bartlett, *On the theoretical specification of sampling properties of autocorrelated time
 * series*, JRSS Suppl. 8, 1946). A hand's delay makes neighbours −½ alike at most: 1.5.
 */
function dependence(steps: readonly TimeStep[]): number {
  const middle = mean(steps.map(({ ratio }) => ratio));
  const square = mean(steps.map(({ ratio }) => (ratio - middle) ** 2));
  const at = new Map(steps.map(({ from, ratio }) => [from.slot, ratio - middle]));
  const squared = [1, 2].map((apart) => {
    const products = [...at].flatMap(([slot, x]) => {
      const later = at.get(slot + apart);
      return later === undefined ? [] : [x * later];
    });
    if (products.length < FEWEST || square === 0) return 0;
    // What chance alone adds to a correlation's square is taken out.
    return Math.max(0, (mean(products) / square) ** 2 - 1 / products.length);
  });
  return 1 + 2 * squared.reduce((a, b) => a + b, 0);
}
