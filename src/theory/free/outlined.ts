import { SURE, type Analysis } from '../analysis/analysis.ts';
import type { Chord } from '../chord.ts';

/** An arpeggio of the key, and how often it was outlined. */
export interface Outlined {
  readonly chord: Chord;
  readonly times: number;
}

/** So many members of a chord, and such a share of the notes, outline it: a scale run up to the fifth has only .6. */
const MEMBERS = 3;
const SHARE = 2 / 3;

/**
 * Which arpeggios a free line outlined, by degree: every note of a phrase is read into some group, but whoever runs
 * through a scale outlines nothing. A group counts where its reading is sure, three members of the chord sound in it, and
 * they are two thirds of its notes at least (a judgement).
 */
export function outlined({ groups, notes }: Analysis): Outlined[] {
  const found = new Map<number, { chord: Chord; times: number }>();
  for (const { chord, from, to, confidence } of groups) {
    const members = notes.slice(from, to).flatMap(({ member }) => (member ? [member] : []));
    if (confidence < SURE || new Set(members).size < MEMBERS) continue;
    if (members.length < SHARE * (to - from)) continue;
    const before = found.get(chord.degree);
    found.set(chord.degree, {
      chord: before?.chord ?? chord,
      times: (before?.times ?? 0) + 1,
    });
  }
  return [...found.values()].toSorted((a, b) => a.chord.degree - b.chord.degree);
}
