import type { TimePlan } from './plan.ts';
import type { TimedOnset } from './steps.ts';
import { mean, variance } from './statistics.ts';
import { studentQuantile } from './quantiles.ts';

/** Where one place of the beat falls as a rule, against the player's own beats. */
export interface PlaceInBeat {
  /** 2 for the second note of a triplet. */
  readonly place: number;
  /** Seconds: below 0 it comes early. */
  readonly late: number;
  /** Standard error of `late`. */
  readonly error: number;
  /** Whether it is far enough out, and sure enough, to be said. */
  readonly told: boolean;
}

/** What is said of a place at least, in seconds: from 48 taps a bend of this size is not chance. */
const LEAST = 0.0125;
/** How seldom an even figure may be told a bend, whatever the player's spread. */
const FALSE_ALARM = 0.008;
const FEWEST = 4;

/**
 * The shape of triplets or eighths: where the places after the beat's first fall on average, in those beats that are whole.
 *
 * @param slips taps that say nothing of the habit
 * @returns null where the figure does not divide the beat, or fewer than 4 beats are whole
 */
export function beatShapeOf(
  onsets: readonly TimedOnset[],
  { figure, slots, tempo }: TimePlan,
  slips: ReadonlySet<number> = new Set(),
): PlaceInBeat[] | null {
  const { division } = figure;
  if (division === 1) return null;
  const times = new Map(
    onsets.filter(({ tap }) => !slips.has(tap)).map(({ slot, time }) => [slot, time]),
  );
  const whole = slots.flatMap((_, slot) => {
    const beat = wholeBeat(slot);
    return beat ? [beat] : [];
  });
  if (whole.length < FEWEST) return null;
  const places = Array.from({ length: division - 1 }, (_, i) => whole.map((beat) => beat[i]!));
  const square = mean(places.map(variance));
  const error = Math.sqrt(square / whole.length);
  const freedom = places.length * (whole.length - 1);
  const sure = error * studentQuantile(1 - FALSE_ALARM / (2 * places.length), freedom);
  return places.map((lates, i) => {
    const late = mean(lates);
    return { place: i + 2, late, error, told: Math.abs(late) >= Math.max(LEAST, sure) };
  });

  /** How late each place of the beat that begins here is against a beat as long as this one; null where it is not whole. */
  function wholeBeat(slot: number): number[] | null {
    if (slots[slot]!.at.d !== 1 || slot + division >= slots.length) return null;
    const beat = Array.from({ length: division + 1 }, (_, i) => times.get(slot + i));
    if (!beat.every((time) => time !== undefined)) return null;
    const isEven = beat.every((_, i) => {
      const due = slots[slot]!.seconds + (i * 60) / tempo / division;
      return Math.abs(slots[slot + i]!.seconds - due) < 1e-6;
    });
    if (!isEven) return null;
    const [first, length] = [beat[0]!, beat[division]! - beat[0]!];
    return beat.slice(1, division).map((time, i) => time - first - (length * (i + 1)) / division);
  }
}
