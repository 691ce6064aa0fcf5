import type * as v from 'valibot';
import type { Deck, Drill } from '../deck.ts';

/** Of a lesson that is handed out, or of one in the making, which may hold too little of everything, or too much. */
export type Extent = 'whole' | 'unfinished';

/** How few and how many entries a list may have. */
export function bounds(
  extent: Extent,
  most: number,
): { readonly least: number; readonly most: number } {
  return extent === 'whole' ? { least: 1, most } : { least: 0, most: Math.max(most, 100) };
}

/** What is right by itself but cannot be in a deck: which word of the drill, if one, and why, with what to do. */
export interface Misfit {
  readonly word?: string;
  readonly says: string;
}

/**
 * A form of drill: how it is written in a document and in a link, and what it needs of its deck.
 *
 * @typeParam D the drill; @typeParam W what a document says of it
 */
export interface DrillForm<D extends Drill = Drill, W = unknown> {
  /** What a document may say; its output is the drill. */
  schema(extent: Extent): v.GenericSchema<W, D>;
  /** Inverts the schema; what stands by default is left out. */
  write(drill: D): W;
  /** What a link says behind the kind's letter: no space, and no control character. */
  fold(written: W): string;
  /** Inverts `fold`, but for the kind. Of letters that it would not write comes what no schema takes. */
  unfold(letters: string): object;
  misfit(drill: D, deck: Deck): Misfit | null;
  /** What stands between the words of an item's id behind its head: a space where all of them are one part of it. */
  between(words: readonly string[]): ':' | ' ';
}
