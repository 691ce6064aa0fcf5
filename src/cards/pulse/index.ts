import type { Kind } from '../kind.ts';
import { ask, type PulseCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type PulseItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Time: a bar is counted in; a figure is tapped as evenly as can be. Its sound is its clock. */
export const pulse: Kind<PulseItem, PulseCard> = {
  name: 'pulse',
  sense: 'time',
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
