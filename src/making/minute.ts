import type { FreeNote } from '../listening/listening.ts';
import { travel } from '../neck/travel.ts';
import type { Instrument } from '../neck/instrument.ts';
import { unlikelihood } from '../theory/analysis/analysis.ts';
import { freeLine, type FreeLine, type HeardNote } from '../theory/free/freeLine.ts';
import { outlined, type OutlineCount } from '../theory/free/outlined.ts';
import { overClick, waysOverClick, type OverClick } from '../theory/free/pulse.ts';
import { written } from '../theory/free/written.ts';
import type { Key } from '../theory/key.ts';
import type { Phrase } from '../theory/phrase.ts';
import { explained, withPlaces, type Explained } from './explained.ts';

/** What was heard of a free minute, and over which click. */
export interface FreeMinute {
  /** Times in seconds; 0 is a click. */
  readonly heard: readonly FreeNote[];
  /** Whether the phone's delay is known, and taken out of the times. */
  readonly isMeasured: boolean;
  /** Beats a minute that were clicked. */
  readonly tempo: number;
  readonly key: Key;
  readonly instrument: Instrument;
}

/** What a free minute comes to. Everything is told of the notes that are sure; what was left out is counted. */
export interface MinuteTold {
  readonly line: FreeLine;
  /** The notes as they are written, on the neck by the hand's cheapest way. */
  readonly explained: Explained;
  readonly outlined: readonly OutlineCount[];
  /** From the lowest to the highest fret pressed, in mm, and those frets; null where a note is not on the instrument. */
  readonly along: { readonly reach: number; readonly frets: readonly [number, number] } | null;
  readonly even: OverClick;
  /** Plucks that rang into others, or of which it could not be told which note they were. */
  readonly leftOut: number;
}

/**
 * What is less sure than this is a guess (`FreeNote.confidence`): of chords one note is told, and seldom so surely. A
 * note between two that are sure is told from `between` on: in a ringing line doubts come one at a time, in chords not
 * (measured on the guitars tuned on).
 */
const SURELY = { alone: 0.8, between: 0.5 } as const;
/**
 * Standard deviation of an onset's own error, in seconds, of the 97 in 100 that are heard within 5 ms, damped as ringing
 * (measured on the guitars tuned on); what is farther out `overClick` leaves out. It is independent of how the line was
 * played, so that its square is taken from the square of the spread.
 */
export const ONSET_ERROR = 0.0012;

/** Null where fewer than 12 notes were sure: too few to say anything. */
export function toldOf(minute: FreeMinute): MinuteTold | null {
  const { heard, key, instrument } = minute;
  const notes = sureOf(heard);
  const found = overBeats(notes, minute);
  if (!found) return null;
  const { even, phrase } = found;
  const all = explained(phrase, { key, instrument });
  const along = travel(withPlaces(all), instrument);
  return {
    line: freeLine(notes, key),
    explained: all,
    outlined: outlined(all.phrase, key),
    along: along && { reach: along.reach, frets: along.frets },
    even,
    leftOut: heard.length - notes.length,
  };
}

/**
 * What is said of a delay of which nothing is known, as a normal curve in seconds: sound goes through wires at once and
 * through the air, a phone and headphones without a wire in up to three tenths of a second. (A judgement.)
 */
const DELAY = { mean: 0.12, deviation: 0.12 };
/**
 * How far divisions have a say in where the beats are, beside arpeggios and the delay: a group that ends on a beat before a
 * rest is said in fewer divisions than one that begins on it. (Chosen on made lines.)
 */
const DIVIDED = 0.5;

/**
 * A line over its beats, and as it is written on them. Where the phone's delay is not known, how late the line was heard
 * is told by how it lies on its beats: by its divisions, and by where its arpeggios start.
 */
function overBeats(
  notes: readonly HeardNote[],
  { isMeasured, tempo, key }: Pick<FreeMinute, 'isMeasured' | 'tempo' | 'key'>,
): { even: OverClick; phrase: Phrase } | null {
  const [onsets, midis] = [notes.map(({ at }) => at), notes.map(({ midi }) => midi)];
  const known = { error: ONSET_ERROR };
  const writtenOn = (even: OverClick) => ({
    even,
    phrase: written(midis, even.places, tempo, key),
  });
  if (isMeasured) {
    const even = overClick(onsets, 60 / tempo, known);
    return even && writtenOn(even);
  }
  const ways = waysOverClick(onsets, 60 / tempo, known).map(writtenOn);
  const costs = ways.map(({ even, phrase }) => {
    const far = (even.late - DELAY.mean) / DELAY.deviation;
    return DIVIDED * even.cost + unlikelihood(phrase, key) + 0.5 * far * far;
  });
  return ways[costs.indexOf(Math.min(...costs))] ?? null;
}

/** The notes that are sure, those marked before which others were left out. */
function sureOf(heard: readonly FreeNote[]): HeardNote[] {
  return heard.flatMap(({ heard: midi, time: at }, i) => {
    if (!isSure(heard, i)) return [];
    const broken = i > 0 && !isSure(heard, i - 1);
    return [{ midi, at, ...(broken && { broken }) }];
  });
}

/** Whether a note that was heard is told. */
export function isSure(heard: readonly Pick<FreeNote, 'confidence'>[], i: number): boolean {
  const { confidence } = heard[i]!;
  if (confidence >= SURELY.alone) return true;
  const neighbours = [heard[i - 1], heard[i + 1]];
  const areSure = neighbours.every((one) => !one || one.confidence >= SURELY.alone);
  return confidence >= SURELY.between && areSure;
}
