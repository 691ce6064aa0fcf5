import type { Sounding } from '../sound/index.ts';

/** The first and the last note of what alone is played. */
export type Stretch = readonly [first: number, last: number];

/** Two taps choose a stretch, whichever end comes first; a third lets it go. */
export function stretched(stretch: Stretch | null, index: number): Stretch | null {
  if (stretch === null) return [index, index];
  const [from, to] = stretch;
  return from === to && index !== from ? [Math.min(from, index), Math.max(from, index)] : null;
}

/** The beats from the first note of a stretch to the end of its last. */
export function beatsOf([first, last]: Stretch, { notes }: Sounding) {
  return { from: notes[first]!.at, to: notes[last]!.at + notes[last]!.length };
}
