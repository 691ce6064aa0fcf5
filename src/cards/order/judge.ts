import type { Verdict } from '../../practice/item.ts';
import type { OrderCard } from './ask.ts';

/** The orders to choose from. */
export function answers({ choices }: OrderCard): readonly string[] {
  return choices.map(({ answer }) => answer);
}

/** Right where the answer is the order the arpeggios came in. */
export function judge(card: OrderCard, answer: string): Verdict {
  const right = answer === card.right.answer;
  return { right, takenFor: right ? null : answer };
}
