/**
 * The notes of a phrase as a deck document writes them, one text each:
 *
 *     Bb3 at 4/3 for 1/3 on 3/3 by slide
 *
 * is B flat below middle C, beginning 4/3 beats after the phrase does, a third of a beat long, on string 3 fret 3,
 * slid into. Without `at` a note begins where the one before it ends; without `for` it is as long as that one (the
 * first: one beat); place and articulation are left out where they are not known.
 */
import { parsePlace, placeText } from '../neck/placeText.ts';
import { midiOf, parsePitch } from '../theory/note.ts';
import type { Articulation, PhraseNote } from '../theory/phrase.ts';
import { add, beats, compare } from '../theory/rhythm.ts';
import { beatsText, parseBeats } from '../theory/rhythmText.ts';
import type { Beats } from '../theory/rhythm.ts';
import type { Fault } from './envelope.ts';

/** The finest part of a beat that a phrase may use, and the latest beat that it may reach. */
const FINEST = 960;
const LATEST = 4096;
const START: PhraseNote = { midi: 0, name: 'C', at: beats(-1), length: beats(1) };

const NOTE =
  /^(?<pitch>\S+)(?: at (?<at>\S+))?(?: for (?<length>\S+))?(?: on (?<place>\S+))?(?: by (?<articulation>slide|hammer-on|pull-off))?$/;

/** The notes of a phrase, or what is wrong with the first that cannot be read. Inverts `writeNotes`. */
export function readNotes(texts: readonly string[]): PhraseNote[] | Fault {
  const notes: PhraseNote[] = [];
  for (const [i, text] of texts.entries()) {
    const note = readNote(text, notes.at(-1) ?? START);
    if (typeof note === 'string') return { fault: `note ${i + 1}, “${text}”: ${note}` };
    notes.push(note);
  }
  return notes;
}

/** The texts of a phrase's notes, each as short as it can be. */
export function writeNotes(notes: readonly PhraseNote[]): string[] {
  return notes.map((note, i) => {
    const before = notes[i - 1] ?? START;
    const { at, length, place, articulation } = note;
    const words = [`${note.name}${octaveOf(note)}`];
    if (compare(at, endOf(before)) !== 0) words.push('at', beatsText(at));
    if (compare(length, before.length) !== 0) words.push('for', beatsText(length));
    if (place) words.push('on', placeText(place));
    if (articulation) words.push('by', articulation);
    return words.join(' ');
  });
}

/** Where a note ends, in beats from the start of its phrase. */
function endOf({ at, length }: PhraseNote): Beats {
  return add(at, length);
}

function readNote(text: string, before: PhraseNote): PhraseNote | string {
  const parts = NOTE.exec(text.trim().replace(/\s+/g, ' '))?.groups;
  if (!parts) return 'write it like "Bb3 for 1/3 on 3/3"';
  const pitch = parsePitch(parts.pitch ?? '');
  if (!pitch || pitch.midi < 12 || pitch.midi > 120) {
    return 'begin with a note and its octave, C0 to C9, like "Bb3"';
  }
  const length = parts.length === undefined ? before.length : parseBeats(parts.length);
  const at = parts.at === undefined ? endOf(before) : parseBeats(parts.at);
  if (!length || !at || !isTime(length) || !isTime(at) || length.n <= 0) {
    return `give beats as a whole number or a fraction like 1/3, no finer than 1/${FINEST} and up to ${LATEST}`;
  }
  if (compare(at, before.at) <= 0) return 'let it begin after the note before it';
  const place = parts.place === undefined ? undefined : parsePlace(parts.place);
  if (place === null) return 'write the place as string and fret, like 3/3';
  return {
    midi: pitch.midi,
    name: pitch.name,
    at,
    length,
    ...(place ? { place } : {}),
    ...(parts.articulation === undefined
      ? {}
      : { articulation: parts.articulation as Articulation }),
  };
}

/** Whether a time is one that a phrase can use. */
export function isTime({ n, d }: Beats): boolean {
  return d <= FINEST && n >= 0 && n <= LATEST * d;
}

/**
 * The octave that a note's pitch has under its name.
 *
 * @throws RangeError where no octave of that name sounds the pitch
 */
export function octaveOf({ name, midi }: PhraseNote): number {
  const octave = 4 + (midi - midiOf(`${name}4`)) / 12;
  if (!Number.isInteger(octave))
    throw new RangeError(`MIDI note ${midi} cannot be called ${name}.`);
  return octave;
}
