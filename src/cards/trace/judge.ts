import type { Verdict } from '../../practice/item.ts';
import type { TraceCard } from './ask.ts';

/** Right where the answer is the path the phrase took. */
export function judge(card: TraceCard, answer: string): Verdict {
  const right = answer === card.path;
  return { right, takenFor: right ? null : answer };
}
