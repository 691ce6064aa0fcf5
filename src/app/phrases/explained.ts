import { phraseSound } from '../../cards/frame/sounds.ts';
import { fingering } from '../../neck/hand.ts';
import { fretsLeft, openMidi, type Instrument } from '../../neck/instrument.ts';
import { midiAt, type Place } from '../../neck/place.ts';
import { stretches } from '../../neck/stretch.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { StripNote } from '../../parts/PhraseStrip.tsx';
import type { Sounding } from '../../sound/sounding.ts';
import { analyse, type Analysis } from '../../theory/analysis/analysis.ts';
import type { Ruling } from '../../theory/analysis/ruling.ts';
import type { Key } from '../../theory/key.ts';
import { noteLabel } from '../../theory/naming.ts';
import type { Phrase, PhraseNote } from '../../theory/phrase.ts';
import { toNumber } from '../../theory/rhythm.ts';

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
  /** Why no hand can play it, or null. */
  readonly fault: string | null;
  readonly analysis: Analysis;
}

/** Finds places where none are given, and the arpeggios that a phrase outlines. */
export function explained(
  phrase: Phrase,
  { key, instrument }: { readonly key: Key; readonly instrument: Instrument },
  rulings: readonly Ruling[] = [],
): Explained {
  const analysis = analyse(phrase, key, { rulings });
  const found = fingering(instrument, phrase.notes);
  const about = { phrase, key, instrument, analysis };
  if (!found.playable) {
    const places = givenPlaces(phrase, instrument);
    return { ...about, places, shifts: [], stretches: [], fault: found.reason };
  }
  const pressed = found.notes.map((note, index) => ({ ...note, index })).filter((n) => n.fret > 0);
  const shifts = pressed.slice(1).filter(({ hand }, i) => hand !== pressed[i]!.hand);
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

/** Every place of the phrase once, with its degree; of one group only, with the members of its arpeggio. */
export function dotsOf(
  { phrase, key, places, analysis }: Explained,
  group: number | null = null,
): NeckDot[] {
  const dots = new Map<string, NeckDot>();
  const chosen = group === null ? null : analysis.groups[group]!;
  for (const [i, place] of places?.entries() ?? []) {
    const inside = !chosen || (i >= chosen.from && i < chosen.to);
    const at = `${place.string}/${place.fret}`;
    if (!inside && dots.has(at)) continue;
    const { name, degree, member } = analysis.notes[i]!;
    const text = noteLabel(phrase.notes[i]!.name, 'degrees', key);
    const named = { ...place, note: name, degree };
    if (!inside) dots.set(at, { ...place, look: 'faint' });
    else if (chosen && member) dots.set(at, { ...named, member });
    else dots.set(at, { ...named, text });
  }
  return [...dots.values()];
}

/** The notes as the strip shows them: lengths over places over degrees. */
export function stripOf({ phrase, key, places, instrument }: Explained): StripNote[] {
  return phrase.notes.map((note, i) => {
    const { name, at, length, join } = note;
    const place = places?.[i] ?? placeNear(note, instrument);
    const label = noteLabel(name, 'degrees', key);
    return { ...place, label, at: toNumber(at), length, ...(join && { join }) };
  });
}

/** The place that is given; for a note without one, where it would lie if its string had frets enough. */
function placeNear({ midi, place }: PhraseNote, instrument: Instrument): Place {
  if (place) return place;
  const open = openMidi(instrument);
  const string = open.findIndex((sounds) => sounds <= midi) + 1 || open.length;
  return { string, fret: midi - open[string - 1]! };
}

/** What is heard, each note on the string it is played on. */
export function soundingOf({ phrase, places }: Pick<Explained, 'phrase' | 'places'>): Sounding {
  return phraseSound(phrase, places ?? []);
}
