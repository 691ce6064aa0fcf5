import type { Kind } from '../kind.ts';
import { ask, type FollowCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, places, read, type FollowItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Name → hand, in a phrase: one arpeggio stands on the neck, the next one is named; put its notes near. */
export const follow: Kind<FollowItem, FollowCard> = {
  name: 'follow',
  sense: 'hand',
  needs: [],
  playable: true,
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
