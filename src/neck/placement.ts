import type { Phrase, PhraseNote } from '../theory/phrase.ts';
import { fingeringByNote, type FingeringOptions } from './fingering.ts';
import { fingeringOptions, type HandChoice } from './choice.ts';
import { fretsLeft, openMidi, type Instrument } from './instrument.ts';
import { finished, type Incremental } from '../theory/incremental.ts';

/** The same notes of a phrase played elsewhere on the neck; the hand can play it. */
export interface Placement {
  /** Short: `fifth position`, by its number: `position 5`. */
  readonly name: string;
  /** How it differs, in one sentence. */
  readonly says: string;
  readonly phrase: Phrase;
}

/**
 * A phrase with a place for every note, those given kept, the others where they cost the hand least; null where no hand
 * can play it.
 */
export function placed(
  instrument: Instrument,
  phrase: Phrase,
  options: FingeringOptions = {},
): Phrase | null {
  return finished(placedByNote(instrument, phrase, options));
}

/** A phrase placed as a teacher says it lies; where no hand can play it so, as it lies best; with a pause after every note. */
export function* placedAsByNote(
  instrument: Instrument,
  phrase: Phrase,
  choice: HandChoice | undefined,
): Incremental<Phrase | null> {
  const there = yield* placedByNote(instrument, phrase, fingeringOptions(choice));
  return there || choice === undefined ? there : yield* placedByNote(instrument, phrase);
}

/** `placed` with a pause after every note. */
export function* placedByNote(
  instrument: Instrument,
  phrase: Phrase,
  options: FingeringOptions = {},
): Incremental<Phrase | null> {
  const found = yield* fingeringByNote(instrument, phrase.notes, options);
  if (!found.playable) return null;
  const notes = phrase.notes.map((note, i) => {
    const { string, fret } = found.notes[i]!;
    return { ...note, place: { string, fret } };
  });
  return { ...phrase, notes };
}

/**
 * The phrase in each position where all of it lies under the hand, without open strings, if it is played elsewhere;
 * with a pause after every note that is placed.
 */
export function* positionsByNote(instrument: Instrument, phrase: Phrase): Incremental<Placement[]> {
  const bare = { ...phrase, notes: phrase.notes.map(withoutPlace) };
  const now = yield* placedByNote(instrument, phrase);
  const all: Placement[] = [];
  for (let position = 1; position <= fretsLeft(instrument); position++) {
    const there = yield* placedByNote(instrument, bare, { position, open: false });
    if (!there || (now && alike(there, now))) continue;
    const says = `The same notes with the index finger at fret ${position}.`;
    all.push({ name: `position ${position}`, says, phrase: there });
  }
  // Neighbouring positions often come to the same places: the first stands for all.
  return all.filter((one, i) => i === 0 || !alike(one.phrase, all[i - 1]!.phrase));
}

/**
 * The phrase with every note on the next lower and on the next higher string, where all notes are there and in reach;
 * with a pause after every note that is placed.
 */
export function* stringsByNote(instrument: Instrument, phrase: Phrase): Incremental<Placement[]> {
  const now = yield* placedByNote(instrument, phrase);
  if (!now) return [];
  const all: Placement[] = [];
  for (const by of [1, -1]) {
    const notes = now.notes.map((note) => onString(instrument, note, note.place!.string + by));
    if (notes.some((note) => note === null)) continue;
    const there = yield* placedByNote(instrument, { ...now, notes: notes as PhraseNote[] });
    if (!there) continue;
    const strings = [...new Set(there.notes.map(({ place }) => place!.string))].toSorted();
    all.push({
      name: `on strings ${strings.toReversed().join(' ')}`,
      says: `The same notes, each one string ${by > 0 ? 'lower' : 'higher'} and further ${by > 0 ? 'up' : 'down'} the neck.`,
      phrase: there,
    });
  }
  return all;
}

function withoutPlace({ midi, name, at, length, articulation }: PhraseNote): PhraseNote {
  return { midi, name, at, length, ...(articulation && { articulation }) };
}

function onString(instrument: Instrument, note: PhraseNote, string: number): PhraseNote | null {
  const open = openMidi(instrument)[string - 1];
  if (open === undefined) return null;
  const fret = note.midi - open;
  return fret >= 0 && fret <= fretsLeft(instrument) ? { ...note, place: { string, fret } } : null;
}

function alike(a: Phrase, b: Phrase): boolean {
  return a.notes.every(({ place }, i) => {
    const other = b.notes[i]!.place!;
    return place!.string === other.string && place!.fret === other.fret;
  });
}
