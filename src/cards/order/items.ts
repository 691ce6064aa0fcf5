import type { Deck, DrillOf } from '../../decks/deck.ts';
import type { IdHead } from '../../decks/id.ts';
import {
  firstOf,
  phraseItems,
  readHeard,
  wordedStretches,
  type HeardItem,
} from '../excerpt/items.ts';
import { hasArpeggio, type Piece } from '../excerpt/piece.ts';
import { OFFERED, orders } from './orders.ts';

export type OrderItem = HeardItem<'order'>;

/** Every stretch of the drill's phrases whose arpeggios are clear and could come in four orders. */
export function items(deck: Deck, drill: DrillOf<'order'>): OrderItem[] {
  const worded = (piece: Piece) => wordedStretches(piece, ({ clear }) => clear);
  return phraseItems('order', deck, drill, worded, read);
}

/** Reads `order:Bb major:2:seventh:guitar:72 ii7 5/3 4/5 4/1 V7 3/3 3/5 2/4 I 2/3 3/3 4/3`; null where it is none. */
export function read(head: IdHead<'order'>, rest: readonly string[]): OrderItem | null {
  return readHeard(head, rest, ({ missing, notes, groups }) => {
    const told = missing === null && groups.every((group) => hasArpeggio(notes, group));
    return told && orders(groups).length >= OFFERED ? firstOf({ groups }) : null;
  });
}
