import type { Deck, Drill } from '../../decks/deck.ts';
import { arpeggioItems, readArpeggioItem, type ArpeggioItem } from '../arpeggio.ts';

/** Every arpeggio of the drill that can be seen whole in its place. */
export const items = (deck: Deck, drill: Drill): ArpeggioItem[] =>
  arpeggioItems('spot', deck, drill);

/** Reads `spot:Bb major:2:triad:guitar:5-4:1-5`. */
export const item = (id: string): ArpeggioItem | null => readArpeggioItem('spot', id);
