import type { Deck, Drill } from '../../decks/deck.ts';
import { arpeggioItems, readArpeggioItem, type ArpeggioItem } from '../arpeggio.ts';

/** Every arpeggio of the drill that can be placed whole. */
export const items = (deck: Deck, drill: Drill): ArpeggioItem[] =>
  arpeggioItems('place', deck, drill);

/** Reads `place:Bb major:5:seventh:guitar:4-3-2-1:1-5`. */
export const item = (id: string): ArpeggioItem | null => readArpeggioItem('place', id);
