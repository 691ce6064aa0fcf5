import type { Verdict } from '../../practice/item.ts';
import type { Naming } from '../../theory/naming.ts';
import type { Explanation } from '../kind.ts';
import { explainNamed } from '../arpeggio/named.ts';
import type { SpotCard } from './ask.ts';

/** Names the chord and, where another was named, what tells the two apart. */
export function explain(
  card: SpotCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  return explainNamed(card, verdict, naming);
}
