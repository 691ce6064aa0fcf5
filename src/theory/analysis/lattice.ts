import type { Chord } from '../chord.ts';
import { DEGREES } from '../scale.ts';
import type { GroupEvenness } from './evenness.ts';
import type { Spans } from './spans.ts';
import type { Succession } from './succession.ts';
import * as W from './weights.ts';

/** What a melody's groups cost: `costs[chord][span]`, infinite where a group may not be read so. */
export interface Costs {
  readonly notes: number;
  readonly spans: Spans;
  readonly chords: readonly Chord[];
  readonly costs: readonly Float64Array[];
}

/**
 * All ways through a melody, before a grid is laid on it. What a path costs to one side of a group depends on the
 * group's span and its chord's degree alone; tables of both are indexed by `cell`.
 */
export interface Lattice extends Costs {
  readonly evenness: GroupEvenness;
  readonly transitions: Transitions;
  /** The cheapest chord on each degree for each group, and its cost. */
  readonly cheapest: Int32Array;
  readonly least: Float64Array;
}

export const cell = ({ base }: Spans, from: number, length: number, degree = 1) =>
  (base[from]! + length) * 7 + degree - 1;

/** A table of all groups on all degrees. */
export const table = ({ count }: Spans) => new Float64Array(count * 7);

/** Named one by one, that all lattices are alike to the machine. */
export function latticeOf(
  { notes, spans, chords, costs }: Costs,
  evenness: GroupEvenness,
  succession: Succession,
): Lattice {
  const least = table(spans).fill(Infinity);
  const cheapest = new Int32Array(least.length).fill(-1);
  for (const [i, { degree }] of chords.entries()) lower(costs[i]!, i, degree, least, cheapest);
  const transitions = transitionsOf(succession);
  return { notes, spans, chords, costs, evenness, transitions, cheapest, least };
}

/** Takes one more chord where it is cheaper than those of its degree before it. */
function lower(
  own: Float64Array,
  chord: number,
  degree: number,
  least: Float64Array,
  cheapest: Int32Array,
): void {
  for (let span = 0, at = degree - 1; span < own.length; span++, at += 7) {
    if (own[span]! >= least[at]!) continue;
    least[at] = own[span]!;
    cheapest[at] = chord;
  }
}

/** What it costs to go from chord to chord, by degrees less 1. */
interface Transitions {
  readonly own: Float64Array;
  /** `[before × 7 + next]` */
  readonly next: Float64Array;
  /** The least of these. */
  readonly soonest: number;
}

function transitionsOf({ rarity, surprise }: Succession): Transitions {
  const next = DEGREES.flatMap((before) =>
    DEGREES.map((degree) =>
      before === degree ? W.again : W.succession * surprise(before, degree),
    ),
  );
  return {
    own: Float64Array.from(DEGREES, (degree) => W.frequency * rarity(degree)),
    next: Float64Array.from(next),
    soonest: Math.min(...next),
  };
}

/** What the path's first and last degree cost. */
export const atStart = (degree: number) => (degree === 1 ? W.tonic.start : 0);
export const atEnd = (degree: number) => (degree === 1 ? W.tonic.end : 0);
