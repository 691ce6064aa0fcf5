import { type Known, type Memory, recallOf } from './memory.ts';
import { DAY, recallAfter, type Strength } from './model.ts';

/**
 * What will be known on another day: the model's recall, its stability corrected for this student by two factors, one
 * for items whose last answer was wrong, one for those whose last was right.
 */

/** One answer given at least half a day after the one before it, and what had been known until then. */
export interface Trial {
  readonly strength: Strength;
  readonly days: number;
  readonly lastRight: boolean;
  readonly right: boolean;
}

/** The two factors on stability. */
export interface Correction {
  readonly wrong: number;
  readonly right: number;
}

/** Nearer answers say nothing about another day. */
export const APART = 0.5;

/** The factors are fitted on so many of the last trials; so many are kept to see how the forecast did. */
const RECENT = 400;
export const KEPT = 2000;

/** The forecast is looked back upon in blocks of so many trials, each foretold from those before it. */
const BLOCK = 25;

/** Fits the factors: the likeliest ones, their logarithms held by a normal prior around 0 with deviation 1. */
export function correctionFrom(trials: readonly Trial[]): Correction {
  const recent = trials.slice(-RECENT);
  return {
    wrong: factorFrom(recent.filter(({ lastRight }) => !lastRight)),
    right: factorFrom(recent.filter(({ lastRight }) => lastRight)),
  };
}

/** Looks for the highest point of the posterior, which has one, by golden section between e^−3 and e^3. */
function factorFrom(trials: readonly Trial[]): number {
  if (trials.length === 0) return 1;
  const cost = (log: number) =>
    trials.reduce((sum, trial) => sum + loss(corrected(trial, Math.exp(log)), trial.right), 0) +
    (log * log) / 2;
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [-3, 3];
  while (high - low > 0.01) {
    const [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
    if (cost(a) < cost(b)) high = b;
    else low = a;
  }
  return Math.exp((low + high) / 2);
}

function corrected({ strength, days }: Pick<Trial, 'strength' | 'days'>, factor: number): number {
  return recallAfter({ ...strength, stability: strength.stability * factor }, days);
}

/** Log loss of one forecast: the penalty for having given so much chance to what did not happen. */
function loss(chance: number, right: boolean): number {
  const safe = Math.min(0.99, Math.max(0.01, chance));
  return -Math.log(right ? safe : 1 - safe);
}

/** The forecast of recall at a time of the device's clock, 0 to 1; null for an item never asked. */
export type Forecast = (item: string, at: number) => number | null;

/** The forecast for this student, from all that was learned until now. */
export function forecastOf(memory: Memory): Forecast {
  const correction = correctionFrom(memory.trials);
  return (item, at) => {
    const known = memory.items.get(item);
    return known ? foretell(memory, known, correction, at) : null;
  };
}

function foretell(memory: Memory, known: Known, correction: Correction, at: number): number {
  const days = Math.max(0, (at + memory.shift - known.last) / DAY);
  const factor = known.lastRight ? correction.right : correction.wrong;
  return days < APART ? recallOf(memory, known, at) : corrected({ ...known, days }, factor);
}

/** How the forecasts did against what then happened. */
export interface LookBack {
  /** How many answers were foretold, each from those before it. */
  readonly answers: number;
  /** Mean log loss, less is better: ours; the model's uncorrected; that of always saying the student's mean so far. */
  readonly ours: number;
  readonly uncorrected: number;
  readonly constant: number;
  /** Of the answers that were given a chance in each fifth, from 0 to 1: how many, that chance and the share right. */
  readonly fifths: readonly {
    readonly answers: number;
    readonly foretold: number;
    readonly happened: number;
  }[];
}

/** Looks back on the trials kept; null before there are enough to tell. */
export function lookBack({ trials }: Pick<Memory, 'trials'>): LookBack | null {
  if (trials.length < 2 * BLOCK) return null;
  const sums = { ours: 0, uncorrected: 0, constant: 0 };
  const fifths = Array.from({ length: 5 }, () => ({ answers: 0, foretold: 0, happened: 0 }));
  let correction = correctionFrom([]);
  let right = 0;
  trials.forEach((trial, k) => {
    if (k % BLOCK === 0) correction = correctionFrom(trials.slice(0, k));
    const chance = corrected(trial, trial.lastRight ? correction.right : correction.wrong);
    sums.ours += loss(chance, trial.right);
    sums.uncorrected += loss(corrected(trial, 1), trial.right);
    sums.constant += loss((right + 1) / (k + 2), trial.right);
    if (trial.right) right++;
    const fifth = fifths[Math.min(4, Math.floor(chance * 5))]!;
    fifth.answers++;
    fifth.foretold += chance;
    fifth.happened += trial.right ? 1 : 0;
  });
  return {
    answers: trials.length,
    ours: sums.ours / trials.length,
    uncorrected: sums.uncorrected / trials.length,
    constant: sums.constant / trials.length,
    fifths: fifths.map(({ answers, foretold, happened }) => ({
      answers,
      foretold: foretold / Math.max(1, answers),
      happened: happened / Math.max(1, answers),
    })),
  };
}
