import type { Kind } from '../kind.ts';
import { ask, type EchoCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, read, type EchoItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Ear → hand: the key is sounded, then a short line; play it back, wherever it lies well. */
export const echo: Kind<EchoItem, EchoCard> = {
  name: 'echo',
  sense: 'ear',
  needs: ['sound', 'guitar'],
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
