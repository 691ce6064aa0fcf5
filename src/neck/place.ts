/** A string and a fret. String 1 sounds highest (or is nearest the floor); fret 0 is open. */
export interface Place {
  readonly string: number;
  readonly fret: number;
}
