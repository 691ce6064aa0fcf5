import { drillWords, itemPlaceWords, itemWords } from '../arpeggio/words.ts';
import type { KindWords } from '../kind.ts';
import type { PlaceItem } from './items.ts';

export const words: KindWords<PlaceItem> = {
  drills: 'place what is named',
  card: 'place what is named',
  brief: 'place',
  none: 'no such chord lies whole on these strings inside these frets',
  soon: 'soon you are told a chord by it, and tap its notes on the neck.',
  taken: 'placed',
  drill: (drill) => `place ${drillWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => `place ${itemPlaceWords(item)}`,
};
