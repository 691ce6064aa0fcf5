import { itemOf, itemsOf } from '../../src/cards/index.ts';
import type { Card, Kind } from '../../src/cards/kind.ts';
import type { Deck } from '../../src/decks/deck.ts';
import type { Item } from '../../src/practice/item.ts';

/** The item of one kind that an id names; null where it names none of it. */
export function itemIn<I extends Item, C extends Card<I>>(kind: Kind<I, C>, id: string): I | null {
  const item = itemOf(id);
  return item && isOf(kind, item) ? item : null;
}

/** A deck's items of one kind. */
export function itemsIn<I extends Item, C extends Card<I>>(kind: Kind<I, C>, deck: Deck): I[] {
  return itemsOf(deck).filter((item) => isOf(kind, item));
}

function isOf<I extends Item, C extends Card<I>>({ name }: Kind<I, C>, item: Item): item is I {
  return item.kind === name;
}
