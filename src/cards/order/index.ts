import type { Kind } from '../kind.ts';
import { ask, type OrderCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Ear → order: a stretch of a phrase is heard; in which order do its arpeggios come? */
export const order: Kind<OrderCard> = {
  name: 'order',
  heard: true,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
