/**
 * A phrase as a Standard MIDI File and back (Standard MIDI Files 1.0, MIDI Manufacturers Association). Such a file holds
 * pitches and times: places, articulations and spelling are not in it.
 */
import type { Key } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import type { Phrase, PhraseNote } from '../../theory/phrase.ts';
import { beats, compare, toNumber } from '../../theory/rhythm.ts';
import type { Beats } from '../../theory/rhythm.ts';
import type { Fault } from '../envelope.ts';
import { isTime } from '../notes.ts';
import { MOST } from '../deck.ts';
import { midiFault, NOT_WHOLE } from './midiBounds.ts';
import { midiFileOf, parsedMidi, type SoundedNote } from './midiTracks.ts';

const MOST_BYTES = 1_000_000;
/** Ticks of a beat: whole for halves to thirty-seconds, triplets of them, and fifths. */
const TICKS = 480;
/** The most ticks that a beat may have in such a file. */
const MOST_TICKS = 0x7fff;
/** What foreign times are rounded to where they are finer than any written music: triplets of sixteenths. */
const GRID = 24;
const DRUMS = 9;

/** What a MIDI file does not say by itself. */
interface MidiContext {
  /** Spells the notes. */
  readonly key: Key;
  /** Which of the parts with notes to take, from 0. */
  readonly track?: number;
}

/**
 * The file of a phrase, with as many ticks a beat as keep its times exact.
 *
 * @throws RangeError where no file can keep them
 */
export function writeMidi(phrase: Phrase, name: string, beatsPerBar = 4): Uint8Array<ArrayBuffer> {
  const ticks = phrase.notes.reduce(
    (all, { at, length }) => common(common(all, at.d), length.d),
    TICKS,
  );
  if (ticks > MOST_TICKS) throw new RangeError('The beats of this phrase are too fine for MIDI.');
  const notes = phrase.notes.map(({ midi, at, length }, i) => {
    // A pitch that rings on into itself would end with its first end: the hand plucks the same string again.
    const again = phrase.notes.slice(i + 1).find((note) => note.midi === midi);
    const end = Math.min(
      toTicks(at, ticks) + toTicks(length, ticks),
      again ? toTicks(again.at, ticks) : Infinity,
    );
    const from = toTicks(at, ticks);
    return { midi, ticks: from, durationTicks: end - from };
  });
  return midiFileOf({ name, ticks, tempo: phrase.tempo, beatsPerBar, notes });
}

/** The phrase in a MIDI file, with what was left out of it; or why there is none. */
export function readMidi(
  file: Uint8Array,
  { key, track: wanted }: MidiContext,
): { readonly phrase: Phrase; readonly remarks: readonly string[] } | Fault {
  if (file.length > MOST_BYTES) {
    return {
      fault: 'This file is larger than a MIDI file of one phrase: cut the phrase out first.',
    };
  }
  const fault = midiFault(file);
  if (fault !== null) return { fault };
  const midi = parsedMidi(file);
  if (!midi) return { fault: NOT_WHOLE };
  const { ticks, tempos } = midi;
  if (!ticks) {
    return {
      fault:
        'This MIDI file counts in film frames: save it again with beats (ticks a quarter note).',
    };
  }
  const parts = midi.parts.filter(({ channel }) => channel !== DRUMS);
  const part = parts[wanted ?? 0];
  if (!part) return { fault: 'There are no notes in this MIDI file.' };

  const remarks: string[] = [];
  if (parts.length > 1) {
    remarks.push(`This is part ${(wanted ?? 0) + 1} of ${parts.length}; the others were left out.`);
  }
  const tempo = Math.round(tempos[0] ?? 120);
  if (tempos.length > 1)
    remarks.push(`The tempo stays at ${tempo}: the changes in it were left out.`);
  const notes = lineOf(part.notes, ticks, key, remarks);
  if ('fault' in notes) return notes;
  return { phrase: { tempo: Math.min(240, Math.max(30, tempo)), notes }, remarks };
}

/** A line of single notes: the highest of those that begin together. */
function lineOf(
  sounded: readonly SoundedNote[],
  ticks: number,
  key: Key,
  remarks: string[],
): readonly PhraseNote[] | Fault {
  const all = sounded.map(({ midi, ticks: from, durationTicks }) => ({
    midi,
    name: spell(key, midi),
    at: toBeats(from, ticks),
    length: durationTicks > 0 ? atLeast(toBeats(durationTicks, ticks)) : beats(1, GRID),
  }));
  if (
    sounded.some((note) => isRounded(note.ticks, ticks) || isRounded(note.durationTicks, ticks))
  ) {
    remarks.push(`Times were rounded to 1/${GRID} of a beat.`);
  }
  const inOrder = all.toSorted((a, b) => compare(a.at, b.at) || b.midi - a.midi);
  const line = inOrder.filter((note, i) => i === 0 || compare(note.at, inOrder[i - 1]!.at) > 0);
  if (line.length < all.length) {
    remarks.push('Of notes that begin together only the highest was kept.');
  }
  if (line.length > MOST.notes) {
    return {
      fault: `This part has ${line.length} notes, and a phrase at most ${MOST.notes}: cut the phrase out first.`,
    };
  }
  const odd = line.find(
    ({ midi, at, length }) => midi < 12 || midi > 120 || !isTime(at) || !isTime(length),
  );
  if (odd)
    return { fault: `The note at beat ${toNumber(odd.at) + 1} is beyond what a phrase can hold.` };
  return line;
}

/** A time in beats: as it is where it can be written, else rounded. */
function toBeats(time: number, ticks: number): Beats {
  return isRounded(time, ticks)
    ? beats(Math.round((time / ticks) * GRID), GRID)
    : beats(time, ticks);
}

function isRounded(time: number, ticks: number): boolean {
  return beats(time, ticks).d > 96;
}

const atLeast = (length: Beats) => (length.n > 0 ? length : beats(1, GRID));

function toTicks(time: Beats, ticks: number): number {
  return (time.n * ticks) / time.d;
}

/** The least common multiple. */
function common(a: number, b: number): number {
  return a * beats(a, b).d;
}
