import { isWhole, runOf, type Metre, type MelodyNote } from './melody.ts';
import type { Spans } from './spans.ts';
import * as W from './weights.ts';

/** Where groups are expected to start. */
export interface Grid {
  /** Of choosing this grid. */
  readonly cost: number;
  /** What it does to the cost of each group, by spans. */
  readonly lies: Float64Array;
}

/** The grids that a phrase may go by; where its bar line is unknown, those shifted by beats too. */
export function grids(melody: readonly MelodyNote[], spans: Spans, { bar, pickup }: Metre): Grid[] {
  const shifts = pickup ? [0] : Array.from({ length: bar }, (_, beat) => beat);
  const note = usualLength(melody);
  return shifts.flatMap((shift) =>
    layouts(bar, note)
      .filter(({ period }) => shift === 0 || shift < period)
      .map((layout) => gridOf(melody, spans, bar, shift, layout)),
  );
}

/** How long most notes of a melody are, in beats. */
function usualLength(melody: readonly MelodyNote[]): number {
  const lengths = melody.map(({ length }) => length).toSorted((a, b) => a - b);
  return lengths[lengths.length >> 1]!;
}

interface Layout {
  readonly cost: number;
  /** In beats. */
  readonly period: number;
  /** Within the period, from 0. */
  readonly points: readonly number[];
  /** Whether groups of one period and of several stand side by side, so that a run of thirds may go over its points. */
  readonly loose?: boolean;
}

function layouts(bar: number, note: number): Layout[] {
  const { beat, halfBar, twoBars, uneven, mixed, counted } = W.grid;
  const all: Layout[] = [
    { cost: W.grid.bar, period: bar, points: [0] },
    { cost: halfBar, period: bar / 2, points: [0] },
    { cost: beat, period: 1, points: [0] },
    { cost: twoBars, period: 2 * bar, points: [0] },
    ...(UNEVEN[bar] ?? []).map((points) => ({ cost: uneven, period: bar, points })),
    { cost: mixed, period: 2 * bar, points: [0, bar, 1.5 * bar] },
    ...[3, 4, 6].map((notes) => ({ cost: counted, period: notes * note, points: [0] })),
  ];
  const strict = all.filter(
    ({ period, points }, i) =>
      points.length > 1 || all.findIndex((other) => Math.abs(other.period - period) < 1e-6) === i,
  );
  const loose = [...new Set([1, bar / 2, bar])].map((period) => ({
    cost: W.loose.cost,
    period,
    points: [0],
    loose: true,
  }));
  return [...strict, ...loose];
}

/** How bars are divided unevenly, by their beats: 3+3+2 quavers, 3+1, 2+1+1, 1+1+2; 2+1, 1+2. */
const UNEVEN: Readonly<Record<number, readonly (readonly number[])[]>> = {
  3: [
    [0, 2],
    [0, 1],
  ],
  4: [
    [0, 1.5, 3],
    [0, 3],
    [0, 2, 3],
    [0, 1, 2],
  ],
};

function gridOf(
  melody: readonly MelodyNote[],
  spans: Spans,
  bar: number,
  shift: number,
  { cost, period, points, loose = false }: Layout,
): Grid {
  const times = melody.map(({ at, upbeat }) => at + upbeat - shift);
  const inside = insideCosts(
    melody,
    times.map((time) => pointsUpTo(time, period, points)),
    loose,
  );
  const start = times.map((time) => {
    if (points.some((point) => isWhole((time - point) / period))) return W.start.onGrid;
    if (bar % 2 === 0 && isWhole(time / (bar / 2))) return W.start.halfBar;
    return isWhole(time) ? W.start.beat : W.start.elsewhere;
  });
  const bars = times.map((time) => (loose ? time / bar : 0));
  return {
    cost: cost + (shift > 0 ? W.shifted : 0),
    lies: liesOf(spans, start, inside, bars, 2 / bar + 1e-6),
  };
}

/**
 * What a grid does to the cost of each group. A phrase's last note may close its arpeggio on a point of the grid as well as
 * before it.
 *
 * @param start of a group that starts at a note
 * @param inside what the points of the grid at or before each note's onset cost together where they lie inside a group
 * @param bars of a loose grid, on which groups last as they will: when each note begins, in bars; of any other 0
 * @param twoBeats in bars: what lasts longer on a loose grid mostly lasts whole bars. Of 1,276 groups written in bars of four
 *   26 have three beats.
 */
function liesOf(
  spans: Spans,
  start: readonly number[],
  inside: Float64Array,
  bars: readonly number[],
  twoBeats: number,
): Float64Array {
  const lies = new Float64Array(spans.count);
  for (let from = 0; from < start.length; from++) {
    const most = spans.most[from]!;
    for (let length = spans.least[from]!; length <= most; length++) {
      const to = from + length;
      const isLast = to === start.length;
      const last = isLast ? Math.max(from, to - 2) : to - 1;
      const lasts = isLast ? 0 : bars[to]! - bars[from]!;
      const odd = lasts > twoBeats && !isWhole(lasts) ? W.loose.odd : 0;
      lies[spans.base[from]! + length] = start[from]! + inside[last]! - inside[from]! + odd;
    }
  }
  return lies;
}

/** What each point inside a group costs, added up; on a loose grid one that a run of thirds goes over costs less. */
function insideCosts(
  melody: readonly MelodyNote[],
  pointsBefore: readonly number[],
  loose: boolean,
): Float64Array {
  const costs = new Float64Array(melody.length);
  for (let i = 1; i < melody.length; i++) {
    const cost = loose ? W.loose.inside * runOf(melody[i]!).inside : W.inside;
    costs[i] = costs[i - 1]! + cost * (pointsBefore[i]! - pointsBefore[i - 1]!);
  }
  return costs;
}

/** How many points of a grid lie from 0 up to a time, itself included; below 0 the time lies before them. */
function pointsUpTo(time: number, period: number, points: readonly number[]): number {
  const periods = Math.floor(time / period + 1e-6);
  const rest = time - periods * period;
  return periods * points.length + points.filter((point) => point <= rest + 1e-6).length;
}
