import { chordOn, type Chord, type Size } from '../chord.ts';
import { keyName, type Key } from '../key.ts';
import { DEGREES, parentKey } from '../scale.ts';

const SIZES: readonly Size[] = ['triad', 'seventh', 'ninth', 'eleventh'];

/**
 * The chords that a group of notes may outline: triad, seventh, ninth and eleventh on each degree and, in minor, the
 * chords borrowed from harmonic minor on its fifth and seventh. A five- or six-note scale takes the chords of the scale that it is part of.
 */
export function candidates(key: Key): readonly Chord[] {
  const id = keyName(key);
  let chords = known.get(id);
  if (!chords) known.set(id, (chords = candidatesOf(key)));
  return chords;
}

const known = new Map<string, readonly Chord[]>();

function candidatesOf(key: Key): Chord[] {
  const own = parentKey(key);
  const chords = SIZES.flatMap((size) => DEGREES.map((degree) => chordOn(own, degree, size)));
  if (own.scale !== 'minor') return chords;
  const borrowed = { ...own, scale: 'harmonic minor' } as const;
  return [
    ...chords,
    ...SIZES.map((size) => chordOn(borrowed, 5, size)),
    chordOn(borrowed, 7, 'triad'),
    chordOn(borrowed, 7, 'seventh'),
  ];
}

/** Whether two chords are the same one, whatever key names them. */
export function sameChord(a: Chord, b: Chord): boolean {
  return a.degree === b.degree && a.symbol === b.symbol;
}
