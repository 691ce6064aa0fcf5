import type { Verdict } from '../../practice/item.ts';
import type { Naming } from '../../theory/naming.ts';
import type { Explanation } from '../kind.ts';
import { explainNamed } from '../arpeggio/named.ts';
import type { OutlineCard } from './ask.ts';

/** Names the arpeggio, and sounds it as the phrase goes over it. */
export function explain(
  card: OutlineCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  return explainNamed(card, verdict, naming, card.line);
}
