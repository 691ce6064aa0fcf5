import { chordOn } from '../theory/chord.ts';
import type { Key } from '../theory/key.ts';
import { chroma, pitchClass, type NoteName } from '../theory/note.ts';
import { parentKey, type ScaleKind } from '../theory/scale.ts';
import type { Sound, Sounding } from './sounding.ts';

/** How a key is made heard before an ear card. */
export type KeySound = 'cadence' | 'drone' | 'chord';

/** Strength of each note: four together are no louder than one of a phrase (measured). */
const STRENGTH = 0.36;
/** The lowest bass note, E2, and the lowest of the three voices above it, F3. */
const BASS = 40;
const ABOVE = 53;

/**
 * The degrees of the cadence, where it is not I IV V I: the chords that hold what sets the mode apart (common
 * practice).
 */
const CADENCES: ReadonlyMap<ScaleKind, readonly number[]> = new Map<ScaleKind, readonly number[]>([
  ['dorian', [1, 4, 7, 1]],
  ['phrygian', [1, 4, 2, 1]],
  ['lydian', [1, 2, 5, 1]],
  ['mixolydian', [1, 7, 4, 1]],
]);

const firstAbove = (lowest: number, note: NoteName): number =>
  lowest + pitchClass(chroma(note) - lowest);

/** The three inversions of a triad, close, from the lowest of the upper voices on. */
function inversions(notes: readonly NoteName[]): number[][] {
  return notes.map((_, lowest) => {
    const voices: number[] = [];
    for (let i = 0; i < 3; i++) {
      const above = voices.length > 0 ? voices.at(-1)! + 1 : ABOVE;
      voices.push(firstAbove(above, notes[(lowest + i) % 3]!));
    }
    return voices;
  });
}

/** How far the voices go in all, in semitones. */
const voiceLeading = (from: readonly number[], to: readonly number[]): number =>
  from.reduce((sum, voice, i) => sum + Math.abs(voice - to[i]!), 0);

/** Bass and three voices for each chord, each reached from the one before by the nearest moves. */
function voicings(key: Key, degrees: readonly number[]): number[][] {
  let before: number[] | undefined;
  return degrees.map((degree) => {
    // In minor the leading note is raised on the way home.
    const scale = key.scale === 'minor' && degree === 5 ? 'harmonic minor' : key.scale;
    const { notes, root } = chordOn({ ...key, scale }, degree, 'triad');
    const [nearest] = inversions(notes).toSorted((a, b) =>
      before ? voiceLeading(before, a) - voiceLeading(before, b) : a.at(-1)! - b.at(-1)!,
    );
    before = nearest!;
    return [firstAbove(BASS, root), ...nearest!];
  });
}

/** Beats of a bar of what is held. */
const BAR = 4;

/**
 * A key held while somebody plays in it: a chord a bar, over and over, or where no degrees are given the tonic in two
 * octaves.
 *
 * @param tempo beats a minute
 */
export function heldSounding(
  key: Key,
  degrees: readonly number[],
  bars: number,
  tempo: number,
): Sounding {
  const whole = parentKey(key);
  const tonic = firstAbove(BASS, key.tonic);
  const held = degrees.length === 0 ? [[tonic, tonic + 12]] : voicings(whole, degrees);
  return {
    tempo,
    notes: Array.from({ length: bars }, (_, bar) =>
      strum(held[bar % held.length]!, bar * BAR, BAR, 0.03),
    ).flat(),
  };
}

/** A chord as a hand strums it, bass first, each voice on a string of its own. */
function strum(voices: readonly number[], at: number, length: number, spread: number): Sound[] {
  return voices.map((midi, voice) => ({
    midi,
    at: at + voice * spread,
    length: length - voice * spread,
    string: 5 - voice,
    strength: STRENGTH,
  }));
}

/**
 * A key made heard, never louder than a phrase: a cadence (3 s), the tonic held in two octaves, or the tonic's chord.
 * A scale that stacks no chords is heard as the major or minor that it is part of.
 */
export function keySounding(key: Key, how: KeySound = 'cadence'): Sounding {
  const whole = parentKey(key);
  if (how === 'drone') {
    const tonic = firstAbove(BASS, key.tonic);
    const pair = [tonic, tonic + 12];
    return {
      tempo: 100,
      notes: [0, 2].flatMap((at) => strum(pair, at, 2, 0)),
    };
  }
  const degrees = how === 'chord' ? [1] : (CADENCES.get(whole.scale) ?? [1, 4, 5, 1]);
  return {
    tempo: 100,
    notes: voicings(whole, degrees).flatMap((voices, i) =>
      strum(voices, i, i === degrees.length - 1 ? 2 : 1, how === 'chord' ? 0.12 : 0.03),
    ),
  };
}
