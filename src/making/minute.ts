import type { FreeNote } from '../listening/listening.ts';
import { travel } from '../neck/travel.ts';
import type { Instrument } from '../neck/instrument.ts';
import { freeLine, type FreeLine, type HeardNote } from '../theory/free/freeLine.ts';
import { outlined, type OutlineCount } from '../theory/free/outlined.ts';
import { overClick, type OverClick } from '../theory/free/pulse.ts';
import { written } from '../theory/free/written.ts';
import type { Key } from '../theory/key.ts';
import { explained, withPlaces, type Explained } from './explained.ts';

/** What was heard of a free minute, and over which click. */
export interface FreeMinute {
  /** Times in seconds; 0 is a click. */
  readonly heard: readonly FreeNote[];
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
/** Standard deviation of an onset's error but for what is far out, in seconds (measured on the guitars tuned on). */
export const ONSET_ERROR = 0.0025;

/** Null where fewer than 12 notes were sure: too few to say anything. */
export function toldOf({ heard, tempo, key, instrument }: FreeMinute): MinuteTold | null {
  const notes = sureOf(heard);
  const onsets = notes.map(({ at }) => at);
  const even = overClick(onsets, 60 / tempo, { error: ONSET_ERROR });
  if (!even) return null;
  const midis = notes.map(({ midi }) => midi);
  const all = explained(written(midis, even.places, tempo, key), { key, instrument });
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
