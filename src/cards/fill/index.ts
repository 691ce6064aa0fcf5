import type { Kind } from '../kind.ts';
import { ask, type FillCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Ear → degree: a stretch of a phrase is heard with one note left out; which degree is missing? */
export const fill: Kind<FillCard> = {
  name: 'fill',
  heard: true,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
