import { letterDegree, type Key } from '../key.ts';
import { pitchClass, semitonesAbove } from '../note.ts';
import type { Phrase } from '../phrase.ts';
import { toNumber, type Beats } from '../rhythm.ts';
import * as W from './weights.ts';

/** How the bars of a phrase lie. */
export interface Metre {
  /** Beats of a bar. */
  readonly bar: number;
  /** Beats before the first bar line; null where nobody knows. */
  readonly pickup: Beats | null;
}

/** From one note to the next, upward or, below 0, downward. */
interface Interval {
  readonly semitones: number;
  /** Steps of the scale: 2 for a third upward, whatever its quality. */
  readonly scaleSteps: number;
  /** Whether it is a step, not a leap nor a repeated note: two semitones at most, or ♭6–♯7 in minor. */
  readonly isStep: boolean;
}

/** Thirds in a row, in one direction. */
interface Run {
  readonly thirds: number;
  /** Whether the third in question is its first or last. */
  readonly edge: boolean;
  /** Whether the third goes on in another octave: a sixth the other way, or a tenth. */
  readonly moved: boolean;
}

/** A note of a phrase in plain numbers, for reckoning. */
export interface MelodyNote {
  readonly midi: number;
  readonly chroma: number;
  /** Beats from a bar line; the pickup lies before the end of bar 0. */
  readonly at: number;
  /** In beats. */
  readonly length: number;
  /** Beats until the bar line where it leads to it in less than a beat: such an upbeat belongs to what follows; else 0. */
  readonly upbeat: number;
  readonly onBeat: boolean;
  /** How much it matters that the note is explained, by its length. */
  readonly weight: number;
  /** The run of thirds that a border before it would cut. */
  readonly run: Run;
  /** Whether both neighbours come after it, one after the other, and then it again. */
  readonly turns: boolean;
  /** How it is reached and left; null at the phrase's ends. */
  readonly into: Interval | null;
  readonly out: Interval | null;
}

/** The notes of a phrase in plain numbers. */
export function melodyOf(phrase: Phrase, key: Key, { bar, pickup }: Metre): MelodyNote[] {
  const before = pickup && pickup.n > 0 ? bar - toNumber(pickup) : 0;
  const moves = phrase.notes
    .slice(1)
    .map((note, i) => intervalBetween(key, phrase.notes[i]!, note));
  const runs = runsOf(moves);
  return phrase.notes.map(({ midi, at, length }, i) => {
    const start = toNumber(at) + before;
    const beats = toNumber(length);
    const upbeat = before > bar - 1 && start < bar - 1e-6 ? bar - start : 0;
    return {
      midi,
      chroma: pitchClass(midi),
      at: start,
      length: beats,
      upbeat,
      onBeat: isWhole(start),
      weight: Math.min(W.weight.most, W.weight.base + W.weight.root * Math.sqrt(beats)),
      run: runs[i - 1] ?? NO_RUN,
      turns: isTurn(moves[i], moves[i + 1], moves[i + 2]),
      into: moves[i - 1] ?? null,
      out: moves[i] ?? null,
    };
  });
}

/**
 * For each move the run that it is in: of 4 thirds in a ninth that is played up or down. A third may be passed through by
 * steps, or go on in another octave, where there are others before and behind it; in another octave behind three too.
 */
function runsOf(moves: readonly Interval[]): Run[] {
  const steps = (at: number) => moves[at]?.scaleSteps ?? 0;
  const runs: Run[] = moves.map(() => NO_RUN);
  for (let from = 0; from < moves.length; from++) {
    const third = steps(from);
    if (Math.abs(third) !== 2) continue;
    const isPassed = (at: number) =>
      2 * steps(at) === third && steps(at) === steps(at + 1) && steps(at + 2) === third;
    const moved = (at: number) =>
      Math.abs(steps(at) - third) === 7 &&
      (at > from + 2 || (at > from && steps(at + 1) === third));
    let thirds = 0;
    let to = from;
    for (; steps(to) === third || isPassed(to) || moved(to); thirds++) to += isPassed(to) ? 2 : 1;
    for (let at = from; at < to; at++)
      runs[at] = { thirds, edge: at === from || at === to - 1, moved: moved(at) };
    from = to - 1;
  }
  return runs;
}
const NO_RUN: Run = { thirds: 0, edge: false, moved: false };

/** What a border before a note costs, and × what its absence does, for the run of thirds that it would cut. */
export function runOf({ run: { thirds, edge, moved } }: MelodyNote): {
  readonly cut: number;
  readonly inside: number;
} {
  if (thirds < 3) return UNCUT;
  if (moved) return W.run.moved;
  const run = thirds === 3 ? W.run[3] : W.run[4];
  return edge ? run.edge : run.middle;
}
const UNCUT = { cut: 0, inside: 1 };

type Named = Phrase['notes'][number];

function intervalBetween(key: Key, from: Named, to: Named): Interval {
  const semitones = to.midi - from.midi;
  const size = Math.abs(semitones);
  const isStep = (size > 0 && size <= 2) || (size === 3 && isAugmented(key, from, to));
  const letters = letterDegree(key, to.name) - letterDegree(key, from.name);
  const scaleSteps = letters + 7 * Math.round(((semitones * 7) / 12 - letters) / 7);
  return { semitones, scaleSteps, isStep };
}

function isTurn(one?: Interval, other?: Interval, back?: Interval): boolean {
  if (!one?.isStep || !other || !back?.isStep) return false;
  const home = one.semitones + other.semitones + back.semitones;
  return home === 0 && one.semitones * back.semitones > 0;
}

/** Whether three semitones are the step of a scale, as from ♭6 to ♯7 in minor. */
function isAugmented(key: Key, from: Named, to: Named): boolean {
  const [low, high] = from.midi < to.midi ? [from, to] : [to, from];
  return (
    letterDegree(key, low.name) === 6 &&
    letterDegree(key, high.name) === 7 &&
    semitonesAbove(key.tonic, high.name) === 11
  );
}

/** Whether a number is whole but for the rounding of thirds. */
export function isWhole(n: number): boolean {
  return Math.abs(n - Math.round(n)) < 1e-6;
}
