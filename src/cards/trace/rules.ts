import type { Kind } from '../kind.ts';
import { items, read, type TraceItem } from './items.ts';
import { words } from './words.ts';

/** As much of it as its items take, and its words. */
export const rules = {
  name: 'trace',
  sense: 'ear',
  needs: ['sound'],
  playable: false,
  words,
  items,
  read,
  places: () => [],
} satisfies Partial<Kind<TraceItem>>;
