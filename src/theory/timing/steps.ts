import type { Match } from './match.ts';
import type { TimePlan } from './plan.ts';

/** A matched onset: when it was expected and when it came, in seconds from the same 0. */
export interface TimedOnset {
  readonly slot: number;
  readonly tap: number;
  readonly expected: number;
  readonly time: number;
}

/** From one onset to the next that was expected, both there. */
export interface TimeStep {
  readonly from: TimedOnset;
  readonly to: TimedOnset;
  /** Seconds. */
  readonly expected: number;
  /** How long it was, in units of how long it should have been. */
  readonly ratio: number;
}

export function onsetsOf(match: Match, taps: readonly number[], plan: TimePlan): TimedOnset[] {
  return match.pairs.map(({ slot, tap }) => ({
    slot,
    tap,
    expected: plan.slots[slot]!.seconds,
    time: taps[tap]!,
  }));
}

/** The steps between neighbours; none over a gap. */
export function stepsOf(onsets: readonly TimedOnset[]): TimeStep[] {
  return onsets.slice(1).flatMap((to, i) => {
    const from = onsets[i]!;
    if (to.slot !== from.slot + 1) return [];
    const expected = to.expected - from.expected;
    return [{ from, to, expected, ratio: (to.time - from.time) / expected }];
  });
}
