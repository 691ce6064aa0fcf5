import { MOST } from '../decks/deck.ts';
import type { HandChoice } from '../neck/choice.ts';
import type { Instrument } from '../neck/instrument.ts';
import { midiAt, type Place } from '../neck/place.ts';
import type { Ruling } from '../theory/analysis/ruling.ts';
import {
  emptySketch,
  insert,
  move,
  remove,
  rest,
  restAfter,
  sameSketch,
  sketchOf,
  type Sketch,
} from '../theory/editing.ts';
import { type Key } from '../theory/key.ts';
import { spell } from '../theory/spell.ts';
import type { Phrase } from '../theory/phrase.ts';
import { add, beats, type Beats } from '../theory/rhythm.ts';
import { keptRulings } from './ruled.ts';

/** On a note, or in the gap before it; the gap at the end has as its `at` the number of notes. */
export interface Cursor {
  readonly on: 'note' | 'gap';
  readonly at: number;
}

/** What is written, what was ruled of it, and where one is in it: what can be gone back to. */
export interface EntryMoment {
  readonly sketch: Sketch;
  readonly rulings: readonly Ruling[];
  /** How it lies where its notes have no places, or null for however it lies best. */
  readonly hand: HandChoice | null;
  readonly cursor: Cursor;
}

/** A phrase that is being written. Tapping the neck, tablature and MIDI files all lead to its sketch, the truth of it. */
export interface Entry extends EntryMoment {
  /** What was before each step, and what was taken back: each with the next to go to last. */
  readonly undo: readonly EntryMoment[];
  readonly redo: readonly EntryMoment[];
  /** Tablature as it is typed or was pasted: a phrase once it can be read. Null where the field shows the sketch. */
  readonly text: string | null;
  /** How long the next note is. */
  readonly length: Beats;
  /** Which phrase of the lesson it changes, or null for a new one. */
  readonly of: number | null;
}

/** The length of a note that a phrase starts with: a triplet. */
export const TRIPLET = beats(1, 3);

/** A phrase to be begun. */
export function newEntry(tempo: number): Entry {
  const sketch = emptySketch(tempo);
  return {
    sketch,
    rulings: [],
    cursor: cursorAtEnd(sketch),
    undo: [],
    redo: [],
    text: null,
    length: TRIPLET,
    hand: null,
    of: null,
  };
}

/** A phrase of the lesson to be changed. */
export function entryOf(
  phrase: Phrase,
  rulings: readonly Ruling[],
  of: number,
  hand: HandChoice | null = null,
): Entry {
  const sketch = sketchOf(phrase);
  const length = phrase.notes.at(-1)?.length ?? TRIPLET;
  return {
    ...newEntry(phrase.tempo),
    sketch,
    rulings,
    cursor: cursorAtEnd(sketch),
    length,
    hand,
    of,
  };
}

/** Whether anything is written. */
export function isBegun({ sketch, text }: Entry): boolean {
  return sketch.notes.length > 0 || (text ?? '').trim() !== '';
}

export function cursorAtEnd({ notes }: Sketch): Cursor {
  return { on: 'gap', at: notes.length };
}

/** One step of writing, which can be taken back. */
export function step(entry: Entry, next: Partial<EntryMoment>): Entry {
  const { sketch = entry.sketch, hand = entry.hand } = next;
  const rulings = next.rulings ?? keptRulings(entry.rulings, entry.sketch, sketch);
  const cursor = within(next.cursor ?? entry.cursor, sketch);
  const undo = [...entry.undo, writtenOf(entry)];
  return { ...entry, sketch, rulings, hand, cursor, undo, redo: [] };
}

const writtenOf = ({ sketch, rulings, hand, cursor }: Entry): EntryMoment => ({
  sketch,
  rulings,
  hand,
  cursor,
});

function within({ on, at }: Cursor, sketch: Sketch): Cursor {
  return at < sketch.notes.length ? { on, at } : cursorAtEnd(sketch);
}

/** Takes the last step back. */
export function undone(entry: Entry): Entry {
  const last = entry.undo.at(-1);
  if (!last) return entry;
  return {
    ...entry,
    ...last,
    undo: entry.undo.slice(0, -1),
    redo: [...entry.redo, writtenOf(entry)],
  };
}

/** Does again what was taken back last. */
export function redone(entry: Entry): Entry {
  const next = entry.redo.at(-1);
  if (!next) return entry;
  return {
    ...entry,
    ...next,
    undo: [...entry.undo, writtenOf(entry)],
    redo: entry.redo.slice(0, -1),
  };
}

/** What another sketch says, where it says anything else. */
export function taken(entry: Entry, sketch: Sketch): Entry {
  return sameSketch(sketch, entry.sketch)
    ? entry
    : step(entry, { sketch, cursor: cursorAtEnd(sketch) });
}

/** A tap on the neck: it moves the note that the cursor is on, or writes one where the cursor stands. */
export function tapped(
  entry: Entry,
  place: Place,
  { key, instrument }: { readonly key: Key; readonly instrument: Instrument },
): Entry {
  const { sketch, cursor, length } = entry;
  const midi = midiAt(instrument, place);
  const sounded = { midi, name: spell(key, midi), place };
  if (cursor.on === 'note') return step(entry, { sketch: move(sketch, cursor.at, sounded) });
  if (isFull(entry)) return entry;
  const written = insert(sketch, cursor.at, { ...sounded, length });
  return step(entry, { sketch: written, cursor: { on: 'gap', at: cursor.at + 1 } });
}

/** Whether a phrase has as many notes as it can have. */
export function isFull({ sketch }: Entry): boolean {
  return sketch.notes.length >= MOST.notes;
}

/** Takes the cursor's note out; in a gap the rest before it, or where there is none the note before it. */
export function removed(entry: Entry): Entry {
  const { sketch, cursor } = entry;
  if (cursor.on === 'note') return step(entry, { sketch: remove(sketch, cursor.at) });
  const before = cursor.at - 1;
  if (restAfter(sketch, before).n > 0)
    return step(entry, { sketch: rest(sketch, before, beats(0)) });
  if (before < 0) return entry;
  return step(entry, { sketch: remove(sketch, before), cursor: { on: 'gap', at: before } });
}

/** A rest of the chosen length after the cursor's note, or in its gap; it adds to the one that is there. */
export function rested(entry: Entry): Entry {
  const { sketch, length } = entry;
  const after = restPlace(entry);
  return step(entry, { sketch: rest(sketch, after, add(restAfter(sketch, after), length)) });
}

/** The note after which the cursor's rest lies, −1 for the one before the first note. */
function restPlace({ cursor }: Entry): number {
  return cursor.on === 'note' ? cursor.at : cursor.at - 1;
}

/** The cursor one note on or back; beyond the last note it is in the gap at the end. */
export function cursorMoved({ sketch, cursor }: Entry, by: 1 | -1): Cursor {
  const at = cursor.on === 'gap' && by > 0 ? cursor.at : cursor.at + by;
  return within({ on: 'note', at: Math.max(0, at) }, sketch);
}

/** How many notes of former steps the device keeps each way: some hundred steps of a phrase of four bars. */
const MOST_KEPT = 1500;

/** The entry as the device keeps it: with the steps next to it, so that a long sitting stays small. */
export function keptEntry(entry: Entry): Entry {
  return { ...entry, undo: nearest(entry.undo), redo: nearest(entry.redo) };
}

function nearest(steps: readonly EntryMoment[]): readonly EntryMoment[] {
  let notes = 0;
  const first = steps.findLastIndex(({ sketch }) => (notes += sketch.notes.length + 1) > MOST_KEPT);
  return steps.slice(first + 1);
}
