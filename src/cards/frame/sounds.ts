import { chroma, pitchClass } from '../../theory/note.ts';
import type { Chord } from '../../theory/chord.ts';
import type { Sounding } from '../../sound/sounding.ts';

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
  let last = around - 6 + pitchClass(chroma(chord.root) - (around - 6));
  return chord.notes.map((note, index) => {
    if (index > 0) last += pitchClass(chroma(note) - last);
    return last;
  });
}
