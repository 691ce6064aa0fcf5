import { median } from '../theory/timing/median.ts';

/** The tempos that can be played, in beats a minute. */
export const SLOWEST = 30;
export const FASTEST = 240;

/** So many of the last taps count. */
const TAPS = 8;

/**
 * The tempo that taps set.
 *
 * @param times of the taps in ms, the last one last; a pause of more than a beat at the slowest tempo begins anew
 * @returns whole beats a minute by the median of the last taps' distances, or null before the second tap
 */
export function tappedTempo(times: readonly number[]): number | null {
  const gaps = times.slice(1).map((time, i) => time - times[i]!);
  const pause = gaps.findLastIndex((gap) => gap > 60_000 / SLOWEST + 100);
  const counted = gaps.slice(pause + 1).slice(1 - TAPS);
  if (counted.length === 0) return null;
  return Math.round(Math.min(FASTEST, Math.max(SLOWEST, 60_000 / median(counted))));
}
