import type { Verdict } from '../../practice/item.ts';
import type { TraceCard } from './ask.ts';

/** The paths to choose from. */
export function answers({ choices }: TraceCard): readonly string[] {
  return choices.map(({ path }) => path);
}

/** Right where the answer is the path the phrase took. */
export function judge(card: TraceCard, answer: string): Verdict {
  const right = answer === card.path;
  return { right, takenFor: right ? null : answer };
}
