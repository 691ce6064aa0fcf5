import { readTablature, type TablatureRead } from '../decks/notation/tablature-reader.ts';
import { writeTablature } from '../decks/notation/tablature.ts';
import { isTime } from '../decks/notes.ts';
import { fretsLeft, type Instrument } from '../neck/instrument.ts';
import { midiAt } from '../neck/place.ts';
import { emptySketch, phraseOf, sketchOf, type Sketch } from '../theory/editing.ts';
import { type Key } from '../theory/key.ts';
import { spell } from '../theory/spell.ts';
import type { Phrase } from '../theory/phrase.ts';
import { taken, type Entry } from './entry.ts';
import { BAR, withPlaces, type Explained } from './explained.ts';

/** What a phrase is written for. */
export interface WrittenFor {
  readonly key: Key;
  readonly instrument: Instrument;
}

/** What the text of an entry says; null where it has none. An empty text says that nothing is written. */
export function readText({ text, length, sketch }: Entry, about: WrittenFor): TablatureRead | null {
  if (text === null) return null;
  const { tempo } = sketch;
  if (text.trim() === '') return { phrase: { tempo, notes: [] }, remarks: [] };
  return readTablature(text, { ...about, length, tempo, beatsPerBar: BAR });
}

/** The sketch that is read from a text; null where it cannot be read. */
function sketchRead(read: TablatureRead | null): Sketch | null {
  if (!read || 'faults' in read) return null;
  const { phrase } = read;
  return phrase.notes.length === 0 ? emptySketch(phrase.tempo) : sketchOf(phrase);
}

/** The entry with what its text says, if that can be read: whatever was typed a moment ago counts. */
export function readUpToNow(entry: Entry, about: WrittenFor): Entry {
  const sketch = sketchRead(readText(entry, about));
  return sketch ? taken(entry, sketch) : entry;
}

/** An entry changed otherwise than by its text, which then shows what is written; a text that cannot be read stays. */
export function changed(entry: Entry, about: WrittenFor, change: (now: Entry) => Entry): Entry {
  const now = readUpToNow(entry, about);
  const next = change(now);
  if (next === now) return now;
  return sketchRead(readText(now, about)) ? { ...next, text: null } : next;
}

/**
 * The phrase that is written, its notes called as the key spells them. A place that does not sound its note on this
 * instrument is left out, to be found.
 */
export function writtenPhrase(sketch: Sketch, { key, instrument }: WrittenFor): Phrase {
  const { tempo, notes } = phraseOf(sketch);
  return {
    tempo,
    notes: notes.map(({ place, ...note }) => {
      const there =
        place &&
        place.string <= instrument.tuning.length &&
        place.fret <= fretsLeft(instrument) &&
        midiAt(instrument, place) === note.midi;
      return { ...note, name: spell(key, note.midi), ...(there && { place }) };
    }),
  };
}

/** What the text field shows of a phrase. */
export function textOf(explained: Explained | null): string {
  if (!explained?.places) return '';
  return writeTablature(withPlaces(explained), explained.instrument, BAR);
}

/** The number of the first note whose time no deck can hold, counted from 1; null where there is none. */
export function oddTime({ notes }: Phrase): number | null {
  const odd = notes.findIndex(({ at, length }) => !isTime(at) || !isTime(length));
  return odd < 0 ? null : odd + 1;
}
