import { firstNumeral, fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { VaryItem } from './items.ts';

function itemWords(item: VaryItem): string {
  return `a variation from ${firstNumeral(item)} on`;
}

export const words: KindWords<VaryItem> = {
  drills: 'name variations of the phrases',
  card: 'hear a variation',
  brief: 'hear the variation',
  none: 'of the phrases no four variations can be told apart by ear',
  soon: 'soon you hear the phrase and then a variation of it, and tap which it was.',
  taken: null,
  drill: (drill) => `hear variations of ${phrasesWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => itemWords(item) + fromPlace(item),
};
