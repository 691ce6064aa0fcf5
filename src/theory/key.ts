import { parseNote, type NoteName } from './note.ts';
import { degreeOfStep, SCALE_KINDS, scaleNotes, type Key, type ScaleKind } from './scale.ts';

export type { Key };

/** The tonics that keys are usually written on; the others have four flats or sharps in their scale, or more. */
export const USUAL_TONICS: readonly NoteName[] =
  'C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb'.split(' ');

/** Every scale by its name, and the other names of the major and the minor scale. */
const SCALES_BY_NAME: ReadonlyMap<string, ScaleKind> = new Map([
  ...SCALE_KINDS.map((kind) => [kind, kind] as const),
  ['ionian', 'major'],
  ['aeolian', 'minor'],
  ['natural minor', 'minor'],
]);

/** `Bb major`, `F# harmonic minor`. */
export function keyName(key: Key): string {
  return `${key.tonic} ${key.scale}`;
}

/** The key that a text names, or null. Inverts `keyName`; also takes ♭ and ♯, `ionian`, `aeolian`, `natural minor`. */
export function parseKey(text: string): Key | null {
  const [first = '', ...rest] = text.trim().split(/\s+/);
  const tonic = parseNote(first);
  if (!tonic || tonic.length > 3) return null;
  const name = rest.join(' ').toLowerCase().replaceAll('♯', '#').replaceAll('♭', 'b');
  const scale = SCALES_BY_NAME.get(name);
  return scale ? { tonic, scale } : null;
}

const LETTERS = 'CDEFGAB';

/** How many letters a note lies above the key's tonic, counted from 1. */
export function letterDegree(key: Key, note: NoteName): number {
  return degreeOfStep(LETTERS.indexOf(note[0]!) - LETTERS.indexOf(key.tonic[0]!));
}

/**
 * The degree of the key that a note is, 1 to 7, or null where it is none or spelled otherwise. The degrees of the
 * five- and six-note scales are those of their letters: 1 3 4 5 7 in minor pentatonic.
 */
export function degreeOf(key: Key, note: NoteName): number | null {
  return scaleNotes(key).includes(note) ? letterDegree(key, note) : null;
}
