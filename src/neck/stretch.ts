import type { Fingered } from './fingering.ts';

/**
 * The notes, by their index, for which the hand stretches: a finger lies beyond its own fret, where each of the four has
 * one from the index finger's on (common practice), or the index finger reaches back.
 */
export function stretches(notes: readonly Fingered[]): number[] {
  return notes.flatMap(({ finger, fret, hand }, i) => {
    if (finger === 0) return [];
    const beyond = fret - hand - (finger - 1);
    return beyond > 0 || fret < hand ? [i] : [];
  });
}
