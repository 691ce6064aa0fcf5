/**
 * How this student forgets. Some lose things evenly, by a power of time; some keep well for days what is then gone in a
 * week; some have a thing or have it not, and keep it the longer the more often it came back to them. Of each way it is
 * known what the model's level is to be corrected by, and a student's own answers say how likely each way is theirs (Bayes'
 * rule: a mixture of experts with fixed members). What is foretold is the mean over the ways, by how likely they are.
 */
import { logistic } from './imprint.ts';

/** How likely each way is, as logarithms, the likeliest at 0. */
export type Leanings = readonly number[];

/** Leanings that answers make surer. */
export type LearningLeanings = number[];

/**
 * What a way makes of the facts of an item, on the logistic scale: a weight for each of
 *
 *     1, level, time, level × time, last, answers, last × time, idle, row, row × time, firsts, firsts × time
 *
 * (see `regressors`). Each is a logistic regression over simulated students of one law: power law, multiscale, all or none.
 */
type Way = readonly number[];

/** What is known if nothing is asked until then. */
const SHOWN: readonly Way[] = [
  [-0.04, 0.97, 0.16, 0, -0.07, 0.42, 0.1, 0, -0.07, -0.12, 0.08, -0.07],
  [-0.58, 0.8, 0.02, -0.16, 0.36, -0.09, 0.08, -0.12, 0.2, -0.31, 0.15, -0.18],
  [-0.38, 0.9, -0.52, 0.16, 0.18, 0.09, -0.12, -0.26, 1.39, -0.02, -0.25, 0.06],
];

/**
 * What is answered, on another day than the last time and on the same. That is another matter, for meanwhile what is
 * like the item was practised: by what is shown nobody could be told who forgets all in a week that they rest.
 */
const LATER: readonly Way[] = [
  [-0.04, 0.98, 0.02, -0.02, -0.16, 0.39, -0.05, -0.06, 0.05, -0.03, 0.09, 0.02],
  [0.01, 1.01, -0.12, -0.17, -0.12, -0.01, 0.15, -0.28, 0.34, -0.45, -0.02, 0],
  [-0.18, 0.93, -0.32, -0.01, -0.04, -0.05, -0.41, -0.16, 1.46, 0.07, -0.39, 0.01],
];
const SOON: readonly Way[] = [
  [0.18, 0.21, -0.3, -0.37, -0.17, 0.49, 0.3, 0, 0.12, -0.21, -0.07, 0.13],
  [1.03, 0.11, 0, -0.2, 0.23, 0.57, -0.42, -0.06, 0.04, -0.08, 0.07, -0.12],
  [-0.01, 0.1, 0.01, -0.17, 0.71, 0.23, -1.27, -0.01, 0, 0, -0.01, 0.01],
];

/** No way is given up: a student may change. */
const UNLIKELIEST = -8;

/** Only an answer so many days after the one before is one on another day. */
export const APART = 0.5;

/** Days that are as any. */
const MIDDLE = 3;

/** Before any answer: the first way has students of two laws. */
const BEFORE = [0, -0.5, -0.5];

export function noLeanings(): LearningLeanings {
  return [...BEFORE];
}

/** What is to be foretold from: one item at a moment. */
export interface ItemMoment {
  /** As the model reckons it, on the logistic scale. */
  readonly level: number;
  /** Since the item's last answer, and since the student's last answer to anything. */
  readonly days: number;
  readonly idle: number;
  /** Whether the item's last answer was right; how many were in a row, each on another day. */
  readonly lastRight: boolean;
  readonly row: number;
  /** First answers of a day, and how many of those were right. */
  readonly firsts: number;
  readonly firstsRight: number;
}

/** The chance that an item is known, no guess counted, to be expected of this student. */
export function foretold(leanings: Leanings, facts: ItemMoment): number {
  const x = regressors(facts);
  return meanOver(leanings, (k) => chanceBy(SHOWN[k]!, x));
}

/** The mean over the ways of what each makes it, by how likely each is. */
export function meanOver(leanings: Leanings, of: (way: number) => number): number {
  let [sum, whole] = [0, 0];
  for (let k = 0; k < leanings.length; k++) {
    const likely = Math.exp(leanings[k]!);
    whole += likely;
    sum += likely * of(k);
  }
  return sum / whole;
}

/** Makes the leanings surer by an answer, in place. `guess`: the chance of a right answer without knowing. */
export function lean(
  leanings: LearningLeanings,
  facts: ItemMoment,
  right: boolean,
  guess: number,
): void {
  const x = regressors(facts);
  (facts.days >= APART ? LATER : SOON).forEach((way, k) => {
    const known = Math.min(0.98, Math.max(0.02, chanceBy(way, x)));
    const chance = guess + (1 - guess) * known;
    leanings[k]! += Math.log(right ? chance : 1 - chance);
  });
  const likeliest = Math.max(...leanings);
  leanings.forEach((one, k) => {
    leanings[k] = Math.max(UNLIKELIEST, one - likeliest);
  });
}

function chanceBy(way: readonly number[], x: readonly number[]): number {
  // Asked of every item on every screen: a plain loop is twice as fast as the list's own functions.
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += way[i]! * x[i]!;
  return logistic(sum);
}

function regressors({
  level,
  days,
  idle,
  lastRight,
  row,
  firsts,
  firstsRight,
}: ItemMoment): number[] {
  const time = Math.log(Math.max(APART, days) / MIDDLE);
  const last = lastRight ? 1 : 0;
  const answers = Math.log((firstsRight + 0.5) / (firsts - firstsRight + 0.5));
  const rows = Math.log1p(row);
  const often = Math.log1p(firsts);
  return [
    1,
    level,
    time,
    level * time,
    last,
    answers,
    last * time,
    Math.log1p(idle),
    rows,
    rows * time,
    often,
    often * time,
  ];
}
