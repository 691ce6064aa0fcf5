import type { Kind } from '../kind.ts';
import { ask, type TraceCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Ear → path: the key is sounded, then a phrase; which path of degrees was it? */
export const trace: Kind<TraceCard> = {
  name: 'trace',
  heard: true,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
