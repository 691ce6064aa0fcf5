/**
 * What this student's own answers say of the model: some forget faster than it reckons, some know more surely than it
 * dares to say, some lose at a stroke what they once missed. Five weights on the logistic scale, learned from answers
 * given on another day than the one before (Bayesian logistic regression, one step of an extended Kalman filter an
 * answer; the doubt grows a little with each, for a student changes):
 *
 *     corrected level = w · (1, level, time, level × time, last), time = ln(days since the last answer / 3), last 1 where
 *     that answer was right, else 0
 *
 * Prior means and deviations stand for students of several laws of forgetting, at 4 and at 10 minutes a day.
 */
export interface Correction {
  readonly weights: readonly number[];
  /** The covariance of the weights, row by row. */
  readonly covariance: readonly number[];
}

/** A correction that answers make surer. */
export interface LearningCorrection extends Correction {
  readonly weights: number[];
  readonly covariance: number[];
}

const PRIOR = { means: [-0.4, 1.15, -0.25, -0.08, 0.4], deviations: [0.4, 0.4, 0.35, 0.3, 0.7] };
const SIZE = PRIOR.means.length;

/** With every answer the variances grow by this factor, up to the prior's: of old answers a few hundred count. */
const GROWTH = 1.003;

/** Days that are as any; nearer than so many there is no other day. */
const [MIDDLE, NEAREST] = [3, 0.5];

export function newCorrection(): LearningCorrection {
  const covariance = Array.from({ length: SIZE * SIZE }, (_, k) =>
    k % (SIZE + 1) === 0 ? PRIOR.deviations[k / (SIZE + 1)]! ** 2 : 0,
  );
  return { weights: [...PRIOR.means], covariance };
}

/** What the correction goes by. */
export interface Reckoned {
  /** As the model reckons it, on the logistic scale. */
  readonly level: number;
  /** Since the item's last answer, and whether that was right. */
  readonly days: number;
  readonly lastRight: boolean;
}

/** The level that is to be expected of this student. */
export function correctedLevel({ weights }: Correction, reckoned: Reckoned): number {
  const { level, days, lastRight } = reckoned;
  const time = Math.log(Math.max(NEAREST, days) / MIDDLE);
  const last = lastRight ? weights[4]! : 0;
  return weights[0]! + weights[1]! * level + (weights[2]! + weights[3]! * level) * time + last;
}

/** Moves the weights by an answer, in place. `guess`: the chance of a right answer without knowing. */
export function updateCorrection(
  { weights, covariance }: LearningCorrection,
  { level, days, lastRight }: Reckoned,
  right: boolean,
  guess: number,
): void {
  const time = Math.log(Math.max(NEAREST, days) / MIDDLE);
  const x = [1, level, time, level * time, lastRight ? 1 : 0];
  const dot = (a: readonly number[]) => a.reduce((sum, value, i) => sum + value * x[i]!, 0);
  const p = Math.min(0.995, Math.max(0.005, 1 / (1 + Math.exp(-dot(weights)))));
  const chance = guess + (1 - guess) * p;
  const slope = (1 - guess) * p * (1 - p);
  const doubt = chance * (1 - chance);
  const surprise = ((right ? 1 : 0) - chance) * (slope / doubt);
  const information = (slope * slope) / doubt;
  const shift = weights.map((_, i) => dot(covariance.slice(SIZE * i, SIZE * (i + 1))));
  const whole = 1 + information * dot(shift);
  for (let i = 0; i < SIZE; i++) {
    weights[i]! += (shift[i]! * surprise) / whole;
    for (let k = 0; k < SIZE; k++)
      covariance[SIZE * i + k]! -= (shift[i]! * shift[k]! * information) / whole;
  }
  loosen(covariance);
}

/** Lets every variance grow, none beyond the prior's; what belongs together grows together. */
function loosen(covariance: number[]): void {
  const factors = PRIOR.deviations.map((deviation, i) =>
    Math.sqrt(Math.min(GROWTH, Math.max(1, deviation ** 2 / covariance[(SIZE + 1) * i]!))),
  );
  for (let i = 0; i < SIZE; i++)
    for (let k = 0; k < SIZE; k++) covariance[SIZE * i + k]! *= factors[i]! * factors[k]!;
}
