import type { Phrase } from '../theory/phrase.ts';
import { fretDistances } from './fret.ts';
import type { Instrument } from './instrument.ts';

/** How far along the neck a phrase goes, the capo counted in: frets are narrower behind it. Open strings count for nothing: no finger has to be there. */
interface Travel {
  /** Lowest and highest fret that is pressed; both 0 where all strings are open. */
  readonly frets: readonly [number, number];
  /** From the lowest to the highest fret pressed, in mm. */
  readonly reach: number;
  /** The way along the neck from each pressed place to the next, all added up, in mm. */
  readonly way: number;
  /** How many strings are used. */
  readonly strings: number;
}

/** How far along the neck a phrase goes; null where not every note of it has a place. */
export function travel({ notes }: Phrase, instrument: Instrument): Travel | null {
  const places = notes.flatMap(({ place }) => (place ? [place] : []));
  if (places.length === 0 || places.length < notes.length) return null;
  const pressed = places.map(({ fret }) => fret).filter((fret) => fret > 0);
  const frets = pressed.length === 0 ? [0] : pressed;
  const at = fretDistances(instrument);
  const low = Math.min(...frets);
  const high = Math.max(...frets);
  return {
    frets: [low, high],
    reach: at[high]! - at[low]!,
    way: frets.slice(1).reduce((sum, fret, i) => sum + Math.abs(at[fret]! - at[frets[i]!]!), 0),
    strings: new Set(places.map(({ string }) => string)).size,
  };
}
