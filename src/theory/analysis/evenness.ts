import type { MelodyNote } from './melody.ts';
import { isSpan, type Spans } from './spans.ts';
import * as W from './weights.ts';

/**
 * How evenly groups follow one another. Harmonic rhythm in such phrases is mostly even, and one group's figure is often
 * the next one's on other steps of the scale (F. Lerdahl & R. Jackendoff, *A Generative Theory of Tonal Music*, 1983:
 * grouping preference rules 5, symmetry, and 6, parallelism).
 */
export interface GroupEvenness {
  /** How many notes a group before it has that lasts as long, by spans; 0 where there is none. */
  readonly before: Int32Array;
  /**
   * What following such a group costs, in the same order: the less, the more moves of its figure are that one's too, by
   * steps of the scale; infinite where there is none.
   */
  readonly even: Float64Array;
}

/** What is the same for groups of any length. */
interface Times {
  readonly melody: readonly MelodyNote[];
  readonly spans: Spans;
  /** Of each note when it begins and how long it lasts, and whether a run goes on through it. */
  readonly at: Float64Array;
  readonly lasts: Float64Array;
  readonly goesOn: readonly boolean[];
  /** The note that a group may begin with at a time. */
  readonly startingAt: ReadonlyMap<number, number>;
}

/** How evenly every group of a melody would follow the one before it. */
export function groupEvennessOf(melody: readonly MelodyNote[], spans: Spans): GroupEvenness {
  const found = {
    before: new Int32Array(spans.count),
    even: new Float64Array(spans.count).fill(Infinity),
  };
  const times: Times = {
    melody,
    spans,
    at: Float64Array.from(melody, ({ at }) => at),
    lasts: Float64Array.from(melody, ({ length }) => length),
    goesOn: melody.map((_, i) => goesOn(melody, i)),
    // The first of those that begin at one time.
    startingAt: new Map(
      melody.map(({ at, upbeat }, i) => [tick(at + upbeat), i] as const).toReversed(),
    ),
  };
  for (let length = 1; length <= spans.longest; length++) followEvenly(times, length, found);
  return found;
}

/** Writes it of all groups of so many notes. */
function followEvenly(
  { melody, spans, at, lasts, goesOn: runs, startingAt }: Times,
  length: number,
  { before, even }: GroupEvenness,
): void {
  const alike = likenesses(melody, length);
  for (let from = 1; from + length <= melody.length; from++) {
    if (!isSpan(spans, from, length)) continue;
    const last = from + length - 1;
    const start = startingAt.get(tick(2 * at[from]! - at[last]! - lasts[last]!));
    if (start === undefined || from - start > spans.longest) continue;
    const span = spans.base[from]! + length;
    before[span] = from - start;
    const figured =
      length > 2 &&
      from - start === length &&
      melody[start]!.chroma !== melody[from]!.chroma &&
      !runs[from] &&
      !runs[from + length];
    const moves = alike[last]! - alike[from]!;
    even[span] = figured ? -W.figure * likeness(moves, length - 1) : 0;
  }
}

/** How much it says that so many of a figure's moves come back: a whole figure much, a move or two that are alike by chance little. */
const likeness = (alike: number, moves: number) => (alike / moves) ** 2 * Math.sqrt(moves);

/** Whether the move to a note is the one before it and the one after it again: that any two pieces of such a run are alike says nothing. */
function goesOn(melody: readonly MelodyNote[], at: number): boolean {
  const { into, out } = melody[at]!;
  const steps = into?.scaleSteps;
  return melody[at - 1]?.into?.scaleSteps === steps && out?.scaleSteps === steps;
}

/** A time as a whole number, so that sums of thirds meet. */
const tick = (beats: number) => Math.round(beats * 5040);

/** How many moves up to each note go as many steps of the scale as those a number of notes earlier. */
function likenesses(melody: readonly MelodyNote[], earlier: number): Float64Array {
  const counts = new Float64Array(melody.length);
  for (let i = 1; i < melody.length; i++) {
    const like = melody[i - earlier]?.into;
    counts[i] = counts[i - 1]! + Number(like?.scaleSteps === melody[i]!.into!.scaleSteps);
  }
  return counts;
}
