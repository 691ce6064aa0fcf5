import type { Item } from '../../practice/item.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { inHand } from '../excerptItems.ts';
import type { Excerpt } from '../excerpt.ts';
import type { Card } from '../kind.ts';
import { item as read } from './items.ts';

/** A stretch of a phrase to be heard with one note left out. */
export interface FillCard extends Card {
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
export function ask(item: Item, seed: number): FillCard {
  const { tempo, degree, ...named } = read(item.id)!;
  const excerpt = inHand(named.excerpt, item);
  const { key, instrument, notes } = excerpt;
  const missing = excerpt.missing!;
  const phrase = { notes, tempo };
  const heard = { notes: notes.toSpliced(missing, 1), tempo };
  return { item, seed, key, instrument, excerpt, phrase, heard, missing, degree };
}
