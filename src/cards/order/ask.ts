import type { Phrase } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { OrderItem } from './items.ts';
import { offered, orders, type Order } from './orders.ts';

/** A stretch of a phrase to be heard, and four orders of its arpeggios. */
export interface OrderCard extends Card<OrderItem> {
  readonly excerpt: Excerpt;
  readonly phrase: Phrase;
  readonly right: Order;
  readonly choices: readonly Order[];
}

/** Which orders stand beside the right one is drawn; none of them is nearer to the others than it is. */
export function ask(item: OrderItem, seed: number): OrderCard {
  const { tempo } = item;
  const excerpt = inHand(item);
  const { key, instrument, notes, groups } = excerpt;
  const random = seeded(seed);
  const all = orders(groups);
  const right = all[0]!;
  const choices = random.shuffle(offered(all, random));
  return { item, seed, key, instrument, excerpt, phrase: { notes, tempo }, right, choices };
}
