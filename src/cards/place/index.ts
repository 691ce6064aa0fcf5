import type { Kind } from '../kind.ts';
import type { PlacingCard } from '../placing.ts';
import { ask } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Name → hand: a chord of the key is named; put its notes on the neck. */
export const place: Kind<PlacingCard> = {
  name: 'place',
  heard: false,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
