import type { Verdict } from '../../practice/item.ts';
import type { VaryCard } from './ask.ts';

/** The names of variations to choose from. */
export function answers({ choices }: VaryCard): readonly string[] {
  return choices.map(({ name }) => name);
}

/** Right where the answer is the name of the variation. */
export function judge(card: VaryCard, answer: string): Verdict {
  const right = answer === card.right.name;
  return { right, takenFor: right ? null : answer };
}
