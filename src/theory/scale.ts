import { above } from './interval.ts';
import type { NoteName } from './note.ts';

const SCALES = {
  major: '1P 2M 3M 4P 5P 6M 7M',
  minor: '1P 2M 3m 4P 5P 6m 7m',
  'harmonic minor': '1P 2M 3m 4P 5P 6m 7M',
  'melodic minor': '1P 2M 3m 4P 5P 6M 7M',
  // The modes of major; its first and sixth are `major` and `minor` above.
  dorian: '1P 2M 3m 4P 5P 6M 7m',
  phrygian: '1P 2m 3m 4P 5P 6m 7m',
  lydian: '1P 2M 3M 4A 5P 6M 7M',
  mixolydian: '1P 2M 3M 4P 5P 6M 7m',
  locrian: '1P 2m 3m 4P 5d 6m 7m',
  // The modes of harmonic minor, from its second degree.
  'locrian #6': '1P 2m 3m 4P 5d 6M 7m',
  'major #5': '1P 2M 3M 4P 5A 6M 7M',
  'dorian #4': '1P 2M 3m 4A 5P 6M 7m',
  'phrygian dominant': '1P 2m 3M 4P 5P 6m 7m',
  'lydian #2': '1P 2A 3M 4A 5P 6M 7M',
  'altered bb7': '1P 2m 3m 4d 5d 6m 7d',
  // The modes of melodic minor, from its second degree.
  'dorian b2': '1P 2m 3m 4P 5P 6M 7m',
  'lydian augmented': '1P 2M 3M 4A 5A 6M 7M',
  'lydian dominant': '1P 2M 3M 4A 5P 6M 7m',
  'mixolydian b6': '1P 2M 3M 4P 5P 6m 7m',
  'locrian #2': '1P 2M 3m 4P 5d 6m 7m',
  altered: '1P 2m 3m 4d 5d 6m 7m',
  // For looking at: no chords are stacked on these.
  'major pentatonic': '1P 2M 3M 5P 6M',
  'minor pentatonic': '1P 3m 4P 5P 7m',
  blues: '1P 3m 4P 5d 5P 7m',
} as const;

/** The scales that a key can have, by their English names; accidentals in ASCII. */
export type ScaleKind = keyof typeof SCALES;

/** A key: where its first degree is and what scale stands on it. */
export interface Key {
  /** With at most two accidentals. */
  readonly tonic: NoteName;
  readonly scale: ScaleKind;
}

/** All scales, the four of lessons first. */
export const SCALE_KINDS = Object.keys(SCALES) as readonly ScaleKind[];

/** Of every key: the degrees of a scale of seven notes. */
export const DEGREES: readonly number[] = [1, 2, 3, 4, 5, 6, 7];

/** The degree that a step of the scale is, 1 to 7: step 0 is the tonic, 7 the octave above it, −1 the note below. */
export function degreeOfStep(step: number): number {
  return (((step % 7) + 7) % 7) + 1;
}

/** Whether a scale has one note for each letter, so that thirds can be stacked on its degrees. */
export function hasSevenNotes(scale: ScaleKind): boolean {
  return SEVEN.has(scale);
}
const SEVEN = new Set(SCALE_KINDS.filter((kind) => SCALES[kind].split(' ').length === 7));

/**
 * The seven-note key that a key is part of: itself, or where its scale has fewer notes major or minor. In it degrees are
 * counted, chords stand, and the ids of items are written.
 */
export function parentKey(key: Key): Key {
  if (hasSevenNotes(key.scale)) return key;
  return { ...key, scale: key.scale === 'major pentatonic' ? 'major' : 'minor' };
}

const known = new Map<string, readonly NoteName[]>();

/** The notes of a key's scale from its tonic up, as the key spells them. */
export function scaleNotes({ tonic, scale }: Key): readonly NoteName[] {
  const id = `${tonic} ${scale}`;
  let notes = known.get(id);
  if (!notes) {
    notes = SCALES[scale].split(' ').map((interval) => above(tonic, interval));
    known.set(id, notes);
  }
  return notes;
}
