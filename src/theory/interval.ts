/**
 * Intervals by the line of fifths, F C G D …, on which every spelled note and interval has one place: a letter and an
 * octave are what is left of it (common practice).
 */
import { fifths, noteAt, type NoteName } from './note.ts';

/** Where a prime, second, … seventh stands on the line of fifths, perfect or major. */
const FIFTHS = [0, 2, 4, -1, 1, 3, 5];

const isPerfect = (number: number) => [1, 4, 5].includes(number);

/** How many fifths an interval within the octave spans: `3m` −3, `5P` 1, `4A` 6. */
function span(interval: string): number {
  const number = Number(interval[0]);
  const [quality = '', { length }] = [interval[1], interval.slice(1)];
  const by = { A: length, d: isPerfect(number) ? -length : -length - 1, m: -1 }[quality] ?? 0;
  return FIFTHS[number - 1]! + 7 * by;
}

/** The note an interval within the octave above another: `3m` above `C` is `Eb`. */
export function above(note: NoteName, interval: string): NoteName {
  return noteAt(fifths(note) + span(interval));
}

/** The interval from one note up to another, within the octave: `3m`, `4A`, `7d`; up to the same letter, lowered, `8d`. */
export function distance(from: NoteName, to: NoteName): string {
  const between = fifths(to) - fifths(from);
  const number = ((((between * 4) % 7) + 7) % 7) + 1;
  const off = (between - FIFTHS[number - 1]!) / 7;
  if (off === 0) return number + (isPerfect(number) ? 'P' : 'M');
  if (off > 0) return number + 'A'.repeat(off);
  const less = isPerfect(number) ? -off : -off - 1;
  return (number === 1 ? 8 : number) + (less === 0 ? 'm' : 'd'.repeat(less));
}
