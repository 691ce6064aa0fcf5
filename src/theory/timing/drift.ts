import { stepsOf, type TimedOnset } from './steps.ts';
import { mean, variance } from './statistics.ts';
import { median, medianDeviation } from './median.ts';

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
  readonly told: boolean;
}

/** What is said of a slope at least. */
const LEAST = 0.01;
/** One false alarm in a hundred. */
const OUT = 2.6;
/** What of its free wandering a click leaves to a tempo, on every beat or seldom (measured on simulated players). */
const HELD = { beat: 0.3, seldom: 0.45 } as const;
const FEWEST = 12;
/** What is said of a lag at least, in seconds: calibration itself is known to 3 ms, and a hand keeps no closer. */
const LEAST_LAG = 0.015;

/**
 * The slope of how late taps are over time (least squares), which only a click makes the player's own: without one n
 * steps of spread s wander by a slope of √(6 / 5n) · s, and a bent tempo cannot be told from that.
 *
 * @param clicks on every beat, or seldom
 * @returns null for fewer than 12 onsets
 */
export function driftOf(onsets: readonly TimedOnset[], clicks: keyof typeof HELD): Drift | null {
  const ratios = stepsOf(onsets).map(({ ratio }) => ratio);
  if (onsets.length < FEWEST || ratios.length < FEWEST / 2) return null;
  const middle = mean(onsets.map(({ expected }) => expected));
  const late = mean(onsets.map(lateness));
  const along = onsets.reduce((sum, { expected }) => sum + (expected - middle) ** 2, 0);
  const up = onsets.reduce((sum, o) => sum + (o.expected - middle) * (lateness(o) - late), 0);
  const slope = up / along;
  const error = HELD[clicks] * Math.sqrt((1.2 * variance(ratios)) / ratios.length);
  return { slope, error, told: Math.abs(slope) > Math.max(LEAST, OUT * error) };
}

/**
 * How late taps are, less what calibration found: the device's own delay cannot be told from the player's by tapping.
 * @returns null for fewer than 12 onsets
 */
export function lagOf(onsets: readonly TimedOnset[], calibrated: number): Lag | null {
  if (onsets.length < FEWEST) return null;
  const lates = onsets.map(lateness);
  // The median's standard error, 1.25 times that of the mean.
  const error = (1.2533 * medianDeviation(lates)) / Math.sqrt(lates.length);
  const change = median(lates) - calibrated;
  return { change, error, told: Math.abs(change) > Math.max(LEAST_LAG, OUT * error) };
}

const lateness = ({ time, expected }: TimedOnset) => time - expected;
