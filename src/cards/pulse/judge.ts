import type { Verdict } from '../../practice/item.ts';
import { judgedTaps, type TimeJudgement } from '../../theory/timing/judge.ts';
import type { PulseCard } from './ask.ts';

/** So many taps are looked at: more than anyone means. */
const MOST = 500;

/** What an answer begins with whose taps were strokes on the strings; and where the phone's own delay is taken out. */
const STRUCK = 'struck ';
const MEASURED = 'struck, measured ';
/** How taps were made: by hand, or by strokes that were heard, with a delay that was measured or not. */
export type Made = 'tapped' | 'struck' | 'measured';
const WORDS = { tapped: '', struck: STRUCK, measured: MEASURED } as const;
/** Standard deviation of the error with which a stroke is heard, in seconds, as of a note's onset (`npm run listen`). */
const STROKE_ERROR = 0.003;

/**
 * An answer of taps: ms on the plan's clock, to a tenth, in their order: `-3.2 247.1 500`; of strokes on the strings
 * `struck -3.2 247.1 500`, or `struck, measured -3.2 247.1 500`. Inverted by `tapsIn`.
 */
export function tapsText(seconds: readonly number[], made: Made = 'tapped'): string {
  return WORDS[made] + seconds.map((time) => String(Math.round(10_000 * time) / 10)).join(' ');
}

function madeIn(answer: string): Made {
  if (answer.startsWith(MEASURED)) return 'measured';
  return answer.startsWith(STRUCK) ? 'struck' : 'tapped';
}

/** The taps of an answer, in seconds; none of one that holds anything else. */
function tapsIn(answer: string): number[] {
  const text = answer.slice(WORDS[madeIn(answer)].length);
  if (!/^-?\d+(\.\d)?( -?\d+(\.\d)?)*$/.test(text)) return [];
  const taps = text
    .split(' ')
    .slice(0, MOST)
    .map((ms) => Number(ms) / 1000);
  return taps.toSorted((a, b) => a - b);
}

/** What is known of an answer's taps. */
export function judgementOf({ plan, allowed }: PulseCard, answer: string): TimeJudgement {
  const made = madeIn(answer);
  const lag = made === 'measured' ? 0 : null;
  const known = made === 'tapped' ? { allowed } : { allowed, error: STROKE_ERROR, lag };
  return judgedTaps(tapsIn(answer), plan, known);
}

/** It is tapped: no answers are offered. */
export const answers = () => null;

/** Right or wrong where the taps are sure of it; near where they are not, or are too few to say anything. */
export function judge(card: PulseCard, answer: string): Verdict {
  const { verdict } = judgementOf(card, answer);
  const right = verdict === 'right';
  return { right, takenFor: null, ...(!right && verdict !== 'wrong' && { near: true }) };
}
