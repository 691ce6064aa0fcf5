import type { Grid } from './grid.ts';
import { atEnd, atStart, cell, table, type Lattice } from './lattice.ts';
import { isSpan } from './spans.ts';
import * as W from './weights.ts';

/** The cheapest ways from the start to every group, on one grid. */
export interface Forward {
  /** Of the cheapest through all. */
  readonly cost: number;
  /** The cheapest way to arrive at a group, what its degree costs included. */
  readonly entry: Float64Array;
  /** The same with the group itself. */
  readonly ended: Float64Array;
}

/** So much less than it may cost is told, that no rounding makes it more. */
const ROUNDING = 1e-6;

/**
 * What the cheapest path costs at the least on a grid, soon reckoned: as if every group stood on the degree that costs it
 * least, after the one that it follows for least.
 */
export function leastOver(lattice: Lattice): (grid: Grid) => number {
  const { notes, spans, least, evenness, transitions } = lattice;
  const each = evenness.even.map((even, span) => {
    let low = Infinity;
    for (let degree = 0; degree < 7; degree++)
      low = Math.min(low, transitions.own[degree]! + least[span * 7 + degree]!);
    return low + transitions.soonest + Math.min(W.uneven, even);
  });
  return (grid) => {
    const upTo = new Float64Array(notes + 1).fill(Infinity);
    // The first group follows none.
    upTo[0] = -transitions.soonest - W.uneven;
    for (let from = 0; from < notes; from++) {
      const most = spans.most[from]!;
      for (let length = spans.least[from]!; length <= most; length++) {
        const span = spans.base[from]! + length;
        const cost = upTo[from]! + grid.lies[span]! + each[span]!;
        if (cost < upTo[from + length]!) upTo[from + length] = cost;
      }
    }
    return upTo[notes]! + grid.cost + W.tonic.start + W.tonic.end - ROUNDING;
  };
}

/** The tables of a sweep to the end. */
interface Sweep extends Pick<Forward, 'entry' | 'ended'> {
  /** The least of `ended` over the degrees of a group, by spans. */
  readonly soonest: Float64Array;
  /** The least of `ended` over the groups that end before a note, by its number and degrees. */
  readonly upTo: Float64Array;
  /** The cheapest way to arrive at the note in question, by degrees, whatever group ended there. */
  readonly arrived: Float64Array;
}

export function forward(lattice: Lattice, grid: Grid): Forward {
  const { notes, spans } = lattice;
  const sweep: Sweep = {
    entry: table(spans),
    ended: table(spans),
    soonest: new Float64Array(spans.count),
    upTo: new Float64Array((notes + 1) * 7).fill(Infinity),
    arrived: new Float64Array(7),
  };
  for (let from = 0; from < notes; from++) enter(lattice, grid, from, sweep);
  const { entry, ended, upTo } = sweep;
  let cost = Infinity;
  for (let degree = 0; degree < 7; degree++)
    cost = Math.min(cost, upTo[notes * 7 + degree]! + atEnd(degree + 1));
  return { cost: cost + grid.cost, entry, ended };
}

/** Goes through the groups that start at a note. */
function enter(lattice: Lattice, { lies }: Grid, from: number, sweep: Sweep): void {
  const { spans, least, transitions, evenness } = lattice;
  const { own, next, soonest: soonestOn } = transitions;
  const { entry, ended, soonest, upTo, arrived } = sweep;
  let latest = -Infinity;
  for (let degree = 0; degree < 7; degree++) {
    arrived[degree] =
      from > 0 ? goOn(upTo, from * 7, next, degree) + W.uneven : atStart(degree + 1);
    if (arrived[degree]! > latest) latest = arrived[degree]!;
  }
  const most = spans.most[from]!;
  for (let length = spans.least[from]!; length <= most; length++) {
    const span = spans.base[from]! + length;
    const earlier = evenness.before[span]!;
    const before =
      earlier > 0 && isSpan(spans, from - earlier, earlier)
        ? spans.base[from - earlier]! + earlier
        : -1;
    // At the least, after a group that is just as long: most groups are far from it.
    const evenly = before < 0 ? Infinity : soonest[before]! + soonestOn + evenness.even[span]!;
    let low = Infinity;
    for (
      let degree = 0, at = span * 7, to = (from + length) * 7;
      degree < 7;
      degree++, at++, to++
    ) {
      let way = arrived[degree]!;
      if (evenly < latest && evenly < way)
        way = Math.min(way, goOn(ended, before * 7, next, degree) + evenness.even[span]!);
      entry[at] = way + own[degree]!;
      const cost = entry[at]! + lies[span]! + least[at]!;
      ended[at] = cost;
      if (cost < low) low = cost;
      if (cost < upTo[to]!) upTo[to] = cost;
    }
    soonest[span] = low;
  }
}

