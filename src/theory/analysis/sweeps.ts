import { gridCost, type Grid } from './grid.ts';
import { atEnd, atStart, cell, table, type Lattice } from './lattice.ts';
import { isSpan } from './spans.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** The cheapest ways from the start to every group, on one grid. */
export interface Forward {
  /** Of the cheapest through all. */
  readonly cost: number;
  /** The cheapest way to arrive at a group, what its degree costs included. */
  readonly entry: Float64Array;
  /** The same with the group itself. */
  readonly ended: Float64Array;
}

/** The tables of it, and the least of `ended` over the degrees of a group, by spans. */
type Swept = Pick<Forward, 'entry' | 'ended'> & { readonly soonest: Float64Array };

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
        const to = from + length;
        const cost = upTo[from]! + gridCost(grid, from, to) + each[spans.base[from]! + length]!;
        if (cost < upTo[to]!) upTo[to] = cost;
      }
    }
    return upTo[notes]! + grid.cost + W.tonic.start + W.tonic.end - ROUNDING;
  };
}

export function forward(lattice: Lattice, grid: Grid): Forward {
  const { notes, spans } = lattice;
  const [entry, ended] = [table(spans), table(spans)];
  const swept = { entry, ended, soonest: new Float64Array(spans.count) };
  const arrived = new Float64Array(7);
  let cost = Infinity;
  for (let from = 0; from < notes; from++) {
    if (from > 0) link(lattice, from, ended, arrived);
    else for (let degree = 0; degree < 7; degree++) arrived[degree] = atStart(degree + 1);
    enter(lattice, grid, from, arrived, swept);
    const most = spans.most[from]!;
    if (from + most === notes) cost = Math.min(cost, cheapestEnd(ended, spans.base[from]! + most));
  }
  return { cost: cost + grid.cost, entry, ended };
}

/** Goes through the groups that start at a note, at which each degree was arrived at. */
function enter(
  lattice: Lattice,
  grid: Grid,
  from: number,
  arrived: Float64Array,
  swept: Swept,
): void {
  const { spans, least, transitions } = lattice;
  const { entry, ended, soonest } = swept;
  const { own } = transitions;
  const entered = arrived.map((cost, degree) => cost + own[degree]!);
  const [shortest, most, base] = [spans.least[from]!, spans.most[from]!, spans.base[from]!];
  for (let length = shortest; length <= most; length++) {
    const lies = gridCost(grid, from, from + length);
    let low = Infinity;
    for (let degree = 0, at = (base + length) * 7; degree < 7; degree++, at++) {
      const cost = entered[degree]! + lies + least[at]!;
      entry[at] = entered[degree]!;
      ended[at] = cost;
      if (cost < low) low = cost;
    }
    soonest[base + length] = low;
    if (from > 0) enterEvenly(lattice, from, length, arrived, lies, swept);
  }
}

/** The cheapest way to the end by its last group. */
function cheapestEnd(ended: Float64Array, span: number): number {
  let cost = Infinity;
  for (let degree = 0; degree < 7; degree++)
    cost = Math.min(cost, ended[span * 7 + degree]! + atEnd(degree + 1));
  return cost;
}

/** The cheapest way to arrive at a note on each degree, whatever group ended there, into `arrived`. */
function link(
  { spans, transitions: { next } }: Lattice,
  at: number,
  ended: Float64Array,
  arrived: Float64Array,
): void {
  const before = new Float64Array(7).fill(Infinity);
  for (let length = Math.min(spans.longest, at); length > 0; length--) {
    if (!isSpan(spans, at - length, length)) continue;
    const first = cell(spans, at - length, length);
    for (let degree = 0; degree < 7; degree++)
      if (ended[first + degree]! < before[degree]!) before[degree] = ended[first + degree]!;
  }
  for (let degree = 0; degree < 7; degree++)
    arrived[degree] = goOn(before, 0, next, degree) + W.uneven;
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

/** The ways to a group from the one before it that is just as long, where they cost less than after any. */
function enterEvenly(
  { spans, evenness, transitions, least }: Lattice,
  from: number,
  length: number,
  arrived: Float64Array,
  lies: number,
  { entry, ended, soonest }: Swept,
): void {
  const span = spans.base[from]! + length;
  const earlier = evenness.before[span]!;
  if (earlier === 0 || !isSpan(spans, from - earlier, earlier)) return;
  const before = spans.base[from - earlier]! + earlier;
  const even = evenness.even[span]!;
  // At the least: most groups are far from it.
  const earliest = soonest[before]! + transitions.soonest + even;
  for (let degree = 0, at = span * 7; degree < 7; degree++, at++) {
    if (earliest >= arrived[degree]!) continue;
    const cost = goOn(ended, before * 7, transitions.next, degree) + even;
    if (cost >= arrived[degree]!) continue;
    entry[at] = cost + transitions.own[degree]!;
    ended[at] = entry[at]! + lies + least[at]!;
    if (ended[at]! < soonest[span]!) soonest[span] = ended[at]!;
  }
}

/** The cheapest way on from having ended a group. */
export function backward(lattice: Lattice, grid: Grid): Float64Array {
  const { notes, spans, evenness } = lattice;
  const after = table(spans);
  const onward = new Float64Array((spans.longest + 1) * 7).fill(Infinity);
  for (let degree = 0; degree < 7; degree++) onward[degree] = atEnd(degree + 1);
  const linked = new Float64Array(7);
  for (let from = notes; from > 0; from--) {
    const most = from < notes ? spans.most[from]! : 0;
    if (from < notes) onward.fill(Infinity);
    for (let length = from < notes ? spans.least[from]! : 1; length <= most; length++) {
      const span = spans.base[from]! + length;
      linkFrom(lattice, span, gridCost(grid, from, from + length), after, linked);
      const before = evenness.before[span]! * 7;
      const even = evenness.even[span]!;
      for (let degree = 0; degree < 7; degree++) {
        onward[degree] = Math.min(onward[degree]!, linked[degree]! + W.uneven);
        onward[before + degree] = Math.min(onward[before + degree]!, linked[degree]! + even);
      }
    }
    endAt(lattice, from, after, onward);
  }
  return after;
}

/** Writes what comes after each group that ends before a note. */
function endAt({ spans }: Lattice, end: number, after: Float64Array, onward: Float64Array): void {
  for (let length = Math.min(spans.longest, end); length > 0; length--) {
    if (!isSpan(spans, end - length, length)) continue;
    const first = cell(spans, end - length, length);
    for (let degree = 0; degree < 7; degree++)
      after[first + degree] = Math.min(onward[degree]!, onward[length * 7 + degree]!);
  }
}

/** The cheapest way on by a group, from each degree before it, into `linked`. */
function linkFrom(
  { transitions, least }: Lattice,
  span: number,
  lies: number,
  after: Float64Array,
  linked: Float64Array,
): void {
  linked.fill(Infinity);
  for (let next = 0; next < 7; next++) {
    const at = span * 7 + next;
    const onward = transitions.own[next]! + least[at]! + after[at]! + lies;
    for (let before = 0; before < 7; before++) {
      const cost = transitions.next[before * 7 + next]! + onward;
      if (cost < linked[before]!) linked[before] = cost;
    }
  }
}
