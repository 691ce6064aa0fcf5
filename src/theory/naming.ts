import { distance } from './interval.ts';
import type { Chord, Member, Quality } from './chord.ts';
import { letterDegree, type Key } from './key.ts';
import { signs, type NoteName } from './note.ts';
import { parentKey, scaleNotes, type ScaleKind } from './scale.ts';

/**
 * How the player reads notes. `solfege` is fixed (C is Do); `movable` calls the tonic do in minor as well (do re me);
 * `degrees` counts along the key's scale.
 */
export type Naming = 'english' | 'german' | 'solfege' | 'movable' | 'degrees';

export const NAMINGS: readonly Naming[] = ['english', 'german', 'solfege', 'movable', 'degrees'];

/** How someone who counts along the key reads what has no key, as a string: by letters. */
export function absolute(naming: Naming): Naming {
  return naming === 'degrees' || naming === 'movable' ? 'english' : naming;
}

/** Accidentals as they are printed: `Am7b5` → `Am7♭5`. A sign stands after a note's letter or before a number. */
const printed = (text: string) =>
  text.replaceAll(/(?<=^[A-G][#b]*)[#b]|[#b](?=[#b]*\d)/g, (sign) => (sign === '#' ? '♯' : '♭'));

const SOLFEGE: Readonly<Record<string, string>> = {
  C: 'Do',
  D: 'Re',
  E: 'Mi',
  F: 'Fa',
  G: 'Sol',
  A: 'La',
  B: 'Si',
};

/** Movable do by the interval above the tonic. */
const MOVABLE: Readonly<Record<string, string>> = {
  '1P': 'do',
  '1A': 'di',
  '2m': 'ra',
  '2M': 're',
  '2A': 'ri',
  '3m': 'me',
  '3M': 'mi',
  '4P': 'fa',
  '4A': 'fi',
  '5d': 'se',
  '5P': 'sol',
  '5A': 'si',
  '6m': 'le',
  '6M': 'la',
  '6A': 'li',
  '7m': 'te',
  '7M': 'ti',
};

/** `B♭`, `B` or `H`, `Si♭`, `te`, `7`: a note as the player reads it. */
export function noteLabel(note: NoteName, naming: Naming, key: Key): string {
  if (naming === 'german') return german(note);
  if (naming === 'solfege') return SOLFEGE[note[0]!]! + printed(note).slice(1);
  if (naming === 'movable') return movable(note, key);
  if (naming === 'degrees') {
    const degree = letterDegree(key, note);
    return accidentals(offset(scaleOfLetter(key, degree), note)) + degree;
  }
  return printed(note);
}

/** Letters with -is and -es; H is B natural and B is B flat; Es, As and Heses are contracted. */
function german(note: NoteName): string {
  const letter = note[0]!;
  const marks = note.slice(1);
  if (note === 'Bb') return 'B';
  const stem = letter === 'B' ? 'H' : letter;
  const flats = 'es'.repeat(marks.length);
  if (marks.startsWith('b'))
    return stem + (letter === 'E' || letter === 'A' ? flats.slice(1) : flats);
  return stem + 'is'.repeat(marks.length);
}

/** Where no syllable is at home, the one of the letter's major-scale note with its signs: `ti♭♭`. */
function movable(note: NoteName, key: Key): string {
  const syllable = MOVABLE[distance(key.tonic, note)];
  if (syllable) return syllable;
  const major = { tonic: key.tonic, scale: 'major' } as const;
  const home = scaleOfLetter(major, letterDegree(key, note));
  return MOVABLE[distance(key.tonic, home)]! + accidentals(offset(home, note));
}

function scaleOfLetter(key: Key, degree: number): NoteName {
  return scaleNotes(parentKey(key))[degree - 1]!;
}

/** By how many semitones a note is raised against another of the same letter. */
const offset = (from: NoteName, to: NoteName) => signs(to) - signs(from);

const accidentals = (raised: number) => (raised < 0 ? '♭' : '♯').repeat(Math.abs(raised));

/** What a symbol says after its root, as it is printed: `m7`, `ø7♭9`, `°`, `maj7♯5`. */
function suffixLabel(quality: Quality, minor: string): string {
  const { triad, seventh, number, altered } = quality;
  const major = seventh === 'major' ? 'maj' : '';
  const rest = printed(`${number ?? ''}${altered.join('')}`);
  if (triad === 'major') return major + rest;
  if (triad === 'minor') return minor + major + rest;
  if (triad === 'augmented') return `+${major}${rest}`;
  return (seventh === 'minor' ? 'ø' : '°') + rest;
}

/**
 * `B♭`, `Cm7`, `Aø7`, `C+`; with an inversion the bass too: `Cm7/E♭`. Movable and degrees name a chord by its numeral.
 */
export function chordLabel(chord: Chord, naming: Naming, inversion = 0): string {
  const relative = naming === 'movable' || naming === 'degrees';
  const name = relative ? numeralLabel(chord) : rootLabel(chord, naming);
  const bass = inversion > 0 ? `/${noteLabel(chord.notes[inversion]!, naming, chord.key)}` : '';
  return name + bass;
}

function rootLabel({ root, key, quality }: Chord, naming: Naming): string {
  const bracketed = quality.triad === 'minor' && quality.seventh === 'major';
  const suffix = suffixLabel(quality, bracketed ? 'm(' : 'm');
  return noteLabel(root, naming, key) + suffix + (bracketed ? ')' : '');
}

/** `root position`, `first inversion`, …: which member is lowest, 0 for the root. */
export function inversionLabel(inversion: number): string {
  const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
  return inversion === 0 ? 'root position' : `${ordinals[inversion - 1]} inversion`;
}

/** What a chord member is called. */
export const MEMBER_NAMES: Readonly<Record<Member, string>> = {
  1: 'root',
  3: 'third',
  5: 'fifth',
  7: 'seventh',
  9: 'ninth',
  11: 'eleventh',
  13: 'thirteenth',
};

/** The numeral with the chord's size: `ii7`, `IVmaj7`, `viiø7`, `V7♭9`. */
export function numeralLabel(chord: Chord): string {
  return chord.numeral.replace(/[°ø+]$/, '') + suffixLabel(chord.quality, '');
}

/** `B♭ major`; the tonic as the player reads notes, in letters where notes are relative to it. */
export function keyLabel(key: Key, naming: Naming): string {
  return `${noteLabel(key.tonic, absolute(naming), key)} ${scaleLabel(key.scale)}`;
}

/** `harmonic minor`, `dorian ♭2`. */
export function scaleLabel(scale: ScaleKind): string {
  return printed(scale);
}

/** The interval of a note above the tonic: `P1`, `m3`, `A4`. */
export function intervalLabel(note: NoteName, key: Key): string {
  const interval = distance(key.tonic, note);
  return interval.slice(-1) + interval.slice(0, -1);
}
