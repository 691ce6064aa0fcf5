import type { Kind } from '../kind.ts';
import { ask, type PlaceCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import type { PlaceItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { rules } from './rules.ts';

/** Name → hand: a chord of the key is named; put its notes on the neck. */
export const place: Kind<PlaceItem, PlaceCard> = {
  ...rules,
  ask,
  answers,
  judge,
  explain,
  Face,
};
