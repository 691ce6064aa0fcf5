import type { Kind } from '../kind.ts';
import { ask, type PlayCard } from './ask.ts';
import { explain } from './explain.ts';
import { Face } from './Face.tsx';
import { items, places, read, type PlayItem } from './items.ts';
import { answers, judge } from './judge.ts';
import { words } from './words.ts';

/** Eye → hand: an arpeggio is shown, or named; play it on the guitar. */
export const play: Kind<PlayItem, PlayCard> = {
  name: 'play',
  sense: 'hand',
  needs: ['guitar'],
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
