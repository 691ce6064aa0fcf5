import type { Kind } from '../kind.ts';
import { ask, type OutlineCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Eye → name: one arpeggio of a phrase is dots where the phrase has it; which degree does it stand on? */
export const outline: Kind<OutlineCard> = {
  name: 'outline',
  heard: false,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
