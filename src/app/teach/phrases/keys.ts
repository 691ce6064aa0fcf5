/** The keyboard on the phrase desk: arrows and digits write notes, letters say how long they are. */
import {
  cursorAtEnd,
  cursorMoved,
  removed,
  rested,
  tapped,
  TRIPLET,
  undone,
  type Entry,
} from '../../../making/entry.ts';
import type { WrittenFor } from '../../../making/reading.ts';
import { fretsLeft } from '../../../neck/instrument.ts';
import { beats, type Beats } from '../../../theory/rhythm.ts';
import { dotted, noteValue } from '../../../theory/value.ts';
import { shifted } from './ChosenNote.tsx';

/** What is listed under `?`. */
export const KEY_WORDS: readonly (readonly [keys: string, does: string])[] = [
  ['↑ ↓', 'the string above or below'],
  [
    '0 to 9',
    'writes a note on that fret, or moves the one the cursor is on; 1 and 2 at once are 12',
  ],
  ['← →', 'the note before or after'],
  ['Home, End', 'the first note, or behind the last'],
  ['T E S Q H', 'triplets, eighths, sixteenths, quarters, halves from here on'],
  ['. (full stop)', 'dotted or not'],
  ['R', 'a rest'],
  ['Delete', 'takes the note out'],
  ['Shift ← →', 'moves the note earlier or later'],
  ['Space', 'hear it, or stop'],
  ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
  ['?', 'these keys'],
];

/** What of the keyboard is remembered from key to key. */
export interface Typing {
  /** The string that digits are for; null until one is chosen. */
  readonly string: number | null;
  /** The digits that the last note was typed with, and when, ms; null where it was none. */
  readonly digits: { readonly text: string; readonly at: number } | null;
}

export const NOT_TYPING: Typing = { string: null, digits: null };

/** So soon after the first a second digit belongs to the same fret, ms. */
const TOGETHER = 600;

interface Typed {
  readonly typing: Typing;
  /** What is done to what is written; null where nothing is. */
  readonly edit: ((now: Entry) => Entry) | null;
}

/** What a digit does. Fret 12 is 1 and, soon after it, 2. */
export function digitTyped(
  entry: Entry,
  typing: Typing,
  digit: string,
  at: number,
  about: WrittenFor,
): Typed {
  const string = typing.string ?? stringAt(entry, about);
  const soon = typing.digits !== null && at - typing.digits.at < TOGETHER;
  const text = soon ? typing.digits!.text + digit : digit;
  const highest = fretsLeft(about.instrument);
  if (soon && text.length === 2 && Number(text) <= highest && !text.startsWith('0')) {
    const place = { string, fret: Number(text) };
    return {
      typing: { string, digits: { text, at } },
      edit: (now) => tapped(undone(now), place, about),
    };
  }
  const place = { string, fret: Number(digit) };
  const edit = place.fret > highest ? null : (now: Entry) => tapped(now, place, about);
  return { typing: { string, digits: { text: digit, at } }, edit };
}

/** The next string up or down, from the one that digits are for. */
export function stringMoved(entry: Entry, typing: Typing, by: 1 | -1, about: WrittenFor): Typing {
  const { length } = about.instrument.tuning;
  const string = (typing.string ?? stringAt(entry, about)) + by;
  return { string: Math.min(length, Math.max(1, string)), digits: null };
}

/** The string of the note at the cursor or before it; where there is none, a middle one. */
function stringAt({ sketch, cursor }: Entry, { instrument }: WrittenFor): number {
  const note = sketch.notes[cursor.on === 'note' ? cursor.at : cursor.at - 1];
  return note?.place?.string ?? Math.ceil(instrument.tuning.length / 2);
}

const LENGTHS: Readonly<Record<string, Beats>> = {
  t: TRIPLET,
  e: beats(1, 2),
  s: beats(1, 4),
  q: beats(1),
  h: beats(2),
};

/** The length that a letter, or the full stop, gives; null for any other key. */
export function lengthTyped(key: string, { length }: Pick<Entry, 'length'>): Beats | null {
  if (key !== '.') return LENGTHS[key.toLowerCase()] ?? null;
  const value = noteValue(length);
  return value && !value.triplet ? dotted(length, !value.dotted) : null;
}

/** What else a key does to what is written, or to its cursor; null where it does neither. */
export function keyed(
  entry: Entry,
  { key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>,
): { readonly edit: (now: Entry) => Entry } | { readonly cursor: Entry['cursor'] } | null {
  const { sketch, cursor } = entry;
  const by = { ArrowLeft: -1, ArrowRight: 1 }[key] as 1 | -1 | undefined;
  if (by && shiftKey && cursor.on === 'note') return { edit: (now) => shifted(now, by) };
  if (by) return { cursor: cursorMoved(entry, by) };
  if (key === 'Home') return sketch.notes.length > 0 ? { cursor: { on: 'note', at: 0 } } : null;
  if (key === 'End') return { cursor: cursorAtEnd(sketch) };
  if (key === 'Delete' || key === 'Backspace') return { edit: removed };
  return key.toLowerCase() === 'r' ? { edit: rested } : null;
}
