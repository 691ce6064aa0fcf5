import { numeralLabel } from '../../theory/naming.ts';
import { firstNumeral, fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { FollowItem } from './items.ts';

function itemWords(item: FollowItem): string {
  return `${numeralLabel(item.chord)} after ${firstNumeral(item)}`;
}

export const words: KindWords<FollowItem> = {
  drills: 'place the next arpeggio of the phrases',
  card: 'place the next arpeggio',
  brief: 'place the next',
  none: 'no two arpeggios follow one another in the phrases surely enough',
  soon: 'soon you are told by it which arpeggio comes next, and tap its notes on the neck.',
  taken: 'in a phrase placed',
  drill: (drill) => `place each next arpeggio of ${phrasesWords(drill)}`,
  item: itemWords,
  itemPlace: (item) => itemWords(item) + fromPlace(item),
};
