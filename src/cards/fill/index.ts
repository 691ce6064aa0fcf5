import type { Kind } from '../kind.ts';
import { ask, type FillCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type FillItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Ear → degree: a stretch of a phrase is heard with one note left out; which degree is missing? */
export const fill: Kind<FillItem, FillCard> = {
  name: 'fill',
  sense: 'ear',
  needs: ['sound'],
  playable: true,
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
