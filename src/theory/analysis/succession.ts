import type { Key } from '../key.ts';
import { semitonesAbove } from '../note.ts';
import { scaleNotes } from '../scale.ts';

/** How often chords stand on each degree, and the chances of each to come after each: a row for what was before. */
interface Habits {
  readonly frequency: readonly number[];
  readonly next: readonly (readonly number[])[];
}

/**
 * I→IV .44, I→V .23, V→I .54, IV→I .58 and ii→V .36 are T. de Clercq & D. Temperley, *A corpus analysis of rock
 * harmony*, Popular Music 30 (2011); the other figures are estimates in keeping with common practice. They only tip
 * what the notes leave open.
 */
const MAJOR: Habits = {
  frequency: [0.34, 0.09, 0.05, 0.2, 0.18, 0.09, 0.05],
  next: [
    [0, 0.09, 0.04, 0.44, 0.23, 0.13, 0.07],
    [0.22, 0, 0.07, 0.15, 0.36, 0.08, 0.12],
    [0.1, 0.14, 0, 0.3, 0.08, 0.34, 0.04],
    [0.58, 0.07, 0.03, 0, 0.22, 0.04, 0.06],
    [0.54, 0.04, 0.03, 0.2, 0, 0.16, 0.03],
    [0.14, 0.2, 0.06, 0.29, 0.25, 0, 0.06],
    [0.46, 0.03, 0.16, 0.19, 0.06, 0.1, 0],
  ],
};

/** Where the third or the seventh is minor, VII, VI and III are at home: estimates in keeping with common practice. */
const MINOR: Habits = {
  frequency: [0.34, 0.04, 0.1, 0.14, 0.15, 0.09, 0.14],
  next: [
    [0, 0.06, 0.09, 0.21, 0.25, 0.14, 0.25],
    [0.2, 0, 0.09, 0.08, 0.5, 0.03, 0.1],
    [0.16, 0.06, 0, 0.18, 0.1, 0.25, 0.25],
    [0.4, 0.05, 0.08, 0, 0.25, 0.04, 0.18],
    [0.6, 0.03, 0.06, 0.12, 0, 0.14, 0.05],
    [0.15, 0.09, 0.14, 0.14, 0.23, 0, 0.25],
    [0.4, 0.03, 0.22, 0.12, 0.05, 0.18, 0],
  ],
};

/** How unlikely chords on the degrees of a key are. */
export interface Succession {
  /** −ln of how often chords stand on a degree, 1 to 7. */
  readonly rarity: (degree: number) => number;
  /** −ln of the chance that a chord on one degree is followed by one on another; infinite for the same. */
  readonly surprise: (degree: number, next: number) => number;
}

const successionOf = ({ frequency, next }: Habits): Succession => ({
  rarity: (degree) => -Math.log(frequency[degree - 1]!),
  surprise: (degree, after) => -Math.log(next[degree - 1]![after - 1]!),
});
const major = successionOf(MAJOR);
const minor = successionOf(MINOR);

/** What is usual in a key. */
export function succession(key: Key): Succession {
  const above = scaleNotes(key).map((note) => semitonesAbove(key.tonic, note));
  return above.includes(3) || above.includes(10) ? minor : major;
}
