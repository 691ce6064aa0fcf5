import type { TimedOnset } from './steps.ts';
import { mean } from './statistics.ts';

/** A tap to be pointed at. */
export interface WorstTap {
  readonly tap: number;
  readonly slot: number;
  /** Seconds late between its neighbours; below 0 early. */
  readonly late: number;
}

/** How many are pointed at, how far out among the others in standard deviations, and in seconds. */
const MOST = 3;
const OUT = 3;
const LEAST = 0.02;

/**
 * The taps that stand farthest from where their two neighbours would have them: at most three, none where all are alike.
 * The worst is left out before the next is looked for, or its neighbours would take the blame.
 */
export function worstTaps(onsets: readonly TimedOnset[]): WorstTap[] {
  const worst: WorstTap[] = [];
  let left = onsets;
  while (worst.length < MOST) {
    const between = betweenNeighbours(left);
    if (between.length < 2 * MOST) break;
    const far = between.reduce((a, b) => (Math.abs(b.late) > Math.abs(a.late) ? b : a));
    // A tap that is off makes its neighbours look off by half as much the other way.
    const others = between.filter(({ slot }) => Math.abs(slot - far.slot) > 1);
    const usual = Math.sqrt(mean(others.map(({ late }) => late * late)));
    if (Math.abs(far.late) < Math.max(LEAST, OUT * usual)) break;
    worst.push(far);
    left = left.filter(({ slot }) => slot !== far.slot);
  }
  return worst;
}

function betweenNeighbours(onsets: readonly TimedOnset[]): WorstTap[] {
  return onsets.slice(1, -1).flatMap((onset, i) => {
    const [before, after] = [onsets[i]!, onsets[i + 2]!];
    if (after.slot - before.slot > 4) return [];
    const share = (onset.expected - before.expected) / (after.expected - before.expected);
    const due = before.time + share * (after.time - before.time);
    return [{ tap: onset.tap, slot: onset.slot, late: onset.time - due }];
  });
}
