import { FSRSAlgorithm } from 'ts-fsrs';

/**
 * How an answer changes what is remembered, and how that fades: the published FSRS-6 model with its default weights
 * (github.com/open-spaced-repetition/fsrs4anki/wiki/The-Algorithm), through ts-fsrs' bare algorithm. This file alone
 * knows the library; time is continuous and in days, and nothing is rounded to calendar days.
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

class Algorithm extends FSRSAlgorithm {
  constructor() {
    super({
      enable_fuzz: false,
      enable_short_term: false,
      learning_steps: [],
      relearning_steps: [],
    });
    // The library watches its parameters for changes, at a cost each time one is read; these never change.
    this.param = { ...this.param };
  }
}

const algorithm = new Algorithm();

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
  return algorithm.next_state(before, days, grade);
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

function checkDays(days: number): void {
  if (!(days >= 0 && days < Infinity)) throw new RangeError(`Days must be from 0 up, not ${days}.`);
}

function checkStrength({ stability, difficulty }: Strength): void {
  if (!(stability > 0 && stability < Infinity && difficulty >= 1 && difficulty <= 10)) {
    throw new RangeError(`There is no strength of ${stability} days and difficulty ${difficulty}.`);
  }
}
