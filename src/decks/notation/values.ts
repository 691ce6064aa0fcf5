/**
 * Lengths as notes are written: how a stretch of time becomes note values, tied where one does not do. A time that is no
 * whole number of halves, quarters, eighths, … is written as a tuplet: `actual` of them in the time of `normal`.
 */
import { add, beats, compare, subtract, toNumber } from '../../theory/rhythm.ts';
import type { Beats } from '../../theory/rhythm.ts';

/** The names of note values, each half the one before it; the third is one beat. */
const VALUES = ['whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th', '128th'] as const;

const QUARTER = 2;

/** One written note or rest. */
export interface WrittenValue {
  readonly at: Beats;
  readonly length: Beats;
  readonly value: (typeof VALUES)[number];
  readonly dotted: boolean;
  /** Three in the time of two; null where the value is as it is. */
  readonly tuplet: { readonly actual: number; readonly normal: number } | null;
}

/**
 * The written notes that fill the time from one beat to another, none over a bar line.
 *
 * @throws RangeError where the time is too fine for any note value
 */
export function writtenFrom(from: Beats, to: Beats, beatsPerBar: number): WrittenValue[] {
  const written: WrittenValue[] = [];
  let at = from;
  while (compare(at, to) < 0) {
    const bar = beats((Math.floor(toNumber(at) / beatsPerBar) + 1) * beatsPerBar);
    const end = compare(bar, to) < 0 ? bar : to;
    written.push(largest(at, end));
    at = add(at, written.at(-1)!.length);
  }
  return written;
}

/** The largest single value that begins at one time and ends by another. */
function largest(at: Beats, end: Beats): WrittenValue {
  const atOdd = oddPart(at.d);
  // A tuplet is written beat by beat: inside a beat that is divided so, on to its end; into one, from its start.
  const beat = beats(Math.floor(toNumber(at)) + 1);
  const stop = atOdd > 1 && compare(beat, end) < 0 ? beat : end;
  const endOdd = oddPart(stop.d);
  const whole = beats(Math.floor(toNumber(stop)));
  if (atOdd === 1 && endOdd > 1 && compare(at, whole) < 0) return largest(at, whole);

  const actual = leastCommon(atOdd, endOdd);
  const normal = 2 ** Math.floor(Math.log2(actual));
  const room = subtract(stop, at);
  for (const [i, value] of VALUES.entries()) {
    for (const dotted of [true, false]) {
      const plain = beats(2 ** QUARTER * (dotted ? 3 : 2), 2 ** (i + 1));
      const length = beats(plain.n * normal, plain.d * actual);
      if (compare(length, room) > 0) continue;
      return { at, length, value, dotted, tuplet: actual > 1 ? { actual, normal } : null };
    }
  }
  throw new RangeError('The beats of this phrase are too fine to be written as notes.');
}

function oddPart(n: number): number {
  return n % 2 === 0 ? oddPart(n / 2) : n;
}

function leastCommon(a: number, b: number): number {
  return a * beats(a, b).d;
}
