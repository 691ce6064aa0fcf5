/**
 * How likely an item is to be known, reckoned from the imprints that its askings have left: a power law of practice and
 * forgetting after Pavlik & Anderson, "Practice and forgetting effects on vocabulary memory", Cognitive Science 29,
 * 2005, in which an imprint fades the faster the stronger the item was when it was laid.
 */

/**
 * What the askings of one item have left, three numbers each, in their order: when it was laid, ms; the power with which
 * it fades; how deep it went. Flat, because a memory may hold a hundred thousand of them.
 */
export type Imprints = readonly number[];

/** A quantity known with some doubt: how easily this student, or this item, comes to mind. */
export interface Estimate {
  readonly mean: number;
  readonly variance: number;
}

/** An estimate that answers make surer. */
export type LearningEstimate = { -readonly [Part in keyof Estimate]: number };

/** Before any answer: the student, on the logistic scale; what an item adds to that; what a mark's step adds. */
export const GENERAL: Estimate = { mean: 4.3, variance: 1 };
export const OWN: Estimate = { mean: 0, variance: 1.44 };
const MARK = 0.45;

/** Imprints kept for an item; beyond them the two that lie closest become one. */
const KEPT = 12;

const NOISE = 0.3;
const DEPTH = { right: 1.15, wrong: 0.85 };

/** Below this activation a right answer was a guess and a wrong one was to be expected: neither tells anything. */
const SILENT = 0.001;

/** The activation of what was never shown. */
export const NEVER_SHOWN = 1e-6;

/** How present an item is at a time: the sum of its imprints, each faded. Hardly anything without one. */
export function activation(imprints: Imprints, now: number): number {
  let sum = NEVER_SHOWN;
  for (let k = 0; k < imprints.length; k += 3) {
    // A power of the time, in half the time that ** takes.
    sum += imprints[k + 2]! * Math.exp(-imprints[k + 1]! * Math.log(felt(now - imprints[k]!)));
  }
  return sum;
}

/** What an imprint laid now adds to the activation `ahead` ms later, for a depth of 1. */
export function freshly(active: number, ahead: number): number {
  return felt(ahead) ** -decayAt(active);
}

/** The depth to be expected at a chance of a right answer. */
export function depthAt(chance: number): number {
  return DEPTH.right * chance + DEPTH.wrong * (1 - chance);
}

/**
 * How easily an item comes to this student, on the logistic scale.
 *
 * @param mark how hard the deck says it is, 1 (easiest) to 5: of less weight the more the item's own answers tell
 */
export function easeOf(general: Estimate, own: Estimate, mark = 3): number {
  return general.mean + own.mean + (MARK * (3 - mark) * own.variance) / OWN.variance;
}

/**
 * How likely an item of some ease is to be known, no guess counted, on the logistic scale; the doubt in both estimates
 * flattens it.
 */
export function levelAt(active: number, ease: number, general: Estimate, own: Estimate): number {
  const doubt = Math.sqrt(1 + 0.39 * (general.variance + own.variance));
  return (Math.log(active) / NOISE + ease) / doubt;
}

/** Lays one more imprint among the others, in place, at the activation that they then had. */
export function imprint(imprints: number[], now: number, active: number, right: boolean): void {
  imprints.push(now, decayAt(active), right ? DEPTH.right : DEPTH.wrong);
  if (imprints.length > 3 * KEPT) mergeClosest(imprints, now);
}

/** The same imprints, none of them laid later than a time. */
export function laidBy(imprints: Imprints, time: number): number[] {
  return imprints.map((value, k) => (k % 3 === 0 ? Math.min(value, time) : value));
}

/**
 * Makes both estimates surer by an answer at an activation, in place: each is moved by its share of the doubt (one step of
 * an extended Kalman filter on the logistic scale).
 *
 * @param guess the chance of a right answer without knowing
 */
export function updateEstimates(
  general: LearningEstimate,
  own: LearningEstimate,
  active: number,
  right: boolean,
  guess: number,
): void {
  if (active <= SILENT) return;
  const known = logistic(Math.log(active) / NOISE + general.mean + own.mean);
  const p = Math.min(0.99, Math.max(0.005, known));
  const chance = guess + (1 - guess) * p;
  const slope = (1 - guess) * p * (1 - p);
  const doubt = chance * (1 - chance);
  const surprise = ((right ? 1 : 0) - chance) * (slope / doubt);
  const information = (slope * slope) / doubt;
  const whole = 1 + information * (general.variance + own.variance);
  move(general, surprise, information, whole);
  move(own, surprise, information, whole);
}

function move(
  estimate: LearningEstimate,
  surprise: number,
  information: number,
  whole: number,
): void {
  const { variance } = estimate;
  estimate.mean += (variance * surprise) / whole;
  estimate.variance = variance * (1 - (variance * information) / whole);
}

/** Time as forgetting feels it, s: between sittings it passes at a fortieth of the speed. */
function felt(ms: number): number {
  const seconds = Math.max(1, ms / 1000);
  return seconds < 1200 ? seconds : 600 + 0.025 * (seconds - 600);
}

function decayAt(active: number): number {
  return Math.min(1.5, Math.max(0.05, 0.165 + 0.4 * active));
}

function mergeClosest(imprints: number[], now: number): void {
  let [closest, least] = [0, Infinity];
  for (let k = 0; k + 3 < imprints.length; k += 3) {
    const apart = (imprints[k + 3]! - imprints[k]!) / Math.max(1, now - imprints[k]!);
    if (apart < least) [closest, least] = [k, apart];
  }
  const [at, decay, weight, nextAt, nextDecay, nextWeight] = imprints.slice(
    closest,
    closest + 6,
  ) as Six;
  const both = weight + nextWeight;
  const mean = (a: number, b: number) => (a * weight + b * nextWeight) / both;
  imprints.splice(closest, 6, mean(at, nextAt), mean(decay, nextDecay), both);
}

type Six = [number, number, number, number, number, number];

/** From the logistic scale to a chance. */
export function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
