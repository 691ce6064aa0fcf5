import type { Kind } from '../kind.ts';
import { ask, type TraceCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import type { TraceItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { rules } from './rules.ts';

/** Ear → path: the key is sounded, then a phrase; which path of degrees was it? */
export const trace: Kind<TraceItem, TraceCard> = {
  ...rules,
  ask,
  answers,
  judge,
  explain,
  Face,
};
