import type { Deck, DrillOf } from '../../decks/deck.ts';
import type { IdHead } from '../../decks/id.ts';
import { arpeggioItems, readArpeggioItem, type ArpeggioItem } from '../arpeggio/arpeggio.ts';

export { arpeggioPlaces as places } from '../arpeggio/arpeggio.ts';

export type SpotItem = ArpeggioItem<'spot'>;

/** Every arpeggio of the drill that can be seen whole in its place. */
export function items(deck: Deck, drill: DrillOf<'spot'>): SpotItem[] {
  return arpeggioItems('spot', deck, drill);
}

/** Reads `spot:Bb major:2:triad:guitar:5-4:1-5`. */
export function read(head: IdHead<'spot'>, rest: readonly string[]): SpotItem | null {
  return readArpeggioItem(head, rest);
}
