/**
 * How this student forgets. Some lose things evenly, by a power of time; some keep well for days what is then gone in a
 * week; some have a thing or have it not, and keep it the longer the more often it came back to them. Of each way it is
 * known what the model's level is to be corrected by, and a student's own answers, given on another day than the one before,
 * say how likely each way is theirs (Bayes' rule: a mixture of experts with fixed members). What is foretold is the mean
 * over the ways, by how likely they are.
 */
import { logistic } from './imprint.ts';

/** How likely each way is, as logarithms, the likeliest at 0. */
export type Leanings = readonly number[];

/** Leanings that answers make surer. */
export type LearningLeanings = number[];

/**
 * What a way makes of the facts of an item, on the logistic scale: a weight for each of
 *
 *     1, level, time, level × time, last, answers, last × time, idle, row, row × time
 *
 * (see `facts`). Each is a logistic regression over simulated students of one law: power law, multiscale, all or none.
 */
const WAYS: readonly (readonly number[])[] = [
  [0.08, 1.05, -0.01, 0.02, -0.12, 0.38, 0, 0, 0.03, -0.04],
  [-0.03, 1.02, -0.17, -0.14, -0.11, -0.09, 0.2, -0.18, 0.29, -0.41],
  [-0.83, 0.78, -0.55, 0.18, 0.19, 0.18, -0.19, 0.01, 1.03, -0.03],
];

/** No way is given up: a student may change. */
const UNLIKELIEST = -8;

/** Days that are as any; nearer than so many there is no other day. */
const [MIDDLE, NEAREST] = [3, 0.5];

/** Before any answer: the first way, which has students of two laws, is as likely as both others together. */
const BEFORE = [0, -0.69, -0.69];

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
  let sum = 0;
  let whole = 0;
  for (let k = 0; k < WAYS.length; k++) {
    const likely = Math.exp(leanings[k]!);
    whole += likely;
    sum += likely * chanceBy(WAYS[k]!, x);
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
  WAYS.forEach((way, k) => {
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
  const time = Math.log(Math.max(NEAREST, days) / MIDDLE);
  const last = lastRight ? 1 : 0;
  const answers = Math.log((firstsRight + 0.5) / (firsts - firstsRight + 0.5));
  const rows = Math.log1p(row);
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
  ];
}
