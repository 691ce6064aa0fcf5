import type { KindName } from '../../decks/deck.ts';

/** What each kind of card asks for. */
export const KIND_WORDS: Record<KindName, string> = {
  spot: 'name what is seen',
  place: 'place what is named',
  trace: 'trace what is heard',
  outline: 'name the arpeggios of the phrases',
  follow: 'place the next arpeggio of the phrases',
  order: 'order the arpeggios of the phrases',
  vary: 'name variations of the phrases',
  fill: 'name the note missing from the phrases',
};
