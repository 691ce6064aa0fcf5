import type { Verdict } from '../../practice/item.ts';
import type { SpotCard } from './ask.ts';

/** Right where the answer is the degree the arpeggio stands on. */
export function judge(card: SpotCard, answer: string): Verdict {
  const right = answer === String(card.chord.degree);
  return { right, takenFor: right ? null : answer };
}
