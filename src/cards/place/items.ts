import type { Deck, DrillOf } from '../../decks/deck.ts';
import type { IdHead } from '../../decks/id.ts';
import { arpeggioItems, readArpeggioItem, type ArpeggioItem } from '../arpeggio/arpeggio.ts';

export { arpeggioPlaces as places } from '../arpeggio/arpeggio.ts';

export type PlaceItem = ArpeggioItem<'place'>;

/** Every arpeggio of the drill that can be placed whole. */
export function items(deck: Deck, drill: DrillOf<'place'>): PlaceItem[] {
  return arpeggioItems('place', deck, drill);
}

/** Reads `place:Bb major:5:seventh:guitar:4-3-2-1:1-5`. */
export function read(head: IdHead<'place'>, rest: readonly string[]): PlaceItem | null {
  return readArpeggioItem(head, rest);
}
