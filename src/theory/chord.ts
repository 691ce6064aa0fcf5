import type { Key } from './key.ts';
import type { NoteName } from './note.ts';

/** How many thirds are stacked. */
export type Size = 'triad' | 'seventh' | 'ninth' | 'eleventh' | 'thirteenth';

/** A chord member's number: the root is 1, the third 3, … */
export type Member = 1 | 3 | 5 | 7 | 9 | 11 | 13;

/** The chord that stands on a degree of a key, thirds stacked from the scale and spelled by letter. */
export interface Chord {
  readonly key: Key;
  /** 1 to 7. */
  readonly degree: number;
  readonly size: Size;
  readonly root: NoteName;
  /** Root first, in thirds. */
  readonly notes: readonly NoteName[];
  /** The members that `notes` are, in the same order. */
  readonly members: readonly Member[];
  /** As the trade writes it, in ASCII: `Bb`, `Cm7`, `F7`, `Am7b5`, `Ebmaj9`. */
  readonly symbol: string;
  /** Case and quality mark, without the size: `I`, `ii`, `vii°`, `III+`, `viiø` for sevenths. */
  readonly numeral: string;
}
