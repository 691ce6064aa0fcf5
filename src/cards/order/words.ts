import { firstNumeral, fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { OrderItem } from './items.ts';

function itemWords(item: OrderItem): string {
  return `the order from ${firstNumeral(item)} on`;
}

export const words: KindWords<OrderItem> = {
  drills: 'order the arpeggios of the phrases',
  card: 'hear the order of arpeggios',
  brief: 'hear the order',
  none: 'the phrases outline too few arpeggios to come in four orders',
  soon: 'soon you hear arpeggios, and tap the order of their degrees.',
  taken: null,
  drill: (drill) => `hear the order of the arpeggios of ${phrasesWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => itemWords(item) + fromPlace(item),
};
