import { mean, variance } from '../../theory/timing/statistics.ts';
import { median } from '../../theory/timing/median.ts';
import { stepsOf } from '../../theory/timing/steps.ts';
import type { TimeJudgement } from '../../theory/timing/judge.ts';
import type { TimePlan } from '../../theory/timing/plan.ts';

/** The steps from one place in the beat to the next, slips left out. Times are in seconds. */
export interface StepsAt {
  /** `1–2`, `3–1`. */
  readonly name: string;
  readonly count: number;
  readonly mean: number;
  /** Standard deviation; null for fewer than two steps. */
  readonly spread: number | null;
}

/** Mean and spread of the steps by the place in the beat that they begin on. */
export function stepsByPlace(
  { onsets, evenness }: TimeJudgement,
  { figure, slots, tempo }: TimePlan,
): StepsAt[] {
  const { division } = figure;
  const slips = new Set(evenness?.setAside.map(({ from }) => from.slot));
  const even = 60 / tempo / division;
  // A held note is no step from one place of the beat to the next.
  const steps = stepsOf(onsets).filter(
    ({ from, expected }) => !slips.has(from.slot) && Math.abs(expected - even) < 1e-6,
  );
  return Array.from({ length: division }, (_, place) => {
    const lengths = steps
      .filter(({ from }) => placeOf(slots[from.slot]!.at, division) === place)
      .map(({ from, to }) => to.time - from.time);
    return {
      name: `${place + 1}–${((place + 1) % division) + 1}`,
      count: lengths.length,
      mean: mean(lengths),
      spread: lengths.length < 2 ? null : Math.sqrt(variance(lengths)),
    };
  }).filter(({ count }) => count > 0);
}

/** Which note of its beat an onset is, the first of them 0. */
function placeOf({ n, d }: TimePlan['slots'][number]['at'], division: number): number {
  return Math.round(((n % d) / d) * division);
}

/** A tap in the strip. */
export interface StripTap {
  /** The bar it belongs to, the first of them 0, and beats from that bar's line. */
  readonly bar: number;
  readonly beat: number;
  /** Whether it is one of the worst. */
  readonly worst: boolean;
}

/** Where taps lie in their bars, as late as they are among themselves: what all of them have in common is left out. */
export function stripTaps(
  { onsets, worst }: TimeJudgement,
  { figure, tempo }: TimePlan,
): StripTap[] {
  const usual = median(onsets.map(({ time, expected }) => time - expected));
  return onsets.map(({ tap, time, expected }) => {
    const bar = Math.floor((expected * tempo) / 60 / figure.bar + 1e-6);
    const beat = ((time - usual) * tempo) / 60 - bar * figure.bar;
    return { bar, beat, worst: worst.some((one) => one.tap === tap) };
  });
}
