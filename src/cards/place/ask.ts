import { placeText, type Place } from '../../neck/place.ts';
import type { Item } from '../../practice/item.ts';
import type { Chord } from '../../theory/chord.ts';
import type { Card } from '../kind.ts';
import { item as read } from './items.ts';

/** A chord to be put on a string set inside frets. */
export interface PlaceCard extends Card {
  readonly chord: Chord;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
}

/** The item says it all: the seed changes nothing. */
export function ask(item: Item, seed: number): PlaceCard {
  const { chord, instrument, stringSet, frets } = read(item.id)!;
  return { item, seed, key: chord.key, instrument, chord, stringSet, frets };
}

/** Whether a place may be tapped. */
export function takes(card: PlaceCard, place: Place): boolean {
  return (
    card.stringSet.includes(place.string) &&
    place.fret >= card.frets[0] &&
    place.fret <= card.frets[1]
  );
}

/** Places as an answer: `5/3 4/1 4/5`. */
export function answerOf(places: readonly Place[]): string {
  return places.map(placeText).join(' ');
}
