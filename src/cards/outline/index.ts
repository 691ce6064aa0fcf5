import type { Kind } from '../kind.ts';
import { ask, type OutlineCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, places, read, type OutlineItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Eye → name: one arpeggio of a phrase is dots where the phrase has it; which degree does it stand on? */
export const outline: Kind<OutlineItem, OutlineCard> = {
  name: 'outline',
  sense: 'eye',
  needs: [],
  playable: false,
  words,
  items,
  read,
  places,
  ask,
  answers,
  judge,
  explain,
  Face,
};
