import { beats, type Beats } from '../rhythm.ts';
import { DIVISIONS, type Division } from '../timing/figure.ts';
import { mean, variance } from '../timing/statistics.ts';
import { median, medianDeviation } from '../timing/median.ts';

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
  /** What it costs to say where the onsets lay on these divisions, in nats. */
  readonly cost: number;
}

const FEWEST = 12;
/** The spread that divisions of a beat are chosen by, in beats. */
const USUAL = 0.06;
/** Lags tried, in beats on both sides of what is expected. */
const LAGS = { within: 0.2, step: 0.01 };

/**
 * How far onsets lay from a click's grid. Each beat is taken to be divided as fits its onsets best at the least
 * complexity: squared distances over 2 · .06² beats, plus ln of the division for each note, which is how much less a
 * finer grid says (minimum description length, J. Rissanen, Automatica 14, 1978).
 *
 * @param onsets seconds, rising; 0 is a click
 * @param beat seconds from click to click
 * @param known `error`: standard deviation of a heard onset's own error, seconds
 * @returns null for fewer than 12 onsets
 */
export function overClick(
  onsets: readonly number[],
  beat: number,
  { error = 0 }: { error?: number } = {},
): OverClick | null {
  return onsets.length < FEWEST ? null : fitted(onsets, beat, error, 0);
}

/** Headphones without a wire are late by no more than this, in seconds. */
const LATEST = 0.35;
/** By such parts of a beat a line may be moved and lie on divisions as before, and so near they are looked for. */
const MOVES = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1] as const;
const NEAR = 0.04;

/**
 * The ways in which onsets may lie over a click where nobody knows how late they were heard: as `overClick` has it, and
 * later by parts of a beat. Which of them was meant, onsets alone tell by their `cost`, and often not at all: a line in
 * even eighths lies as well half a beat off.
 */
export function waysOverClick(
  onsets: readonly number[],
  beat: number,
  { error = 0 }: { error?: number } = {},
): OverClick[] {
  const first = overClick(onsets, beat, { error });
  if (!first) return [];
  const later = MOVES.map((move) => first.late + move * beat).filter((lag) => lag <= LATEST);
  return [first, ...later.map((lag) => fitted(onsets, beat, error, lag, NEAR))];
}

function fitted(
  onsets: readonly number[],
  beat: number,
  error: number,
  lag: number,
  within = LAGS.within,
): OverClick {
  const count = Math.round((2 * within) / LAGS.step);
  const fits = Array.from({ length: count + 1 }, (_, i) => {
    const late = lag + (i * LAGS.step - within) * beat;
    return { late, ...fitOf(onsets.map((time) => (time - late) / beat)) };
  });
  const { late, cost, off, divided, places } = fits.reduce((a, b) => (b.cost < a.cost ? b : a));
  const square = variance(withoutFar(off));
  return {
    spread: Math.sqrt(Math.max(0, square * beat * beat - error * error)),
    late: late + mean(off) * beat,
    divided,
    places,
    cost,
  };
}

/** Farther out than so many standard deviations an onset was a slip, or was heard late: it is in no spread. */
const FAR = 3.5;

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
