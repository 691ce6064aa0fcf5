import type { Kind } from '../kind.ts';
import { ask, type SpotCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, places, read, type SpotItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Eye → name: an arpeggio's notes are dots on the neck; which degree of the key is it? */
export const spot: Kind<SpotItem, SpotCard> = {
  name: 'spot',
  sense: 'eye',
  needs: [],
  playable: false,
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
