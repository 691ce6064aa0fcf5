import type { Review } from '../store/review.ts';

/** How fast someone answers one kind of card, from their reviews. */
export interface Pace {
  /** The last right answers that were timed without a disturbance, at most 60, in any order. */
  readonly right: readonly Timing[];
  /** What a card costs, seconds from shown to answered: running means. */
  readonly seconds: { readonly right: number; readonly wrong: number };
}

/** A pace that is still being learned. */
export interface LearningPace extends Pace {
  readonly right: Timing[];
  readonly seconds: { right: number; wrong: number };
  /** Where the next one goes: over the oldest once there are 60. */
  next: number;
}

/** One answer's thinking and tapping, seconds, and the taps that made it. */
export interface Timing {
  readonly seconds: number;
  readonly taps: number;
}

/** Before anything was timed: a guess that the first answers soon correct. */
export const noPace: Pace = { right: [], seconds: { right: 6, wrong: 10 } };

const KEPT = 60;

/** Beyond this many seconds someone was away, not thinking. */
export const AWAY = 30;

/** A running mean follows the last twenty or so answers. */
const FOLLOW = 0.05;

/** The pace of someone whose answers are to come. */
export function newPace(): LearningPace {
  return { right: [], seconds: { ...noPace.seconds }, next: 0 };
}

/** Takes one more review into the pace, in place. */
export function learnPace(pace: LearningPace, review: Review): void {
  const timing = timingOf(review);
  if (timing === null) return;
  const side = review.right ? 'right' : 'wrong';
  const { seconds, right } = pace;
  seconds[side] = Math.max(1, seconds[side] + FOLLOW * (review.ms / 1000 - seconds[side]));
  if (!review.right) return;
  right[pace.next] = timing;
  pace.next = (pace.next + 1) % KEPT;
}

/** The time an answer took beyond what the card itself sounded; null where the time means nothing. */
export function timingOf(
  answered: Pick<Review, 'ms' | 'sounded' | 'taps' | 'hidden'>,
): Timing | null {
  const seconds = (answered.ms - answered.sounded) / 1000;
  if (answered.hidden || !(seconds >= 0 && seconds <= AWAY)) return null;
  return { seconds, taps: Math.max(1, answered.taps) };
}
