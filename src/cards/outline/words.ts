import { firstNumeral, fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { OutlineItem } from './items.ts';

function itemWords(item: OutlineItem): string {
  return `${firstNumeral(item)} in a phrase`;
}

export const words: KindWords<OutlineItem> = {
  drills: 'name the arpeggios of the phrases',
  card: 'name an arpeggio in a phrase',
  brief: 'name in a phrase',
  none: 'the phrases outline no arpeggio surely enough',
  soon: 'soon you are asked on which one the arpeggio of a phrase stands, and tap it.',
  taken: 'in a phrase seen',
  drill: (drill) => `name the arpeggios of ${phrasesWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => itemWords(item) + fromPlace(item),
};
