import type { Item } from '../../practice/item.ts';
import type { PhraseNote } from '../../theory/phrase.ts';
import type { Card } from '../kind.ts';

/** A line to be played on the guitar: what `play` and `echo` share. */
export interface PlayingCard<I extends Item = Item> extends Card<I> {
  /** In the order in which they are to be played, from beat 0 on. */
  readonly notes: readonly PhraseNote[];
  /** Quarter notes a minute; null at leisure. */
  readonly tempo: number | null;
}
