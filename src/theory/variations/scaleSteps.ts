import { letterDegree, type Key } from '../key.ts';
import { chroma, semitonesAbove, type NoteName } from '../note.ts';
import type { PhraseNote } from '../phrase.ts';
import { degreeOfStep, parentKey, scaleNotes } from '../scale.ts';

/** A note counted along a key's scale: 0 is the tonic from C4 up, 7 the octave above it, −1 the step below. */
interface ScaleStep {
  readonly step: number;
  /** By how many semitones the note is raised against the scale's own. */
  readonly raised: number;
}

function midiOf(key: Key, step: number): number {
  const notes = scaleNotes(key);
  let octave = octaves.get(notes);
  if (!octave) {
    octave = notes.map((note) => 60 + chroma(key.tonic) + semitonesAbove(key.tonic, note));
    octaves.set(notes, octave);
  }
  return octave[degreeOfStep(step) - 1]! + 12 * Math.floor(step / 7);
}

/** What a scale's notes sound from its tonic in the octave on C4 up. */
const octaves = new WeakMap<readonly NoteName[], readonly number[]>();

/** Where a note of a phrase stands on its key's scale, by its letter. */
export function stepOf(key: Key, { midi, name }: Pick<PhraseNote, 'midi' | 'name'>): ScaleStep {
  const scale = parentKey(key);
  const degree = letterDegree(scale, name) - 1;
  const octave = Math.round((midi - midiOf(scale, degree)) / 12);
  const step = degree + 7 * octave;
  return { step, raised: midi - midiOf(scale, step) };
}

/** By how many scale steps one note lies above another, below 0 where it lies below. */
export function stepsBetween(
  key: Key,
  from: Pick<PhraseNote, 'midi' | 'name'>,
  to: Pick<PhraseNote, 'midi' | 'name'>,
): number {
  return stepOf(key, to).step - stepOf(key, from).step;
}

/** The scale's own note on a step. */
export function noteOn(key: Key, step: number): { midi: number; name: NoteName } {
  const scale = parentKey(key);
  return { midi: midiOf(scale, step), name: scaleNotes(scale)[degreeOfStep(step) - 1]! };
}
