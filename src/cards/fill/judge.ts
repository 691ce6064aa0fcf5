import type { Verdict } from '../../practice/item.ts';
import type { FillCard } from './ask.ts';

export { degreeAnswers as answers } from '../arpeggio/named.ts';

/** Right where the answer is the degree of the missing note. */
export function judge(card: FillCard, answer: string): Verdict {
  const right = answer === String(card.degree);
  return { right, takenFor: right ? null : answer };
}
