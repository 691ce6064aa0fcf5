import type { Kind } from '../kind.ts';
import { items, places, read, type PlaceItem } from './items.ts';
import { words } from './words.ts';

/** As much of it as its items take, and its words. */
export const rules = {
  name: 'place',
  sense: 'hand',
  needs: [],
  playable: true,
  words,
  items,
  read,
  places,
} satisfies Partial<Kind<PlaceItem>>;
