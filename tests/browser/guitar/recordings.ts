/** What a microphone hears of a player, as WAV files: the app's own string, after a second and more of silence. */
import { writeFileSync } from 'node:fs';
import { inSteps, RATE, recordingOf, wavOf, type Played } from '../../listening/played.ts';

/** Seconds before the first note: the opening silence is measured in them. */
export const SILENCE = 1.5;
/** From note to note at leisure, and after the last one, in seconds. */
const STEP = 0.6;
const AFTER = 3;

/** How a line is played. */
export interface Manner {
  /** Seconds of silence before it. */
  readonly begun?: number;
  /** Seconds from note to note. */
  readonly step?: number;
  /** Every note so many cents off. */
  readonly cents?: number;
}

/** The ways in which a line of notes (MIDI) can go wrong, and the one in which it does not. */
export const PLAYED = {
  right: (line: readonly number[]) => [...line],
  semitone: (line: readonly number[]) => line.with(1, line[1]! + 1),
  octave: (line: readonly number[]) => line.with(1, line[1]! + 12),
  missing: (line: readonly number[]) => line.toSpliced(1, 1),
} as const;

/** Each note is damped as the next is played, as by the hand on one string. */
export function lineOf(
  midis: readonly number[],
  { begun = SILENCE, step = STEP }: Manner,
): Played[] {
  return inSteps(midis, begun, step).map((note) => ({ ...note, until: note.time + step }));
}

/** The samples of a line. */
export function samplesOf(midis: readonly number[], manner: Manner = {}): Float32Array {
  const notes = lineOf(midis, manner);
  const seconds = notes.at(-1)!.time + AFTER;
  return recordingOf(notes, seconds, { rate: RATE, cents: manner.cents ?? 0 });
}

/** Writes a line as a file for a browser's `--use-file-for-fake-audio-capture`. */
export function writeLine(path: string, midis: readonly number[], manner: Manner = {}): void {
  writeFileSync(path, wavOf(samplesOf(midis, manner)));
}
