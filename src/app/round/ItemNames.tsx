import { Unbroken } from '../../parts/Written.tsx';
import type { Item } from '../../practice/item.ts';
import { itemPlace } from '../deckWords.ts';

/** So many are named. */
const NAMED = 4;

/** Some items by name, and how many more there are. */
export function ItemNames({ items }: { items: readonly Item[] }) {
  const some = items.slice(0, NAMED).map(itemPlace);
  const rest = items.length - some.length;
  return (
    <p class="soft">
      <Unbroken text={[...some, ...(rest > 0 ? [`${rest} more`] : [])].join(' · ')} />
    </p>
  );
}
