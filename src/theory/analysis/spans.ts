import { isToneRuling, spanOf, type Ruling } from './ruling.ts';

/**
 * Which groups of notes there may be: from each note the least and the most notes that one has, none where the least are
 * more. Tables of groups have an entry for each of these alone: `base[from] + length`, `count` in all.
 */
export interface Spans {
  readonly least: Int32Array;
  readonly most: Int32Array;
  readonly base: Int32Array;
  readonly count: number;
  /** The most notes of all. */
  readonly longest: number;
}

/**
 * The groups that rulings leave of a number of notes: what is ruled to be one group is no part of another.
 *
 * @param longest notes of a group, but for one that is ruled
 */
export function spansOf(notes: number, longest: number, rulings: readonly Ruling[]): Spans {
  const ruled = rulings.map(spanOf).map(([from, to]) => to - from);
  const most = Int32Array.from({ length: notes }, (_, from) =>
    Math.min(Math.max(longest, ...ruled), notes - from),
  );
  const least = new Int32Array(notes).fill(1);
  for (const ruling of rulings.filter((one) => !isToneRuling(one) && 'span' in one))
    leaveWhole(spanOf(ruling), least, most);
  const base = new Int32Array(notes);
  let count = 0;
  for (let from = 0; from < notes; from++) {
    base[from] = count - least[from]!;
    count += Math.max(0, most[from]! - least[from]! + 1);
  }
  return { least, most, base, count, longest: most.reduce((a, b) => Math.max(a, b), 0) };
}

/** Lets no group have some of the notes of a span but the one that has them all and no others. */
function leaveWhole([start, end]: readonly [number, number], least: Int32Array, most: Int32Array) {
  for (let from = 0; from < end; from++) {
    const isWithin = from > start;
    const length = from < start ? start - from : end - from;
    most[from] = isWithin ? 0 : Math.min(most[from]!, length);
    if (from === start) least[from] = Math.max(least[from]!, length);
  }
}

/** Whether a group may have so many notes from one on. */
export function isSpan({ least, most }: Spans, from: number, length: number): boolean {
  return length >= least[from]! && length <= most[from]!;
}
