import type { Incremental } from '../incremental.ts';
import type { Grid } from './grid.ts';
import { atEnd, latticeOf, cell, type Costs, type Lattice } from './lattice.ts';
import type { GroupEvenness } from './evenness.ts';
import { isSpan, type Spans } from './spans.ts';
import type { Succession } from './succession.ts';
import { backward, forward, leastOver, type Forward } from './sweeps.ts';
import * as W from './weights.ts';

/** A melody cut into groups, each read as a chord: notes `from` up to and not including `to`. */
export interface Segment {
  readonly from: number;
  readonly to: number;
  /** Index among the chords. */
  readonly chord: number;
}

/** The cheapest way to read a melody, and what every other group would have cost. */
export interface Path {
  readonly segments: readonly Segment[];
  readonly cost: number;
  /** The cheapest readings of the whole melody that have these notes as a group, by the chord that it is read as. */
  readonly costsWith: (from: number, to: number) => Float64Array;
  /** How likely it is, against the cheapest path, that the first note of this segment is in a group of another span. */
  readonly otherwise: (segment: Segment) => number;
  /** The other groups of three notes and more that hold some of this segment, each in its cheapest reading: so many, the cheapest first. */
  readonly regroupings: (segment: Segment, most: number) => Reading[];
}

/** A group in the cheapest reading of the whole melody that has it, and what that costs. */
interface Reading extends Segment {
  readonly cost: number;
}

/**
 * The optimum path through all ways to cut a melody and to read its groups on the best of several grids (a semi-Markov
 * chain over the degree and the length of the group before); null where no way is allowed.
 */
export function* cheapestPath(
  costs: Costs,
  grids: readonly Grid[],
  evenness: GroupEvenness,
  succession: Succession,
): Incremental<Path | null> {
  const lattice = latticeOf(costs, evenness, succession);
  const runs = yield* runsOver(lattice, grids);
  const best = runs.reduce((a, b) => (b.cost < a.cost ? b : a));
  if (best.cost === Infinity) return null;
  const near: WholeRun[] = [];
  const through = throughNone(costs.spans);
  for (const run of runs) {
    const whole = { ...run, after: backward(lattice, run.grid) };
    near.push(whole);
    goThrough(lattice, whole, through);
    yield;
  }
  return {
    segments: trace(lattice, best),
    cost: best.cost,
    costsWith: (from, to) => costsThrough(lattice, near, from, to),
    otherwise: (segment) => otherwise(costs, through, segment, best.cost),
    regroupings: (segment, most) => regroupings(costs, through, segment, most),
  };
}

/** A grid on which the cheapest path costs so much more has no say in how sure a reading is. */
const NEAR = 8;

/** A grid that was gone over from the start. */
type Run = Forward & { readonly grid: Grid };
type WholeRun = Run & { readonly after: Float64Array };

/** The runs over the grids that have a say, in their order. */
function* runsOver(lattice: Lattice, grids: readonly Grid[]): Incremental<Run[]> {
  const least = leastOver(lattice);
  const bounded = grids.map((grid) => ({ grid, bound: least(grid) }));
  const runs: Run[] = [];
  let best = Infinity;
  for (const { grid, bound } of bounded.toSorted((a, b) => a.bound - b.bound)) {
    if (bound - best >= NEAR) break;
    const run = { grid, ...forward(lattice, grid) };
    best = Math.min(best, run.cost);
    runs.push(run);
    yield;
  }
  return runs
    .filter(({ cost }) => !(cost - best >= NEAR))
    .toSorted((a, b) => grids.indexOf(a.grid) - grids.indexOf(b.grid));
}

