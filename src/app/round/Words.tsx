import type { Item } from '../../practice/item.ts';
import { itemPlace } from '../deckWords.ts';

/** So many are named. */
const NAMED = 4;

/** Some items by name, and how many more there are. */
export function Words({ items }: { items: readonly Item[] }) {
  const some = items.slice(0, NAMED).map(itemPlace);
  const rest = items.length - some.length;
  return <p class="soft">{[...some, ...(rest > 0 ? [`${rest} more`] : [])].join(' · ')}</p>;
}
