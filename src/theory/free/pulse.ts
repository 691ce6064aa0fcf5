import { beats, type Beats } from '../rhythm.ts';
import { DIVISIONS, type Division } from '../timing/figure.ts';
import { mean, median, medianDeviation, variance } from '../timing/statistics.ts';

/** How a free line lay over a click. */
export interface OverClick {
  /** Standard deviation of the onsets from the nearest division of the beat, in seconds, the ear's own error taken out. */
  readonly spread: number;
  /** How late they came as a rule, in seconds: the device's delay and the player's together. */
  readonly late: number;
  /** How many beats with notes in them were divided into 1, 2, 3, 4. */
  readonly divided: Readonly<Record<Division, number>>;
  /** The division of the beat nearest to each onset, in beats from the click at 0. */
  readonly places: readonly Beats[];
}

const FEWEST = 12;
/** The spread that divisions of a beat are chosen by, in beats. */
const USUAL = 0.06;
/** Lags tried, in beats on both sides of what is expected. */
const LAGS = { within: 0.2, step: 0.01 } as const;

/**
 * How far onsets lay from a click's grid. Each beat is taken to be divided as fits its onsets best at the least
 * complexity: squared distances over 2 · .06² beats, plus ln of the division for each note, which is how much less a
 * finer grid says (minimum description length, J. Rissanen, Automatica 14, 1978).
 *
 * @param onsets seconds, rising; 0 is a click
 * @param beat seconds from click to click
 * @param known `lag`: how late onsets come as a rule; `error`: standard deviation of a heard onset's own error; seconds
 * @returns null for fewer than 12 onsets
 */
export function overClick(
  onsets: readonly number[],
  beat: number,
  { lag = 0, error = 0 }: { lag?: number; error?: number } = {},
): OverClick | null {
  if (onsets.length < FEWEST) return null;
  const count = Math.round((2 * LAGS.within) / LAGS.step);
  const fits = Array.from({ length: count + 1 }, (_, i) => {
    const late = lag + (i * LAGS.step - LAGS.within) * beat;
    return fitOf(onsets.map((time) => (time - late) / beat));
  });
  const least = Math.min(...fits.map(({ cost }) => cost));
  const at = fits.findIndex(({ cost }) => cost === least);
  const { off, divided, places } = fits[at]!;
  const middle = mean(off);
  const square = variance(withoutFar(off));
  return {
    spread: Math.sqrt(Math.max(0, square * beat * beat - error * error)),
    late: lag + (at * LAGS.step - LAGS.within + middle) * beat,
    divided,
    places,
  };
}

/** Farther out than so many standard deviations an onset was a slip, or was heard late: it is in no spread. */
const FAR = 3;

/** The offsets but those that are far out, by the deviation of the median, which these do not move. */
function withoutFar(off: readonly number[]): number[] {
  const middle = median(off);
  const far = FAR * medianDeviation(off);
  return off.filter((x) => Math.abs(x - middle) <= far);
}

interface Fit {
  readonly cost: number;
  /** How far each onset lies from its grid, in beats. */
  readonly off: readonly number[];
  readonly divided: Record<Division, number>;
  readonly places: readonly Beats[];
}

function fitOf(times: readonly number[]): Fit {
  const inBeats = new Map<number, number[]>();
  for (const time of times) {
    // What comes a little before a click is meant for it.
    const beat = Math.floor(time + 1 / 8);
    inBeats.set(beat, [...(inBeats.get(beat) ?? []), time - beat]);
  }
  const divided = { 1: 0, 2: 0, 3: 0, 4: 0 };
  let cost = 0;
  const off: number[] = [];
  const places: Beats[] = [];
  for (const [beat, within] of inBeats) {
    const best = DIVISIONS.map((division) => divisionFit(within, division)).reduce((a, b) =>
      b.cost < a.cost ? b : a,
    );
    divided[best.division]++;
    cost += best.cost;
    off.push(...best.off);
    const { division } = best;
    places.push(...within.map((x) => beats(beat * division + Math.round(x * division), division)));
  }
  return { cost, off, divided, places };
}

function divisionFit(within: readonly number[], division: Division) {
  const off = within.map((x) => x - Math.round(x * division) / division);
  const squares = off.reduce((sum, x) => sum + x * x, 0);
  return { division, off, cost: squares / (2 * USUAL ** 2) + within.length * Math.log(division) };
}
