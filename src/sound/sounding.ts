import type { Articulation } from '../theory/phrase.ts';

/** One note to be sounded. */
export interface Sound {
  /** MIDI number; 60 is C4. */
  readonly midi: number;
  /** Onset and length in beats from the start. The last note rings on beyond its length. */
  readonly at: number;
  readonly length: number;
  /** The string it sounds on: a new note on it ends the old one. Without one it lasts as long as it says. */
  readonly string?: number;
  /** Strength of the attack, 0 to 1; .8 where not given. */
  readonly strength?: number;
  /** How it is reached from the note before it on its string; plucked where not given. */
  readonly articulation?: Articulation;
}

/** Notes at a tempo: what a card sounds. */
export interface Sounding {
  readonly notes: readonly Sound[];
  /** Beats a minute. */
  readonly tempo: number;
}
