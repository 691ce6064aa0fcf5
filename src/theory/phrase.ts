import type { Beats } from './rhythm.ts';
import type { NoteName } from './note.ts';

/** How a note can be reached from the one before it on the same string. */
export const ARTICULATIONS = ['slide', 'hammer-on', 'pull-off'] as const;
export type Articulation = (typeof ARTICULATIONS)[number];

/** One note of a phrase. */
export interface PhraseNote {
  /** Sounding pitch, MIDI numbers (C4 = 60). */
  readonly midi: number;
  readonly name: NoteName;
  /** Onset in beats from the phrase's start. */
  readonly at: Beats;
  readonly length: Beats;
  /** Where it is played, when that is known. String 1 sounds highest; fret 0 is open. */
  readonly place?: { readonly string: number; readonly fret: number };
  readonly articulation?: Articulation;
}

/** A line of single notes in the order of their onsets. */
export interface Phrase {
  readonly notes: readonly PhraseNote[];
  /** Quarter notes a minute. */
  readonly tempo: number;
}
