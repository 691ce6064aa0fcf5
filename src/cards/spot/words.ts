import { drillWords, itemPlaceWords, itemWords } from '../arpeggio/words.ts';
import type { KindWords } from '../kind.ts';
import type { SpotItem } from './items.ts';

export const words: KindWords<SpotItem> = {
  drills: 'name what is seen',
  card: 'name what is seen',
  brief: 'see',
  none: 'no such chord lies whole on these strings inside these frets',
  soon: 'soon you are asked for it, and tap it.',
  taken: 'seen',
  drill: (drill) => `name ${drillWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => `name ${itemPlaceWords(item)}`,
};
