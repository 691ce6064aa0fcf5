import { letterDegree, type Key } from '../key.ts';
import type { Phrase, PhraseNote } from '../phrase.ts';

/** How a phrase moves: plain facts. How far that is on a neck in mm says `travel` in the neck's room. */
interface Motion {
  /** Moves from note to note by neighbouring notes of the scale, by more, and on the same pitch. */
  readonly steps: number;
  readonly leaps: number;
  readonly repeats: number;
  /** The share of leaps among all moves, 0 to 1; 0 where there is no move. */
  readonly leaping: number;
  /** From the lowest note to the highest, in semitones. */
  readonly range: number;
}

/** What leaps and what steps in a phrase. */
export function motion(phrase: Phrase, key: Key): Motion {
  const { notes } = phrase;
  const moves = notes.slice(1).map((note, i) => moveOf(key, notes[i]!, note));
  const count = (kind: string) => moves.filter((move) => move === kind).length;
  const pitches = notes.map(({ midi }) => midi);
  return {
    steps: count('step'),
    leaps: count('leap'),
    repeats: count('repeat'),
    leaping: moves.length === 0 ? 0 : count('leap') / moves.length,
    range: notes.length === 0 ? 0 : Math.max(...pitches) - Math.min(...pitches),
  };
}

/** A step is two semitones at most, or three between neighbouring letters, as from ♭6 to ♯7. */
function moveOf(key: Key, from: PhraseNote, to: PhraseNote): 'step' | 'leap' | 'repeat' {
  const semitones = Math.abs(to.midi - from.midi);
  if (semitones === 0) return 'repeat';
  const letters = Math.abs(letterDegree(key, to.name) - letterDegree(key, from.name));
  const neighbours = letters === 1 || letters === 6;
  return semitones <= 2 || (semitones === 3 && neighbours) ? 'step' : 'leap';
}
