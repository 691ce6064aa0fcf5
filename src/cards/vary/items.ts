import type { Deck, Drill } from '../../decks/deck.ts';
import { firstOf, phraseItems, readHeard, stretchIds, type HeardItem } from '../excerptItems.ts';
import { told } from './told.ts';

/** Every stretch of the drill's phrases of which four variations can be told apart. */
export function items(deck: Deck, drill: Drill): HeardItem[] {
  return phraseItems('vary', deck, drill, (piece) => stretchIds('vary', piece), item);
}

/** Reads `vary:Bb major:2:seventh:guitar:72 ii7 5/3 4/5 4/1 V7 3/3 3/5 2/4`; null where it is none. */
export function item(id: string): HeardItem | null {
  return readHeard('vary', id, (excerpt) =>
    excerpt.missing === null && told(excerpt) !== null ? firstOf(excerpt) : null,
  );
}
