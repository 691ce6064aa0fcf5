import type { Deck, DrillOf } from '../../decks/deck.ts';
import type { IdHead } from '../../decks/id.ts';
import {
  firstOf,
  phraseItems,
  readHeard,
  wordedStretches,
  type HeardItem,
} from '../excerpt/items.ts';
import { canBeTold } from './distinguishable.ts';

export type VaryItem = HeardItem<'vary'>;

/** Every stretch of the drill's phrases of which four variations can be told apart. */
export function items(deck: Deck, drill: DrillOf<'vary'>): VaryItem[] {
  return phraseItems('vary', deck, drill, (piece) => wordedStretches(piece), read);
}

/** Reads `vary:Bb major:2:seventh:guitar:72 ii7 5/3 4/5 4/1 V7 3/3 3/5 2/4`; null where it is none. */
export function read(head: IdHead<'vary'>, rest: readonly string[]): VaryItem | null {
  return readHeard(head, rest, (excerpt) =>
    excerpt.missing === null && canBeTold(excerpt) ? firstOf(excerpt) : null,
  );
}
