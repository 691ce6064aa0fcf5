import { toNumber } from '../rhythm.ts';
import { driftOf, lagOf, type Drift, type Lag } from './drift.ts';
import { evennessOf, type Evenness } from './evenness.ts';
import { matched, type Match } from './match.ts';
import { panelStep, roundingError } from './panel.ts';
import type { TimePlan } from './plan.ts';
import { beatShapeOf, type PlaceInBeat } from './beatShape.ts';
import { mean } from './statistics.ts';
import { onsetsOf, stepsOf, type TimedOnset, type TimeStep } from './steps.ts';
import { worstTaps, type WorstTap } from './worst.ts';

/** `near` means that the next asking decides: it is not known whether the steps were even enough. */
export type TimeVerdict = 'right' | 'near' | 'wrong';

/** Why steps even enough are only near. */
export type HeldBack = 'missing' | 'extra' | 'tempo' | 'drift';

/** What is known of taps, or of the onsets of played notes. What cannot be known is null. */
export interface TimeJudgement {
  /** Null where too little was heard to say anything. */
  readonly verdict: TimeVerdict | null;
  /** What kept steps that are even enough from being right. */
  readonly heldBack: HeldBack | null;
  readonly evenness: Evenness | null;
  /** The player's beats a minute. */
  readonly tempo: number | null;
  readonly shape: readonly PlaceInBeat[] | null;
  /** Null without a click. */
  readonly drift: Drift | null;
  /** Null without a click, or without a calibration. */
  readonly lag: Lag | null;
  readonly worst: readonly WorstTap[];
  readonly match: Match;
  /** What was matched, in seconds. */
  readonly onsets: readonly TimedOnset[];
  /** The step of the clock that timed the taps, given or seen, in seconds. */
  readonly panel: number | null;
}

/** What the judge is told beforehand. Seconds throughout but for what is allowed. */
export interface TimeKnown {
  /** The spread to be kept below, as a fraction of a step: see `ALLOWED`. */
  readonly allowed: number;
  /** How late taps came at calibration; null or left out where there was none. */
  readonly lag?: number | null;
  /** The step of the screen's or keyboard's clock; null or left out where it is to be seen from the taps. */
  readonly panel?: number | null;
  /** Instead of a panel: the standard deviation of an onset's error, as for notes heard by a microphone. */
  readonly error?: number;
}

/**
 * The spreads that are allowed, one after the other, as fractions of a step: a judgement, not a measurement.
 */
export const ALLOWED = [0.1, 0.06] as const;

/** What share of the onsets may be missing or extra in a right answer, and has to be there for any verdict. */
const MAY_MISS = 1 / 12;
const HAS_TO_BE = 1 / 2;
/** How far a tempo that nothing holds may be off. */
const TEMPO = 0.08;

/**
 * Judges taps on a figure.
 *
 * The verdict holds what is allowed against the range in which the player's own spread lies with a confidence of 95 % (an
 * interval by χ² with as many degrees of freedom as the steps are worth): right where all of it is below, wrong where
 * all of it is above, else near. From 47 steps drawn apart that is near between .80 and 1.20 of what is allowed, from 11
 * between .57 and 1.43: the fewer notes, the less is said.
 *
 * @param taps seconds on the plan's clock, rising: 0 is the bar line after the count-in
 */
export function judgedTaps(
  taps: readonly number[],
  plan: TimePlan,
  known: TimeKnown,
): TimeJudgement {
  const slots = plan.slots.map(({ seconds }) => seconds);
  return judgedMatch(matched(taps, slots, known.lag ?? null), taps, plan, known);
}

/** The same where it is known which onset each time was meant for, as from the follower of played notes. */
export function judgedMatch(
  match: Match,
  times: readonly number[],
  plan: TimePlan,
  known: TimeKnown,
): TimeJudgement {
  const onsets = onsetsOf(match, times, plan);
  const steps = stepsOf(onsets);
  const panel = panelOf(steps, known);
  const error = known.error ?? (panel === null ? 0 : roundingError(panel));
  const evenness = onsets.length >= HAS_TO_BE * plan.slots.length ? evennessOf(steps, error) : null;
  const worst = worstTaps(onsets);
  const slips = new Set([
    ...worst.map(({ tap }) => tap),
    ...(evenness?.setAside ?? []).flatMap(({ from, to }) => [from.tap, to.tap]),
  ]);
  const clicked = plan.clicks.length > 0;
  const drift = clicked ? driftOf(onsets, clickedOften(plan) ? 'beat' : 'seldom') : null;
  const lag = clicked && typeof known.lag === 'number' ? lagOf(onsets, known.lag) : null;
  const tempo = steps.length > 0 ? plan.tempo / mean(steps.map(({ ratio }) => ratio)) : null;
  const facts = { evenness, tempo, drift, match };
  return {
    ...verdictOf(facts, plan, known.allowed),
    ...facts,
    shape: beatShapeOf(onsets, plan, slips),
    lag,
    worst,
    onsets,
    panel,
  };
}

const clickedOften = ({ clicks, figure }: TimePlan) => clicks.length >= toNumber(figure.length);

function panelOf(steps: readonly TimeStep[], { panel, error }: TimeKnown): number | null {
  if (error !== undefined) return null;
  return panel ?? panelStep(steps.map(({ from, to }) => to.time - from.time));
}

type Facts = Pick<TimeJudgement, 'evenness' | 'tempo' | 'drift' | 'match'>;

function verdictOf(
  facts: Facts,
  plan: TimePlan,
  allowed: number,
): Pick<TimeJudgement, 'verdict' | 'heldBack'> {
  if (!facts.evenness) return { verdict: null, heldBack: null };
  const [low, high] = facts.evenness.range;
  if (low >= allowed) return { verdict: 'wrong', heldBack: null };
  if (high > allowed) return { verdict: 'near', heldBack: null };
  const heldBack = reasonOf(facts, plan);
  return { verdict: heldBack ? 'near' : 'right', heldBack };
}

function reasonOf({ tempo, drift, match }: Facts, plan: TimePlan): HeldBack | null {
  const most = Math.max(1, MAY_MISS * plan.slots.length);
  if (match.missing.length > most) return 'missing';
  if (match.extra.length > most) return 'extra';
  if (drift?.told) return 'drift';
  return Math.abs(tempo! / plan.tempo - 1) > TEMPO ? 'tempo' : null;
}
