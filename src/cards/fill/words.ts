import { firstNumeral, fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { FillItem } from './items.ts';

function itemWords(item: FillItem): string {
  return `a ${item.degree} missing from ${firstNumeral(item)} on`;
}

export const words: KindWords<FillItem> = {
  drills: 'name the note missing from the phrases',
  card: 'hear what is missing',
  brief: 'hear what is missing',
  none: 'no note inside the phrases would be missed',
  soon: 'soon you hear the phrase without one note, and tap the degree of that.',
  taken: null,
  drill: (drill) => `hear which note is missing from ${phrasesWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => itemWords(item) + fromPlace(item),
};
