import type { PlacingCard } from '../arpeggio/placing.ts';
import type { PlaceItem } from './items.ts';

export type PlaceCard = PlacingCard<PlaceItem>;

/** The item says it all: the seed changes nothing. */
export function ask(item: PlaceItem, seed: number): PlaceCard {
  const { key, chord, instrument, stringSet, frets, shapes } = item;
  return { item, seed, key, instrument, chord, stringSet, frets, ...(shapes && { shapes }) };
}
