import { pitchClass } from '../theory/note.ts';
import { openMidi, type Instrument } from './instrument.ts';

/** A string and a fret. String 1 sounds highest (or is nearest the floor); fret 0 is open, at the capo where one lies. */
export interface Place {
  readonly string: number;
  readonly fret: number;
}

/** What sounds at a place, MIDI. Frets are counted from the capo. */
export function midiAt(instrument: Instrument, place: Place): number {
  return openMidi(instrument)[place.string - 1]! + place.fret;
}

/** Every place on `strings`, from the lowest to the highest fret (both included), that sounds the chroma (0 to 11). */
export function placesOf(
  instrument: Instrument,
  chroma: number,
  strings: readonly number[],
  [lo, hi]: readonly [number, number],
): Place[] {
  const places: Place[] = [];
  for (const string of strings) {
    const open = midiAt(instrument, { string, fret: 0 });
    const first = lo + pitchClass(chroma - open - lo);
    for (let fret = first; fret <= hi; fret += 12) places.push({ string, fret });
  }
  return places;
}

/** The frets to draw around places: at least four, so that the hand sees where it is. */
export function fretsAround(places: readonly Place[]): [number, number] {
  const frets = places.map(({ fret }) => fret);
  const low = Math.min(...frets);
  return [low, Math.max(...frets, low + 3)];
}

/** `string 5, fret 3`, `string 5, open`. */
export function placeLabel({ string, fret }: Place): string {
  return `string ${string}, ${fret === 0 ? 'open' : `fret ${fret}`}`;
}