/** The least that it costs to go on to a degree from one of seven that end at so much. */
function goOn(ended: Float64Array, first: number, next: Float64Array, degree: number): number {
  let best = Infinity;
  for (let before = 0; before < 7; before++) {
    const cost = ended[first + before]! + next[before * 7 + degree]!;
    if (cost < best) best = cost;
  }
  return best;
}

/** The cheapest ways on from where groups end at a note, by degrees; and by the length of a group, where the next is just as long. */
interface Onward {
  readonly any: Float64Array;
  readonly even: Float64Array;
  /** What it costs to go on by each group that starts there, what its degree costs included; the least of it by degrees, and by lengths. */
  readonly by: Float64Array;
  readonly byDegree: Float64Array;
  readonly byLength: Float64Array;
}

/** The cheapest way on from having ended a group. */
export function backward(lattice: Lattice, grid: Grid): Float64Array {
  const { notes, spans } = lattice;
  const after = table(spans);
  const lengths = spans.longest + 1;
  const onward: Onward = {
    any: Float64Array.from({ length: 7 }, (_, degree) => atEnd(degree + 1)),
    even: new Float64Array(lengths * 7).fill(Infinity),
    by: new Float64Array(lengths * 7),
    byDegree: new Float64Array(7),
    byLength: new Float64Array(lengths),
  };
  endAt(lattice, notes, after, onward);
  for (let from = notes - 1; from > 0; from--) {
    goOnFrom(lattice, grid, from, after, onward);
    goOnEvenly(lattice, from, onward);
    endAt(lattice, from, after, onward);
  }
  return after;
}

/** The ways on by the groups that start at a note, whatever ended there. */
function goOnFrom(
  { spans, transitions, least }: Lattice,
  { lies }: Grid,
  from: number,
  after: Float64Array,
  { any, by, byDegree, byLength }: Onward,
): void {
  const { own, next } = transitions;
  byDegree.fill(Infinity);
  const most = spans.most[from]!;
  for (let length = spans.least[from]!; length <= most; length++) {
    const span = spans.base[from]! + length;
    let low = Infinity;
    for (let degree = 0, at = span * 7; degree < 7; degree++, at++) {
      const cost = own[degree]! + least[at]! + after[at]! + lies[span]!;
      by[length * 7 + degree] = cost;
      if (cost < byDegree[degree]!) byDegree[degree] = cost;
      if (cost < low) low = cost;
    }
    byLength[length] = low;
  }
  for (let degree = 0; degree < 7; degree++)
    any[degree] = leave(degree, next, byDegree, 0) + W.uneven;
}

/** The ways on by those that start there and are just as long as what ended, where they cost less than by any. */
function goOnEvenly(
  { spans, evenness, transitions }: Lattice,
  from: number,
  { any, even, by, byLength }: Onward,
): void {
  even.fill(Infinity);
  const latest = any.reduce((a, b) => Math.max(a, b));
  const most = spans.most[from]!;
  for (let length = spans.least[from]!; length <= most; length++) {
    const span = spans.base[from]! + length;
    const before = evenness.before[span]!;
    const more = evenness.even[span]!;
    // At the least: most groups are far from it.
    const soonest = byLength[length]! + transitions.soonest + more;
    if (before === 0 || soonest >= latest) continue;
    for (let degree = 0, at = before * 7; degree < 7; degree++, at++) {
      if (soonest >= any[degree]!) continue;
      even[at] = Math.min(even[at]!, leave(degree, transitions.next, by, length * 7) + more);
    }
  }
}

/** The least that it costs to go on from a degree to one of seven, from which it costs so much. */
function leave(degree: number, next: Float64Array, onward: Float64Array, first: number): number {
  let best = Infinity;
  for (let after = 0; after < 7; after++) {
    const cost = next[degree * 7 + after]! + onward[first + after]!;
    if (cost < best) best = cost;
  }
  return best;
}

/** Writes what comes after each group that ends before a note. */
function endAt({ spans }: Lattice, end: number, after: Float64Array, { any, even }: Onward): void {
  for (let length = Math.min(spans.longest, end); length > 0; length--) {
    if (!isSpan(spans, end - length, length)) continue;
    const first = cell(spans, end - length, length);
    for (let degree = 0; degree < 7; degree++)
      after[first + degree] = Math.min(any[degree]!, even[length * 7 + degree]!);
  }
}
