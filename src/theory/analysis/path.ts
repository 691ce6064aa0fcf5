import type { Chord } from '../chord.ts';
import { gridCost, type Grid } from './grid.ts';
import type { Succession } from './succession.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** A line cut into groups, each read as a chord: notes `from` up to and not including `to`. */
export interface Step {
  readonly from: number;
  readonly to: number;
  /** Index among the chords. */
  readonly chord: number;
}

/** The cheapest way to read a line, and what every other group would have cost. */
export interface Path {
  readonly steps: readonly Step[];
  readonly cost: number;
  /** The cheapest reading of the whole line that has this group in it. */
  readonly costWith: (step: Step) => number;
  /** The cheapest reading in which the first note of this step is in a group of another span. */
  readonly costOtherwise: (step: Step) => number;
}

/** What a line's groups cost: `costs[chord][from][length − 1]`, infinite where a group may not be. */
export interface Costs {
  readonly notes: number;
  readonly longest: number;
  readonly chords: readonly Chord[];
  readonly costs: readonly (readonly Float64Array[])[];
}

/**
 * The optimum path through all ways to cut a line and to read its groups on the best of several grids (a semi-Markov
 * chain); null where no way is allowed.
 */
export function cheapestPath(
  costs: Costs,
  grids: readonly Grid[],
  succession: Succession,
): Path | null {
  const links = linksOf(succession);
  const runs = grids.map((grid) => ({ grid, ...forward(costs, grid, links) }));
  const best = runs.reduce((a, b) => (b.cost < a.cost ? b : a));
  if (best.cost === Infinity) return null;
  const after = backward(costs, best.grid, links);
  return {
    steps: trace(costs, best, links),
    cost: best.cost,
    costWith: ({ from, to, chord }) => costThrough(costs, best, after, from, to, chord),
    costOtherwise: (step) => costOtherwise(costs, best, after, step),
  };
}

type Run = Forward & { readonly grid: Grid };

function costThrough(
  { chords, costs }: Costs,
  { grid, entry }: Run,
  after: Float64Array,
  from: number,
  to: number,
  chord: number,
): number {
  return (
    grid.cost +
    gridCost(grid, from, to) +
    entry[from * chords.length + chord]! +
    costs[chord]![from]![to - from - 1]! +
    after[to * chords.length + chord]!
  );
}

/** Goes through all groups that hold the first note of a step, but for those of the same span. */
function costOtherwise(costs: Costs, run: Run, after: Float64Array, { from, to }: Step): number {
  const { notes, longest, chords } = costs;
  let best = Infinity;
  for (let start = Math.max(0, from + 1 - longest); start <= from; start++)
    for (let end = from + 1; end <= Math.min(notes, start + longest); end++) {
      if (start === from && end === to) continue;
      for (let chord = 0; chord < chords.length; chord++) {
        const cost = costThrough(costs, run, after, start, end, chord);
        if (cost < best) best = cost;
      }
    }
  return best;
}

/** What it costs to go from chord to chord, by degrees less 1. */
interface Links {
  readonly own: readonly number[];
  /** `[before][next]` */
  readonly after: readonly (readonly number[])[];
}

const DEGREES = [1, 2, 3, 4, 5, 6, 7];

function linksOf({ rarity, surprise }: Succession): Links {
  return {
    own: DEGREES.map((degree) => W.frequency * rarity(degree)),
    after: DEGREES.map((before) =>
      DEGREES.map((degree) =>
        before === degree ? W.again : W.succession * surprise(before, degree),
      ),
    ),
  };
}

interface Forward {
  readonly cost: number;
  /** The cheapest way to arrive at a note and start a chord there: `[note × chords + chord]`. */
  readonly entry: Float64Array;
  /** The cheapest way to have ended a chord before a note, and where that chord's group began. */
  readonly ended: Float64Array;
  readonly began: Int32Array;
}

