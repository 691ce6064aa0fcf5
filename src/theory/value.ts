import { beats, compare, type Beats, times } from './rhythm.ts';

/** A note as it is written: its value by flags, 0 for a quarter; a half has −1, a whole −2. */
interface NoteValue {
  readonly flags: -2 | -1 | 0 | 1 | 2 | 3;
  /** Half as long again. */
  readonly dotted: boolean;
  /** Three in the time of two. */
  readonly triplet: boolean;
}

const PLAIN: readonly (readonly [NoteValue['flags'], Beats, string])[] = [
  [-2, beats(4), 'whole'],
  [-1, beats(2), 'half'],
  [0, beats(1), 'quarter'],
  [1, beats(1, 2), 'eighth'],
  [2, beats(1, 4), 'sixteenth'],
  [3, beats(1, 8), 'thirty-second'],
];

const DOT = beats(3, 2);
const THREE = beats(2, 3);

/** The single note value that lasts so long, or null where there is none. */
export function noteValue(length: Beats): NoteValue | null {
  for (const [flags, plain] of PLAIN) {
    if (compare(plain, length) === 0) return { flags, dotted: false, triplet: false };
    if (compare(times(plain, DOT), length) === 0) return { flags, dotted: true, triplet: false };
    if (compare(times(plain, THREE), length) === 0) return { flags, dotted: false, triplet: true };
  }
  return null;
}

/** `eighth`, `dotted quarter`, `triplet eighth`; `5/6 beats` where no single note lasts so long. */
export function valueWords(length: Beats): string {
  const value = noteValue(length);
  if (!value) return `${length.d === 1 ? length.n : `${length.n}/${length.d}`} beats`;
  const name = PLAIN.find(([flags]) => flags === value.flags)![2];
  return `${value.dotted ? 'dotted ' : ''}${value.triplet ? 'triplet ' : ''}${name}`;
}

/** Half as long again, or back: a dotted length without its dot, any other with one. */
export function dotted(length: Beats, on: boolean): Beats {
  return times(length, on ? DOT : beats(2, 3));
}
