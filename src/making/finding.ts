import type { Drill, Marks } from '../decks/deck.ts';
import type { StringSet } from './stringSets.ts';

/** One thing that reports tell, and what it brings into the lesson. */
export interface Finding {
  /** `iii seen as vi, twice` */
  readonly says: string;
  readonly used: boolean;
  /** The degrees and string sets that it speaks for; empty where it speaks of neither. */
  readonly degrees: readonly number[];
  readonly strings: readonly StringSet[];
  /** Drills that come in with it. */
  readonly drills: readonly Drill[];
  readonly marks: Marks;
}

/** What a lesson was made from. */
export interface Taken {
  /** The drills of the lesson before, as far as they are not done with. */
  readonly drills: readonly Drill[];
  readonly findings: readonly Finding[];
}
