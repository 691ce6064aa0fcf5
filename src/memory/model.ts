import { FSRSAlgorithm } from 'ts-fsrs';

/**
 * How an answer changes what is remembered, and how that fades: the published FSRS-6 model with its default weights
 * (github.com/open-spaced-repetition/fsrs4anki/wiki/The-Algorithm), through ts-fsrs' bare algorithm. This file alone
 * knows the library; time is continuous and in days, and nothing is rounded to calendar days.
 */

/** Written into backups, so that states can be told apart should the model ever change. */
export const MODEL = 'FSRS-6, default weights';

export const DAY = 86_400_000;

/** 1 wrong, 2 right but slow for this student, 3 right. */
export type Grade = 1 | 2 | 3;

/** How firmly one item is held. */
export interface Strength {
  /** Days until recall has faded to .9. */
  readonly stability: number;
  /** 1 to 10. */
  readonly difficulty: number;
}

const algorithm = new FSRSAlgorithm({
  enable_fuzz: false,
  enable_short_term: false,
  learning_steps: [],
  relearning_steps: [],
});

// Importing the library hangs these on every date of the page.
for (const method of ['scheduler', 'diff', 'format', 'dueFormat']) {
  Reflect.deleteProperty(Date.prototype, method);
}

/**
 * The strength after an answer, `days` after the one before; `null` before the first.
 *
 * @throws RangeError where days are not a finite number from 0 up, the grade is not 1, 2 or 3, or the strength is none
 */
export function strengthAfter(before: Strength | null, days: number, grade: Grade): Strength {
  checkDays(days);
  if (grade !== 1 && grade !== 2 && grade !== 3)
    throw new RangeError(`There is no grade ${grade}.`);
  if (before !== null) checkStrength(before);
  const { stability, difficulty } = algorithm.next_state(before, days, grade);
  return { stability, difficulty };
}

/**
 * The chance of a right answer, `days` after the last one: 1 down to 0.
 *
 * @throws RangeError where days are not a finite number from 0 up, or the strength is none
 */
export function recallAfter(strength: Strength, days: number): number {
  checkDays(days);
  checkStrength(strength);
  return algorithm.forgetting_curve(days, strength.stability);
}

/** What asking an item now would change, seen from `ahead` days later. */
export interface Outlook {
  /** The chance of a right answer now. */
  readonly recall: number;
  /** Recall `ahead` days from now: once answered right, once answered wrong, not asked at all. */
  readonly right: number;
  readonly wrong: number;
  readonly unasked: number;
}

const w = algorithm.parameters.w as number[];
const [DECAY, RIGHT] = [-w[20]!, Math.exp(w[8]!)];
const FACTOR = Math.exp(Math.log(0.9) / DECAY) - 1;
const fade = (days: number, stability: number) => (1 + (FACTOR * days) / stability) ** DECAY;

/**
 * The outlook on an item `days` after its last answer. The published formulas written out, because ten thousand items
 * are looked at for one card, and this takes a fifth of the library's time; to six places the same (tested).
 */
export function outlook({ stability, difficulty }: Strength, days: number, ahead: number): Outlook {
  const recall = fade(days, stability);
  const gain = (11 - difficulty) * stability ** -w[9]! * (Math.exp((1 - recall) * w[10]!) - 1);
  const loss =
    w[11]! *
    difficulty ** -w[12]! *
    ((stability + 1) ** w[13]! - 1) *
    Math.exp((1 - recall) * w[14]!);
  return {
    recall,
    right: fade(ahead, Math.min(36_500, stability * (1 + RIGHT * gain))),
    wrong: fade(ahead, Math.max(0.001, Math.min(stability, loss))),
    unasked: fade(days + ahead, stability),
  };
}

function checkDays(days: number): void {
  if (!(days >= 0 && days < Infinity)) throw new RangeError(`Days must be from 0 up, not ${days}.`);
}

function checkStrength({ stability, difficulty }: Strength): void {
  if (!(stability > 0 && stability < Infinity && difficulty >= 1 && difficulty <= 10)) {
    throw new RangeError(`There is no strength of ${stability} days and difficulty ${difficulty}.`);
  }
}
