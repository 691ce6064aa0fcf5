import type { Onset } from './steps.ts';
import { mean, median, medianDeviation } from './statistics.ts';

/** How the player's tempo goes away from the click. */
export interface Drift {
  /** Seconds later for every second: .02 falls behind by 2 %, below 0 runs ahead. */
  readonly slope: number;
  /** Standard error of `slope`. */
  readonly error: number;
  readonly told: boolean;
}

/** How late the player is against how late at calibration. */
export interface Lag {
  /** Seconds: below 0 earlier than then. */
  readonly change: number;
  /** Standard error, in seconds. */
  readonly error: number;
}

/** Who follows a click strays by so much over 48 taps; what is told is so many standard errors out besides. */
const LEAST = 0.01;
const OUT = 3;
const FEWEST = 12;

/**
 * The slope of how late taps are over time (least squares), which only a click makes the player's own.
 * @returns null for fewer than 12 onsets
 */
export function driftOf(onsets: readonly Onset[]): Drift | null {
  if (onsets.length < FEWEST) return null;
  const middle = mean(onsets.map(({ expected }) => expected));
  const late = mean(onsets.map(lateness));
  const along = onsets.reduce((sum, { expected }) => sum + (expected - middle) ** 2, 0);
  const up = onsets.reduce((sum, o) => sum + (o.expected - middle) * (lateness(o) - late), 0);
  const slope = up / along;
  const rest = onsets.map((o) => lateness(o) - late - slope * (o.expected - middle));
  const error = Math.sqrt(longRunVariance(rest) / along);
  return { slope, error, told: Math.abs(slope) > Math.max(LEAST, OUT * error) };
}

/**
 * The variance of what is left of a line where each value carries on a share r of the one before: s² (1 + r) / (1 − r).
 */
function longRunVariance(rest: readonly number[]): number {
  const square = rest.reduce((sum, x) => sum + x * x, 0) / (rest.length - 2);
  const product = rest.slice(1).reduce((sum, x, i) => sum + x * rest[i]!, 0) / (rest.length - 2);
  const share = square > 0 ? Math.min(0.9, Math.max(0, product / square)) : 0;
  return (square * (1 + share)) / (1 - share);
}

/**
 * How late taps are, less what calibration found: the device's own delay cannot be told from the player's by tapping.
 * @returns null for fewer than 12 onsets
 */
export function lagOf(onsets: readonly Onset[], calibrated: number): Lag | null {
  if (onsets.length < FEWEST) return null;
  const lates = onsets.map(lateness);
  // The median's standard error, 1.25 times that of the mean.
  const error = (1.2533 * medianDeviation(lates)) / Math.sqrt(lates.length);
  return { change: median(lates) - calibrated, error };
}

const lateness = ({ time, expected }: Onset) => time - expected;
