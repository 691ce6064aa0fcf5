import { beats, subtract, toNumber, type Beats } from '../rhythm.ts';
import { countWords, type Figure } from './figure.ts';
import type { Clicks } from './clicks.ts';

/** A word of the count-in, before 0. */
export interface Counted {
  readonly at: Beats;
  /** From the bar line after the count-in, below 0. */
  readonly seconds: number;
  readonly word: string;
  /** Whether it is a beat: clicked, and said louder. */
  readonly beat: boolean;
}

/** An onset that is expected. */
export interface Slot {
  readonly at: Beats;
  /** From the bar line after the count-in. */
  readonly seconds: number;
  /** Whether the click sounds with it. */
  readonly clicked: boolean;
}

/** A click after the count-in. */
export interface TimedClick {
  readonly at: Beats;
  readonly seconds: number;
  /** Whether it begins a bar. */
  readonly first: boolean;
}

/** A figure at a tempo, laid out in time; 0 is the bar line after the count-in of one bar. */
export interface TimePlan {
  readonly figure: Figure;
  /** Beats a minute. */
  readonly tempo: number;
  readonly countIn: readonly Counted[];
  readonly slots: readonly Slot[];
  readonly clicks: readonly TimedClick[];
  /** When all is over, in seconds. */
  readonly end: number;
}

/**
 * Lays a figure out in time.
 *
 * @param clicks null for no click after the count-in
 * @throws RangeError where the tempo is not above 0.
 */
export function timePlan(figure: Figure, tempo: number, clicks: Clicks | null): TimePlan {
  if (!(tempo > 0 && Number.isFinite(tempo))) throw new RangeError('A tempo is above 0.');
  const { bar, onsets, length } = figure;
  const secondsOf = (at: Beats) => (toNumber(at) * 60) / tempo;
  const sounds = (at: Beats) => at.d === 1 && clicks !== null && clickedOn(at.n, bar, clicks);
  const allBeats = Array.from({ length: Math.ceil(toNumber(length)) }, (_, i) => beats(i));
  return {
    figure,
    tempo,
    countIn: countIn(figure).map((counted) => ({ ...counted, seconds: secondsOf(counted.at) })),
    slots: onsets.map((at) => ({ at, seconds: secondsOf(at), clicked: sounds(at) })),
    clicks: allBeats
      .filter(sounds)
      .map((at) => ({ at, seconds: secondsOf(at), first: at.n % bar === 0 })),
    end: secondsOf(length),
  };
}

function clickedOn(beat: number, bar: number, clicks: Clicks): boolean {
  if (clicks === 'bar') return beat % bar === 0;
  return clicks === 'beat' || Math.floor(beat / bar) % 2 === 0;
}

/** One bar of words, each with the time before the first bar line at which it is said. */
function countIn(figure: Figure): Omit<Counted, 'seconds'>[] {
  const { bar, division } = figure;
  return countWords(figure).flatMap((words, beat) =>
    words.map((word, i) => ({
      at: subtract(beats(beat * division + i, division), beats(bar)),
      word,
      beat: i === 0,
    })),
  );
}
