import { chroma } from '../theory/note.ts';
import type { Key } from '../theory/key.ts';
import { chordOn, type Chord } from '../theory/chord.ts';
import type { Sounding } from '../sound/sounding.ts';

/** Beats a minute at which an answer is sounded. */
const ANSWER_TEMPO = 84;

/** Notes one after the other in even triplets, the last one left to ring. */
export function arpeggioSound(midis: readonly number[]): Sounding {
  return {
    tempo: ANSWER_TEMPO,
    notes: midis.map((midi, index) => ({
      midi,
      at: index / 3,
      length: index === midis.length - 1 ? 2 : 1 / 3,
    })),
  };
}

/** MIDI numbers of a chord upwards from its root, the root nearest to `around`. */
export function chordNear(chord: Chord, around: number): number[] {
  let last = around - 6 + mod12(chroma(chord.root) - (around - 6));
  return chord.notes.map((note, index) => {
    if (index > 0) last += mod12(chroma(note) - last);
    return last;
  });
}

const mod12 = (n: number) => ((n % 12) + 12) % 12;

/** The key established: I IV V I (i iv v i in minor) as short chords, softer than a phrase. */
export function cadence(key: Key, around: number): Sounding {
  return {
    tempo: 108,
    notes: [1, 4, 5, 1].flatMap((degree, index) =>
      chordNear(chordOn(key, degree, 'triad'), around).map((midi) => ({
        midi,
        at: index,
        length: index === 3 ? 2 : 1,
        strength: 0.5,
      })),
    ),
  };
}
