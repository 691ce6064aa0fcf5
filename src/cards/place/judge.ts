import { midiAt, parsePlace, type Place } from '../../neck/place.ts';
import type { Verdict } from '../../practice/item.ts';
import { chroma, type NoteName } from '../../theory/note.ts';
import { takes, type PlaceCard } from './ask.ts';

/** The places of an answer, held against the chord. */
export interface Placed {
  readonly places: readonly Place[];
  /** Places whose note is no note of the chord. */
  readonly foreign: readonly Place[];
  /** Places whose note stands already elsewhere. */
  readonly twice: readonly Place[];
  /** Notes of the chord that stand nowhere. */
  readonly missing: readonly NoteName[];
}

/** Reads `5/3 4/1 4/5`; words that are no places, and places beyond the card's strings and frets, are left out. */
export function placed(card: PlaceCard, answer: string): Placed {
  const places = answer
    .split(' ')
    .map(parsePlace)
    .filter((place): place is Place => place !== null && takes(card, place));
  const chromas = card.chord.notes.map(chroma);
  const found = new Set<number>();
  const foreign: Place[] = [];
  const twice: Place[] = [];
  for (const place of places) {
    const sounds = midiAt(card.instrument, place) % 12;
    if (!chromas.includes(sounds)) foreign.push(place);
    else if (found.has(sounds)) twice.push(place);
    else found.add(sounds);
  }
  const missing = card.chord.notes.filter((note) => !found.has(chroma(note)));
  return { places, foreign, twice, missing };
}

/** Right where every note of the chord stands once and nothing else does, wherever that is. */
export function judge(card: PlaceCard, answer: string): Verdict {
  const { foreign, twice, missing } = placed(card, answer);
  return { right: foreign.length + twice.length + missing.length === 0, takenFor: null };
}
