/**
 * How an answer changes what is remembered, and how that fades: the published FSRS-6 model with its default weights, as
 * in github.com/open-spaced-repetition/ts-fsrs, with three of its four grades and without its separate rule for answers
 * of one day. Time is continuous and in days, and nothing is rounded.
 */

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

/** The published weights by what they do; behind each its number. */
const FIRST_STABILITY = { 1: 0.212, 2: 1.2931, 3: 2.3065 }; // w0, w1, w2
const DIFFICULTY = { first: 6.4133, fall: 0.8334, change: 3.0194, draw: 0.001 }; // w4 to w7
const RIGHT = { growth: 1.8722, saturation: 0.1666, spacing: 0.796, slow: 0.6014 }; // w8 to w10, w15
const WRONG = { scale: 1.4835, difficulty: 0.0614, stability: 0.2629, spacing: 1.6483 }; // w11 to w14
const DECAY = -0.1542; // −w20

/** Makes recall .9 after as many days as the stability says. */
const FACTOR = 0.9 ** (1 / DECAY) - 1;

const LEAST_STABILITY = 0.001;
const MOST_STABILITY = 36_500;

/** Every difficulty is drawn a little towards the first one of grade 4, which is not given here. */
const DRAWN_TO = firstDifficulty(4);

/**
 * The strength after an answer, `days` after the one before; `null` before the first.
 *
 * @throws RangeError where days are not a finite number from 0 up, the grade is not 1, 2 or 3, or the strength is none
 */
export function strengthAfter(before: Strength | null, days: number, grade: Grade): Strength {
  checkDays(days);
  if (grade !== 1 && grade !== 2 && grade !== 3)
    throw new RangeError(`There is no grade ${grade}.`);
  if (before === null) {
    const difficulty = within(1, 10, firstDifficulty(grade));
    return { stability: FIRST_STABILITY[grade], difficulty };
  }
  const recall = recallAfter(before, days);
  const stability =
    grade === 1 ? stabilityAfterWrong(before, recall) : stabilityAfterRight(before, recall, grade);
  return {
    stability: within(LEAST_STABILITY, MOST_STABILITY, stability),
    difficulty: within(1, 10, difficultyAfter(before, grade)),
  };
}

/**
 * The chance of a right answer, `days` after the last one: 1 down to 0.
 *
 * @throws RangeError where days are not a finite number from 0 up, or the strength is none
 */
export function recallAfter(strength: Strength, days: number): number {
  checkDays(days);
  checkStrength(strength);
  return (1 + (FACTOR * days) / strength.stability) ** DECAY;
}

function firstDifficulty(grade: 1 | 2 | 3 | 4): number {
  return DIFFICULTY.first - Math.exp((grade - 1) * DIFFICULTY.fall) + 1;
}

/** The nearer to 10, the less a wrong answer adds. */
function difficultyAfter({ difficulty }: Strength, grade: Grade): number {
  const moved = difficulty + (DIFFICULTY.change * (3 - grade) * (10 - difficulty)) / 9;
  return DIFFICULTY.draw * DRAWN_TO + (1 - DIFFICULTY.draw) * moved;
}

/** Grows the more, the easier the item, the less stable it was and the more it had faded. */
function stabilityAfterRight(before: Strength, recall: number, grade: 2 | 3): number {
  const { stability, difficulty } = before;
  const growth =
    Math.exp(RIGHT.growth) *
    (11 - difficulty) *
    stability ** -RIGHT.saturation *
    (Math.exp((1 - recall) * RIGHT.spacing) - 1) *
    (grade === 2 ? RIGHT.slow : 1);
  return stability * (1 + growth);
}

/** Never more than it was. */
function stabilityAfterWrong({ stability, difficulty }: Strength, recall: number): number {
  const left =
    WRONG.scale *
    difficulty ** -WRONG.difficulty *
    ((stability + 1) ** WRONG.stability - 1) *
    Math.exp((1 - recall) * WRONG.spacing);
  return Math.min(stability, left);
}

function within(least: number, most: number, value: number): number {
  return Math.min(most, Math.max(least, value));
}

function checkDays(days: number): void {
  if (!(days >= 0 && days < Infinity)) throw new RangeError(`Days must be from 0 up, not ${days}.`);
}

function checkStrength({ stability, difficulty }: Strength): void {
  if (!(stability > 0 && stability < Infinity && difficulty >= 1 && difficulty <= 10)) {
    throw new RangeError(`There is no strength of ${stability} days and difficulty ${difficulty}.`);
  }
}
