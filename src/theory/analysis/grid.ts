import { isWhole, type Bars, type Sounding } from './line.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** Where groups are expected to start. */
export interface Grid {
  /** Of choosing this grid. */
  readonly cost: number;
  /** Of a group that starts at a note. */
  readonly start: Float64Array;
  /** How many grid points lie at or before each note's onset. */
  readonly points: Int32Array;
}

/** What a grid does to the cost of a group of notes, `from` up to and not including `to`. */
export function gridCost(grid: Grid, from: number, to: number): number {
  return grid.start[from]! + W.inside * (grid.points[to - 1]! - grid.points[from]!);
}

/** The grids that a phrase may go by; where its bar line is unknown, those shifted by beats too. */
export function grids(line: readonly Sounding[], { bar, pickup }: Bars): Grid[] {
  const shifts = pickup ? [0] : Array.from({ length: bar }, (_, beat) => beat);
  return shifts.flatMap((shift) =>
    layouts(bar).map(({ cost, period, points }) =>
      gridOf(line, bar, shift, cost + (shift > 0 ? W.shifted : 0), period, points),
    ),
  );
}

interface Layout {
  readonly cost: number;
  /** In beats. */
  readonly period: number;
  /** Within the period, from 0. */
  readonly points: readonly number[];
}

function layouts(bar: number): Layout[] {
  const regular = (cost: number, period: number) => ({ cost, period, points: [0] });
  return [
    regular(W.grid.beat, 1),
    ...(bar % 2 === 0 ? [regular(W.grid.halfBar, bar / 2)] : []),
    regular(W.grid.bar, bar),
    regular(W.grid.twoBars, 2 * bar),
    ...(bar === 4 ? [{ cost: W.grid.uneven, period: 4, points: [0, 1.5, 3] }] : []),
  ];
}

function gridOf(
  line: readonly Sounding[],
  bar: number,
  shift: number,
  cost: number,
  period: number,
  points: readonly number[],
): Grid {
  const counts = line.map(({ at }) => pointsUpTo(at - shift, period, points));
  return {
    cost,
    points: Int32Array.from(counts),
    start: Float64Array.from(line, ({ at }) => {
      const time = at - shift;
      if (points.some((point) => isWhole((time - point) / period))) return W.start.onGrid;
      if (bar % 2 === 0 && isWhole(time / (bar / 2))) return W.start.halfBar;
      return isWhole(time) ? W.start.beat : W.start.elsewhere;
    }),
  };
}

/** How many points of a grid lie from 0 up to a time, itself included; below 0 the time lies before them. */
function pointsUpTo(time: number, period: number, points: readonly number[]): number {
  const periods = Math.floor(time / period + 1e-6);
  const rest = time - periods * period;
  return periods * points.length + points.filter((point) => point <= rest + 1e-6).length;
}
