import { gridCost, type Grid } from './grid.ts';
import { atEnd, atStart, cell, table, type Lattice } from './lattice.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** The cheapest ways from the start to every group, on one grid. */
export interface Forward {
  readonly cost: number;
  /** The cheapest way to arrive at a group, what its degree costs included. */
  readonly entry: Float64Array;
  /** The same with the group itself. */
  readonly ended: Float64Array;
}

export function forward(lattice: Lattice, grid: Grid): Forward {
  const { notes, longest, transitions, least, evenness } = lattice;
  const entry = table(lattice);
  const ended = table(lattice);
  let cost = Infinity;
  for (let from = 0; from < notes; from++) {
    const linked = linkedTo(lattice, from, ended);
    for (let length = 1; length <= Math.min(longest, notes - from); length++) {
      const to = from + length;
      const lies = gridCost(grid, from, to);
      const span = from * longest + length - 1;
      const before = evenness.before[span]! * 7;
      const even = evenness.even[span]!;
      for (let degree = 0; degree < 7; degree++) {
        const at = span * 7 + degree;
        const arrived =
          from === 0
            ? atStart(degree + 1)
            : Math.min(linked[degree]! + W.uneven, linked[before + degree]! + even);
        entry[at] = arrived + transitions.own[degree]!;
        ended[at] = entry[at]! + lies + least[at]!;
        if (to === notes) cost = Math.min(cost, ended[at]! + atEnd(degree + 1));
      }
    }
  }
  return { cost: cost + grid.cost, entry, ended };
}

/**
 * The cheapest way to go on to each degree at a note, by how many notes the group before has, and in the first place
 * whatever it has: `[length × 7 + degree − 1]`.
 */
function linkedTo(
  { longest, transitions: { next } }: Lattice,
  at: number,
  ended: Float64Array,
): Float64Array {
  const linked = new Float64Array((longest + 1) * 7).fill(Infinity);
  for (let length = 1; length <= Math.min(longest, at); length++) {
    const first = ((at - length) * longest + length - 1) * 7;
    for (let degree = 0; degree < 7; degree++) {
      let best = Infinity;
      for (let before = 0; before < 7; before++) {
        const cost = ended[first + before]! + next[before * 7 + degree]!;
        if (cost < best) best = cost;
      }
      linked[length * 7 + degree] = best;
      if (best < linked[degree]!) linked[degree] = best;
    }
  }
  return linked;
}

/** The cheapest way on from having ended a group. */
export function backward(lattice: Lattice, grid: Grid): Float64Array {
  const { notes, longest, evenness } = lattice;
  const after = table(lattice);
  for (let length = 1; length <= Math.min(longest, notes); length++)
    for (let degree = 1; degree <= 7; degree++)
      after[cell(lattice, notes - length, length, degree)] = atEnd(degree);
  const linked = new Float64Array(7);
  for (let from = notes - 1; from > 0; from--) {
    const onward = new Float64Array((longest + 1) * 7).fill(Infinity);
    for (let length = 1; length <= Math.min(longest, notes - from); length++) {
      const span = from * longest + length - 1;
      linkFrom(lattice, span, gridCost(grid, from, from + length), after, linked);
      const before = evenness.before[span]!;
      for (let degree = 0; degree < 7; degree++) {
        const uneven = linked[degree]! + W.uneven;
        onward[degree] = Math.min(onward[degree]!, uneven);
        const even = linked[degree]! + evenness.even[span]!;
        onward[before * 7 + degree] = Math.min(onward[before * 7 + degree]!, even);
      }
    }
    for (let length = 1; length <= Math.min(longest, from); length++)
      for (let degree = 0; degree < 7; degree++)
        after[cell(lattice, from - length, length) + degree] = Math.min(
          onward[degree]!,
          onward[length * 7 + degree]!,
        );
  }
  return after;
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
