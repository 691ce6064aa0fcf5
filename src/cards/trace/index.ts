import type { Kind } from '../kind.ts';
import { ask, type TraceCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type TraceItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Ear → path: the key is sounded, then a phrase; which path of degrees was it? */
export const trace: Kind<TraceItem, TraceCard> = {
  name: 'trace',
  sense: 'ear',
  needs: ['sound'],
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
