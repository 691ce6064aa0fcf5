import { noPace, type Pace, type Timing, timingOf } from '../memory/pace.ts';
import type { Review } from '../store/review.ts';
import { median, medianDeviation } from '../theory/timing/median.ts';

/** What a card's screen knows of an answer once it is judged. */
type Answered = Pick<Review, 'right' | 'ms' | 'sounded' | 'taps' | 'hidden'>;

/** 1 wrong, 2 right but slow for this student, 3 right. */
type Grade = Review['grade'];

/** Fewer right answers than these say nothing about someone's pace. */
const ENOUGH = 8;

/**
 * The grade of an answer: 1 wrong, 2 right but slow for this student, 3 right. No one grades themself.
 *
 * Slow is more than one robust deviation above the student's own median, on the logarithm of the thinking time, over
 * the last 60 right answers of that kind of card. Not judged before 8 of them, nor where the time means nothing.
 */
export function gradeOf(answered: Answered, pace: Pace = noPace): Grade {
  if (!answered.right) return 1;
  const timing = timingOf(answered);
  if (timing === null || pace.right.length < ENOUGH) return 3;
  const tap = tapTime(pace.right);
  const usual = pace.right.map((one) => thinking(one, tap));
  const middle = median(usual);
  return (thinking(timing, tap) - middle) / Math.max(0.15, medianDeviation(usual)) > 1 ? 2 : 3;
}

/** Seconds a tap takes this student: a tenth of the answers were faster, all thinking included. 0 where one tap answers. */
function tapTime(timings: readonly Timing[]): number {
  const perTap = timings.filter(({ taps }) => taps > 1).map(({ seconds, taps }) => seconds / taps);
  if (perTap.length === 0) return 0;
  return perTap.toSorted((a, b) => a - b)[Math.floor(perTap.length / 10)]!;
}

/** The logarithm of the seconds before the first tap. */
function thinking({ seconds, taps }: Timing, tap: number): number {
  return Math.log(Math.max(0.3, seconds - (taps - 1) * tap));
}
