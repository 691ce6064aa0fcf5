import type { Kind } from '../kind.ts';
import { ask, type VaryCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type VaryItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Ear → variation: a stretch of a phrase is heard, then a variation of it; which one was it? */
export const vary: Kind<VaryItem, VaryCard> = {
  name: 'vary',
  sense: 'ear',
  needs: ['sound'],
  playable: false,
  words,
  items,
  read,
  places: () => [],
  ask,
  answers,
  judge,
  explain,
  Face,
};
