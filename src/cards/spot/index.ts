import type { Kind } from '../kind.ts';
import { ask, type SpotCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { item, items } from './items.ts';
import { judge } from './judge.ts';

/** Eye → name: an arpeggio's notes are dots on the neck; which degree of the key is it? */
export const spot: Kind<SpotCard> = {
  name: 'spot',
  heard: false,
  items,
  item,
  ask,
  judge,
  explain,
  Face,
};
