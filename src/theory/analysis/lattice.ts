import type { Chord } from '../chord.ts';
import { DEGREES } from '../scale.ts';
import type { GroupEvenness } from './evenness.ts';
import type { Succession } from './succession.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** What a melody's groups cost: `costs[chord][from][length − 1]`, infinite where a group may not be. */
export interface Costs {
  readonly notes: number;
  readonly longest: number;
  readonly chords: readonly Chord[];
  readonly costs: readonly (readonly Float64Array[])[];
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

export const cell = ({ longest }: Costs, from: number, length: number, degree = 1) =>
  (from * longest + length - 1) * 7 + degree - 1;

export const table = ({ notes, longest }: Costs) =>
  new Float64Array(notes * longest * 7).fill(Infinity);

function cheapestByDegree(costs: Costs): Pick<Lattice, 'cheapest' | 'least'> {
  const least = table(costs);
  const cheapest = new Int32Array(least.length).fill(-1);
  costs.chords.forEach(({ degree }, chord) =>
    costs.costs[chord]!.forEach((own, from) => {
      for (let length = 1; length <= own.length; length++) {
        const at = cell(costs, from, length, degree);
        if (own[length - 1]! >= least[at]!) continue;
        least[at] = own[length - 1]!;
        cheapest[at] = chord;
      }
    }),
  );
  return { cheapest, least };
}

export function latticeOf(costs: Costs, evenness: GroupEvenness, succession: Succession): Lattice {
  return { ...costs, evenness, transitions: transitionsOf(succession), ...cheapestByDegree(costs) };
}

/** What it costs to go from chord to chord, by degrees less 1. */
interface Transitions {
  readonly own: Float64Array;
  /** `[before × 7 + next]` */
  readonly next: Float64Array;
}

function transitionsOf({ rarity, surprise }: Succession): Transitions {
  return {
    own: Float64Array.from(DEGREES, (degree) => W.frequency * rarity(degree)),
    next: Float64Array.from(
      DEGREES.flatMap((before) =>
        DEGREES.map((degree) =>
          before === degree ? W.again : W.succession * surprise(before, degree),
        ),
      ),
    ),
  };
}

/** What the path's first and last degree cost. */
export const atStart = (degree: number) => (degree === 1 ? W.tonic.start : 0);
export const atEnd = (degree: number) => (degree === 1 ? W.tonic.end : 0);
