import type { Phrase } from '../../theory/phrase.ts';
import { inHand } from '../excerpt/items.ts';
import type { Excerpt } from '../excerpt/excerpt.ts';
import type { Card } from '../kind.ts';
import type { FillItem } from './items.ts';

/** A stretch of a phrase to be heard with one note left out. */
export interface FillCard extends Card<FillItem> {
  readonly excerpt: Excerpt;
  /** The whole of it. */
  readonly phrase: Phrase;
  /** What is heard before the answer. */
  readonly heard: Phrase;
  /** Which note is missing, and its degree. */
  readonly missing: number;
  readonly degree: number;
}

/** The item says it all: the seed changes nothing. */
export function ask(item: FillItem, seed: number): FillCard {
  const { tempo, degree } = item;
  const excerpt = inHand(item);
  const { key, instrument, notes } = excerpt;
  const missing = excerpt.missing!;
  const phrase = { notes, tempo };
  const heard = { notes: notes.toSpliced(missing, 1), tempo };
  return { item, seed, key, instrument, excerpt, phrase, heard, missing, degree };
}
