import { phraseSound } from '../cards/frame/phraseSound.ts';
import { fingeringOptions, type HandChoice } from '../neck/choice.ts';
import { fingering } from '../neck/fingering.ts';
import { fretsLeft, type Instrument } from '../neck/instrument.ts';
import { midiAt, type Place } from '../neck/place.ts';
import { stretches } from '../neck/stretch.ts';
import type { Sounding } from '../sound/sounding.ts';
import { analyse, type Analysis } from '../theory/analysis/analysis.ts';
import type { Ruling } from '../theory/analysis/ruling.ts';
import type { Key } from '../theory/key.ts';
import type { Phrase } from '../theory/phrase.ts';

/** How many beats there are from bar line to bar line. */
export const BAR = 4;

/** A phrase with all that can be said of it on an instrument in a key. */
export interface Explained {
  readonly phrase: Phrase;
  readonly key: Key;
  readonly instrument: Instrument;
  /** Where each note is played; null where one of them has no place at all. */
  readonly places: readonly Place[] | null;
  /** The notes, by their index, before which the hand goes to another fret. */
  readonly shifts: readonly number[];
  /** The notes, by their index, for which it stretches. */
  readonly stretches: readonly number[];
  /** Why no hand can play it as the teacher says that it lies, or null: it is shown as it lies best, then. */
  readonly handFault: string | null;
  /** Why no hand can play it, or null. */
  readonly fault: string | null;
  readonly analysis: Analysis;
}

/** Finds places where none are given, and the arpeggios that a phrase outlines. */
export function explained(
  phrase: Phrase,
  { key, instrument }: { readonly key: Key; readonly instrument: Instrument },
  rulings: readonly Ruling[] = [],
  hand?: HandChoice,
): Explained {
  const analysis = analyse(phrase, key, { rulings });
  const asked = fingering(instrument, phrase.notes, fingeringOptions(hand));
  const found = asked.playable || hand === undefined ? asked : fingering(instrument, phrase.notes);
  const handFault = asked.playable || !found.playable ? null : asked.reason;
  const about = { phrase, key, instrument, analysis, handFault };
  if (!found.playable) {
    const places = givenPlaces(phrase, instrument);
    return { ...about, places, shifts: [], stretches: [], fault: found.reason };
  }
  const pressed = found.notes.map((note, index) => ({ ...note, index })).filter((n) => n.fret > 0);
  const shifts = pressed.slice(1).filter((note, i) => note.hand !== pressed[i]!.hand);
  const places = found.notes.map(({ string, fret }) => ({ string, fret }));
  return {
    ...about,
    places,
    shifts: shifts.map(({ index }) => index),
    stretches: stretches(found.notes),
    fault: null,
  };
}

/** The places written down, if every note has one that sounds it. */
function givenPlaces({ notes }: Phrase, instrument: Instrument): Place[] | null {
  const places = notes.flatMap(({ midi, place }) =>
    place && place.fret <= fretsLeft(instrument) && midiAt(instrument, place) === midi
      ? [place]
      : [],
  );
  return places.length === notes.length ? places : null;
}

/** The phrase with the places that were given or found. */
export function withPlaces({ phrase, places }: Explained): Phrase {
  if (!places) return phrase;
  return { ...phrase, notes: phrase.notes.map((note, i) => ({ ...note, place: places[i]! })) };
}

/** What is heard, each note on the string it is played on. */
export function soundingOf({ phrase, places }: Pick<Explained, 'phrase' | 'places'>): Sounding {
  return phraseSound(phrase, places ?? []);
}
