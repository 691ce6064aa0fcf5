/** An answer on another day than the one before it: what chance it had been given just before, and what it was. */
export interface Trial {
  readonly foretold: number;
  readonly right: boolean;
}

/** So many trials are kept. */
const KEPT = 2000;

/** Keeps the last trials, and at most half as many again. */
export function keepTrial(trials: Trial[], trial: Trial): void {
  trials.push(trial);
  if (trials.length >= 1.5 * KEPT) trials.splice(0, trials.length - KEPT);
}
