import { transpose } from '@tonaljs/pitch-distance';
import { chroma, fifths, parseNote, type NoteName } from './note.ts';
import { parentScale, SCALE_KINDS, scaleNotes, type ScaleKind } from './scale.ts';

/** A key: where its first degree is and what scale stands on it. */
export interface Key {
  /** With at most two accidentals. */
  readonly tonic: NoteName;
  readonly scale: ScaleKind;
}

const ALSO_CALLED: Readonly<Record<string, ScaleKind>> = {
  ionian: 'major',
  aeolian: 'minor',
  'natural minor': 'minor',
};

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
  const scale = ALSO_CALLED[name] ?? SCALE_KINDS.find((kind) => kind === name);
  return scale ? { tonic, scale } : null;
}

const LETTERS = 'CDEFGAB';

/** How many letters a note lies above the key's tonic, counted from 1. */
export function letterDegree(key: Key, note: NoteName): number {
  return ((LETTERS.indexOf(note[0]!) - LETTERS.indexOf(key.tonic[0]!) + 7) % 7) + 1;
}

/**
 * The degree of the key that a note is, 1 to 7, or null where it is none or spelled otherwise. The degrees of the
 * five- and six-note scales are those of their letters: 1 3 4 5 7 in minor pentatonic.
 */
export function degreeOf(key: Key, note: NoteName): number | null {
  return scaleNotes(key).includes(note) ? letterDegree(key, note) : null;
}

const spellings = new Map<string, readonly NoteName[]>();

/**
 * How the key spells a sounding pitch: its own notes as they are, foreign ones by the spelling that lies nearest to
 * its notes on the line of fifths, the sharper of two equally near (D. Temperley, *The Cognition of Basic Musical
 * Structures*, 2001, ch. 5).
 */
export function spell(key: Key, midi: number): NoteName {
  const id = keyName(key);
  let names = spellings.get(id);
  if (!names) {
    names = Array.from({ length: 12 }, (_, semitones) => spelling(key, semitones));
    spellings.set(id, names);
  }
  return names[((midi % 12) + 12) % 12]!;
}

function spelling(key: Key, semitones: number): NoteName {
  const own = scaleNotes(key).find((note) => chroma(note) === semitones);
  if (own) return own;
  const notes = scaleNotes({ tonic: key.tonic, scale: parentScale(key.scale) });
  const centre = notes.reduce((sum, note) => sum + fifths(note), 0) / notes.length;
  // Fifths that sound this pitch are 12 apart.
  const start = (semitones * 7) % 12;
  const nearest = start + 12 * Math.floor((centre - start) / 12 + 0.5);
  return transpose('C', [nearest, 0]);
}
