import type { Kind } from '../kind.ts';
import { ask, type FollowCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Name → hand, in a phrase: one arpeggio stands on the neck, the next one is named; put its notes near. */
export const follow: Kind<FollowCard> = {
  name: 'follow',
  heard: false,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
