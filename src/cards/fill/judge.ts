import { fretsLeft, openMidi } from '../../neck/instrument.ts';
import type { Verdict } from '../../practice/item.ts';
import { degreeOf } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { pitchClass } from '../../theory/note.ts';
import type { FillCard } from './ask.ts';

export { degreeAnswers as answers } from '../arpeggio/named.ts';

/** Right where the answer is the degree of the missing note. */
export function judge(card: FillCard, answer: string): Verdict {
  const right = answer === String(card.degree);
  return { right, takenFor: right ? null : answer };
}

/** The degree that a note played is, in whatever octave; null for one that is no answer: outside the key, and not the note that is missing. */
export function degreeOfPitch({ key, excerpt, missing, degree }: FillCard, midi: number) {
  if (pitchClass(midi - excerpt.notes[missing]!.midi) === 0) return degree;
  return degreeOf(key, spell(key, midi));
}

/** Every note of the instrument that is an answer, MIDI, rising. */
export function pitchesOf(card: FillCard): number[] {
  const open = openMidi(card.instrument);
  const lowest = Math.min(...open);
  const highest = Math.max(...open) + fretsLeft(card.instrument);
  const all = Array.from({ length: highest - lowest + 1 }, (_, i) => lowest + i);
  return all.filter((midi) => degreeOfPitch(card, midi) !== null);
}