function trace(lattice: Lattice, { ended }: Run): Segment[] {
  const { notes, spans, cheapest, transitions, evenness } = lattice;
  const segments: Segment[] = [];
  let next: { from: number; length: number; degree: number } | null = null;
  for (let to = notes; to > 0; to = next.from) {
    let best = Infinity;
    let chosen = { from: to - 1, length: 1, degree: 1 };
    for (let length = 1; length <= Math.min(spans.longest, to); length++) {
      const from = to - length;
      if (!isSpan(spans, from, length)) continue;
      for (let degree = 1; degree <= 7; degree++) {
        const cost = ended[cell(spans, from, length, degree)]! + onwardCost(length, degree, next);
        if (cost < best) [best, chosen] = [cost, { from, length, degree }];
      }
    }
    const { from, length, degree } = chosen;
    segments.unshift({ from, to, chord: cheapest[cell(spans, from, length, degree)]! });
    next = chosen;
  }
  return segments;

  function onwardCost(length: number, degree: number, on: typeof next): number {
    if (!on) return atEnd(degree);
    const span = spans.base[on.from]! + on.length;
    const even = evenness.before[span] === length;
    return (
      transitions.next[(degree - 1) * 7 + on.degree - 1]! + (even ? evenness.even[span]! : W.uneven)
    );
  }
}

function costsThrough(
  { spans, chords, costs }: Lattice,
  runs: readonly WholeRun[],
  from: number,
  to: number,
): Float64Array {
  const through = new Float64Array(chords.length).fill(Infinity);
  if (!isSpan(spans, from, to - from)) return through;
  const span = spans.base[from]! + to - from;
  for (const { grid, entry, after } of runs) {
    const lies = grid.cost + grid.lies[span]!;
    for (let chord = 0; chord < chords.length; chord++) {
      const at = span * 7 + chords[chord]!.degree - 1;
      const cost = lies + entry[at]! + costs[chord]![span]! + after[at]!;
      if (cost < through[chord]!) through[chord] = cost;
    }
  }
  return through;
}

/** The cheapest reading of the whole melody with each group in it, by spans: what it costs, and the group's chord. */
interface Through {
  readonly cost: Float64Array;
  readonly chord: Int32Array;
}

function throughNone({ count }: Spans): Through {
  return { cost: new Float64Array(count).fill(Infinity), chord: new Int32Array(count).fill(-1) };
}

/** Goes through each group on one more grid. */
function goThrough(
  { cheapest }: Lattice,
  { grid, ended, after }: WholeRun,
  { cost, chord }: Through,
) {
  for (let span = 0, at = 0; span < cost.length; span++)
    for (const next = at + 7; at < next; at++) {
      const through = ended[at]! + after[at]! + grid.cost;
      if (through >= cost[span]!) continue;
      cost[span] = through;
      chord[span] = cheapest[at]!;
    }
}

/** The likelihoods of all groups that hold the first note of a segment, but for its own span, each in its cheapest reading. */
function otherwise(
  { notes, spans }: Costs,
  through: Through,
  { from, to }: Segment,
  best: number,
): number {
  let sum = 0;
  for (let start = Math.max(0, from + 1 - spans.longest); start <= from; start++)
    for (let end = from + 1; end <= Math.min(notes, start + spans.longest); end++)
      if (!(start === from && end === to) && isSpan(spans, start, end - start))
        sum += likelihood(through.cost[spans.base[start]! + end - start]! - best);
  return sum;
}

/** How likely a reading is that costs so much more than the cheapest, which has 1. */
export const likelihood = (more: number) => Math.exp(-more / W.temperature);

/** Fewer notes are worth no other cut. */
const FEWEST = 3;

/** So many of the cheapest groups that hold some notes of a segment, but for its own span. */
function regroupings(
  { notes, spans }: Costs,
  through: Through,
  { from, to }: Segment,
  most: number,
): Reading[] {
  const found: Reading[] = [];
  for (let start = Math.max(0, from + 1 - spans.longest); start < to; start++) {
    const last = Math.min(notes, start + spans.longest);
    for (let end = Math.max(start + FEWEST, from + 1); end <= last; end++) {
      if ((start === from && end === to) || !isSpan(spans, start, end - start)) continue;
      const span = spans.base[start]! + end - start;
      const cost = through.cost[span]!;
      if (cost >= (found[most - 1]?.cost ?? Infinity)) continue;
      const place = found.findIndex((other) => cost < other.cost);
      const reading = { from: start, to: end, chord: through.chord[span]!, cost };
      found.splice(place < 0 ? found.length : place, 0, reading);
      if (found.length > most) found.pop();
    }
  }
  return found;
}
