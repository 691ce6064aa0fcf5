import { seeded } from '../../theory/random.ts';
import { inHand } from '../excerpt/items.ts';
import type { PlayingCard } from '../playing/card.ts';
import type { EchoItem } from './items.ts';
import { drawLine } from './shortLine.ts';

/** A line to be heard and played back. */
export interface EchoCard extends PlayingCard<EchoItem> {
  readonly tempo: number;
}

/** One arpeggio, and on an odd seed, for an item well known, the nearest of another after it; a phrase has its own notes. */
export function ask(item: EchoItem, seed: number): EchoCard {
  const { key, degree, size, tempo, drawn, excerpt } = item;
  if (excerpt) {
    const { instrument, notes } = inHand({ ...item, excerpt });
    return { item, seed, key, instrument, tempo, notes };
  }
  const { instrument } = item;
  const groups = seed % 2 === 1 ? 2 : 1;
  const notes = drawLine({ key, instrument, degree, size, groups, ...drawn! }, seeded(seed));
  return { item, seed, key, instrument, tempo, notes };
}
