import type { Item } from '../../practice/item.ts';
import type { PlacingCard } from '../placing.ts';
import { item as read } from './items.ts';

/** The item says it all: the seed changes nothing. */
export function ask(item: Item, seed: number): PlacingCard {
  const { chord, stringSet, frets, ...named } = read(item.id)!;
  const { instrument = named.instrument } = item;
  return { item, seed, key: chord.key, instrument, chord, stringSet, frets };
}
