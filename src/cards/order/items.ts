import type { Deck, Drill } from '../../decks/deck.ts';
import {
  firstOf,
  isTold,
  phraseItems,
  readHeard,
  stretchIds,
  type HeardItem,
  type Piece,
} from '../excerptItems.ts';
import { OFFERED, orders } from './orders.ts';

/** Every stretch of the drill's phrases whose arpeggios are clear and could come in four orders. */
export function items(deck: Deck, drill: Drill): HeardItem[] {
  return phraseItems('order', deck, drill, ids, item);
}

function ids(piece: Piece): string[] {
  return stretchIds('order', piece, ({ clear }) => clear);
}

/** Reads `order:Bb major:2:seventh:guitar:72 ii7 5/3 4/5 4/1 V7 3/3 3/5 2/4 I 2/3 3/3 4/3`; null where it is none. */
export function item(id: string): HeardItem | null {
  return readHeard('order', id, ({ missing, notes, groups }) => {
    const told = missing === null && groups.every((group) => isTold(notes, group));
    return told && orders(groups).length >= OFFERED ? firstOf({ groups }) : null;
  });
}
