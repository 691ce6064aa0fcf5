import { gridCost, type Grid } from './grid.ts';
import { atEnd, latticeOf, cell, type Costs, type Lattice } from './lattice.ts';
import type { GroupEvenness } from './evenness.ts';
import type { Succession } from './succession.ts';
import { backward, forward, type Forward } from './sweeps.ts';
import { ARPEGGIOS as W } from './weights.ts';

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
  /** The cheapest reading of the whole melody that has this group in it. */
  readonly costWith: (segment: Segment) => number;
  /** The cheapest reading in which the first note of this segment is in a group of another span. */
  readonly costOtherwise: (segment: Segment) => number;
}

/**
 * The optimum path through all ways to cut a melody and to read its groups on the best of several grids (a semi-Markov
 * chain over the degree and the length of the group before); null where no way is allowed.
 */
export function cheapestPath(
  costs: Costs,
  grids: readonly Grid[],
  evenness: GroupEvenness,
  succession: Succession,
): Path | null {
  const lattice = latticeOf(costs, evenness, succession);
  const runs = grids.map((grid) => ({ grid, ...forward(lattice, grid) }));
  const best = runs.reduce((a, b) => (b.cost < a.cost ? b : a));
  if (best.cost === Infinity) return null;
  const near = runs
    .filter(({ cost }) => cost - best.cost < NEAR)
    .map((run) => ({ ...run, after: backward(lattice, run.grid) }));
  const least = (costOn: (run: WholeRun) => number) => Math.min(...near.map(costOn));
  return {
    segments: trace(lattice, best),
    cost: best.cost,
    costWith: (segment) => least((run) => costThrough(lattice, run, segment)),
    costOtherwise: (segment) => least((run) => costOtherwise(lattice, run, segment)),
  };
}

/** A grid on which the cheapest path costs so much more has no say in how sure a reading is. */
const NEAR = 8;

type Run = Forward & { readonly grid: Grid };
type WholeRun = Run & { readonly after: Float64Array };

function trace(lattice: Lattice, { ended }: Forward): Segment[] {
  const { notes, longest, cheapest, transitions, evenness } = lattice;
  const segments: Segment[] = [];
  let next: { from: number; length: number; degree: number } | null = null;
  for (let to = notes; to > 0; to = next.from) {
    let best = Infinity;
    let chosen = { from: to - 1, length: 1, degree: 1 };
    for (let length = 1; length <= Math.min(longest, to); length++)
      for (let degree = 1; degree <= 7; degree++) {
        const from = to - length;
        const cost = ended[cell(lattice, from, length, degree)]! + onwardCost(length, degree, next);
        if (cost < best) [best, chosen] = [cost, { from, length, degree }];
      }
    const { from, length, degree } = chosen;
    segments.unshift({ from, to, chord: cheapest[cell(lattice, from, length, degree)]! });
    next = chosen;
  }
  return segments;

  function onwardCost(length: number, degree: number, on: typeof next): number {
    if (!on) return atEnd(degree);
    const span = on.from * longest + on.length - 1;
    const even = evenness.before[span] === length;
    return (
      transitions.next[(degree - 1) * 7 + on.degree - 1]! + (even ? evenness.even[span]! : W.uneven)
    );
  }
}

function costThrough(
  lattice: Lattice,
  { grid, entry, after }: WholeRun,
  { from, to, chord }: Segment,
): number {
  const at = cell(lattice, from, to - from, lattice.chords[chord]!.degree);
  return (
    grid.cost +
    gridCost(grid, from, to) +
    entry[at]! +
    lattice.costs[chord]![from]![to - from - 1]! +
    after[at]!
  );
}

/** Goes through all groups that hold the first note of a segment, but for those of the same span. */
function costOtherwise(
  lattice: Lattice,
  { grid, entry, after }: WholeRun,
  { from, to }: Segment,
): number {
  const { notes, longest } = lattice;
  let best = Infinity;
  for (let start = Math.max(0, from + 1 - longest); start <= from; start++)
    for (let end = from + 1; end <= Math.min(notes, start + longest); end++) {
      if (start === from && end === to) continue;
      const lies = gridCost(grid, start, end);
      for (let degree = 1; degree <= 7; degree++) {
        const at = cell(lattice, start, end - start, degree);
        best = Math.min(best, lies + entry[at]! + lattice.least[at]! + after[at]!);
      }
    }
  return best + grid.cost;
}