function forward({ notes, longest, chords, costs }: Costs, grid: Grid, links: Links): Forward {
  const count = chords.length;
  const entry = new Float64Array((notes + 1) * count);
  const ended = new Float64Array((notes + 1) * count).fill(Infinity);
  const began = new Int32Array((notes + 1) * count).fill(-1);
  const added = new Float64Array(longest);
  for (let from = 0; from < notes; from++) {
    enter(chords, from, ended, entry, links);
    const lengths = Math.min(longest, notes - from);
    for (let k = 0; k < lengths; k++) added[k] = gridCost(grid, from, from + k + 1);
    for (let chord = 0; chord < count; chord++) {
      const arrived = entry[from * count + chord]!;
      const own = costs[chord]![from]!;
      for (let k = 0; k < lengths; k++) {
        const cost = arrived + own[k]! + added[k]!;
        const slot = (from + k + 1) * count + chord;
        if (cost < ended[slot]!) {
          ended[slot] = cost;
          began[slot] = from;
        }
      }
    }
  }
  const cost =
    grid.cost + Math.min(...chords.map((chord, i) => ended[notes * count + i]! + atEnd(chord)));
  return { cost, entry, ended, began };
}

const atEnd = (chord: Chord) => (chord.degree === 1 ? W.tonic.end : 0);
const atStart = (chord: Chord) => (chord.degree === 1 ? W.tonic.start : 0);

/** Fills in what it costs to start each chord at a note, its own frequency included. */
function enter(
  chords: readonly Chord[],
  at: number,
  ended: Float64Array,
  entry: Float64Array,
  links: Links,
): void {
  const count = chords.length;
  const byDegree = new Float64Array(7).fill(Infinity);
  for (let i = 0; i < count; i++) {
    const degree = chords[i]!.degree - 1;
    byDegree[degree] = Math.min(byDegree[degree]!, ended[at * count + i]!);
  }
  const linked = links.own.map((own, degree) => {
    let best = Infinity;
    for (let before = 0; before < 7; before++)
      best = Math.min(best, byDegree[before]! + links.after[before]![degree]!);
    return own + best;
  });
  for (let i = 0; i < count; i++) {
    const degree = chords[i]!.degree - 1;
    entry[at * count + i] = at === 0 ? links.own[degree]! + atStart(chords[i]!) : linked[degree]!;
  }
}

/** The cheapest way on from having ended a chord before a note: `[note × chords + chord]`. */
function backward(
  { notes, longest, chords, costs }: Costs,
  grid: Grid,
  links: Links,
): Float64Array {
  const count = chords.length;
  const after = new Float64Array((notes + 1) * count).fill(Infinity);
  chords.forEach((chord, i) => (after[notes * count + i] = atEnd(chord)));
  for (let from = notes - 1; from > 0; from--) {
    const byDegree = new Float64Array(7).fill(Infinity);
    const lengths = Math.min(longest, notes - from);
    for (let i = 0; i < count; i++) {
      const own = costs[i]![from]!;
      const degree = chords[i]!.degree - 1;
      for (let k = 0; k < lengths; k++) {
        const to = from + k + 1;
        const cost = own[k]! + gridCost(grid, from, to) + after[to * count + i]!;
        if (cost < byDegree[degree]!) byDegree[degree] = cost;
      }
    }
    for (let i = 0; i < count; i++) {
      const onward = links.after[chords[i]!.degree - 1]!;
      let best = Infinity;
      for (let next = 0; next < 7; next++)
        best = Math.min(best, onward[next]! + links.own[next]! + byDegree[next]!);
      after[from * count + i] = best;
    }
  }
  return after;
}

function trace({ notes, chords }: Costs, { ended, began }: Forward, links: Links): Step[] {
  const count = chords.length;
  const cheapest = (at: number, extra: (chord: Chord) => number) => {
    let best = 0;
    let cost = Infinity;
    chords.forEach((chord, i) => {
      const candidate = ended[at * count + i]! + extra(chord);
      if (candidate < cost) [best, cost] = [i, candidate];
    });
    return best;
  };
  const steps: Step[] = [];
  let to = notes;
  let chord = cheapest(notes, atEnd);
  while (to > 0) {
    const from = began[to * count + chord]!;
    steps.unshift({ from, to, chord });
    const { degree } = chords[chord]!;
    if (from > 0) chord = cheapest(from, (before) => links.after[before.degree - 1]![degree - 1]!);
    to = from;
  }
  return steps;
}
