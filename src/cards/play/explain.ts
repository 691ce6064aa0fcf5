import type { Verdict } from '../../practice/item.ts';
import type { Naming } from '../../theory/naming.ts';
import type { Explanation } from '../kind.ts';
import { explainPlaying } from '../playing/explain.ts';
import type { PlayCard } from './ask.ts';

export function explain(
  card: PlayCard,
  verdict: Verdict,
  answer: string,
  naming: Naming,
): Explanation {
  return explainPlaying(card, verdict, answer, naming, card.line);
}
