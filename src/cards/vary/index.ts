import type { Kind } from '../kind.ts';
import { ask, type VaryCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Ear → variation: a stretch of a phrase is heard, then a variation of it; which one was it? */
export const vary: Kind<VaryCard> = {
  name: 'vary',
  heard: true,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
