import type { Kind } from '../kind.ts';
import { ask, type OrderCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type OrderItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Ear → order: a stretch of a phrase is heard; in which order do its arpeggios come? */
export const order: Kind<OrderItem, OrderCard> = {
  name: 'order',
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
