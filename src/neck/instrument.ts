import type { PitchName } from '../theory/note.ts';

/** A fretted instrument as it lies in the player's hands. */
export interface Instrument {
  /** `guitar`, `drop D`, `bass`, … or what a teacher calls it. */
  readonly name: string;
  /** Open strings without the capo, from the highest string number down: E2 A2 D3 G3 B3 E4. */
  readonly tuning: readonly PitchName[];
  /** How many frets it has, 12 to 27. */
  readonly frets: number;
  /** Nut to bridge, mm. */
  readonly scaleLength: number;
  /** The fret the capo lies on; 0 is none. */
  readonly capo: number;
  readonly leftHanded: boolean;
}
