import type { Phrase } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { OrderItem } from './items.ts';
import { apart, OFFERED, orders, type Order } from './orders.ts';

/** A stretch of a phrase to be heard, and four orders of its arpeggios. */
export interface OrderCard extends Card<OrderItem> {
  readonly excerpt: Excerpt;
  readonly phrase: Phrase;
  readonly right: Order;
  readonly choices: readonly Order[];
}

/** An odd seed offers orders with as few arpeggios out of place as can be, an even one with as many. */
export function ask(item: OrderItem, seed: number): OrderCard {
  const { tempo } = item;
  const excerpt = inHand(item);
  const { key, instrument, notes, groups } = excerpt;
  const random = seeded(seed);
  const [right, ...others] = orders(groups);
  const sign = seed % 2 === 1 ? 1 : -1;
  const wrong = random
    .shuffle(others)
    .toSorted((a, b) => sign * (apart(a, right!) - apart(b, right!)))
    .slice(0, OFFERED - 1);
  const choices = random.shuffle([right!, ...wrong]);
  return { item, seed, key, instrument, excerpt, phrase: { notes, tempo }, right: right!, choices };
}
