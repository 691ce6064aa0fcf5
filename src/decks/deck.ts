import type { HandChoice } from '../neck/choice.ts';
import type { ShapeChoice } from '../neck/shapeChoice.ts';
import type { Instrument } from '../neck/instrument.ts';
import type { Ruling } from '../theory/analysis/ruling.ts';
import type { Size } from '../theory/chord.ts';
import type { Key } from '../theory/key.ts';
import type { Phrase } from '../theory/phrase.ts';
import type { FigureName } from '../theory/timing/figureNames.ts';
import type { Clicks } from '../theory/timing/clicks.ts';
import {
  isKindOf,
  type DECLARED,
  type FormName,
  type KindName,
  type KindOf,
  type PhraseKind,
} from './kinds.ts';

export { isPhraseKind, KIND_NAMES, type KindName } from './kinds.ts';

/** The ways a phrase goes through its arpeggio. */
export const CONTOURS = ['up', 'down', 'turn', 'skip'] as const;
export type Contour = (typeof CONTOURS)[number];

/** The notes that phrases go in; all but the last, which is long. */
export const RHYTHMS = ['triplets', 'eighths'] as const;
export type Rhythm = (typeof RHYTHMS)[number];

/** Arpeggios to be named, or placed, on string sets inside frets. */
export interface NeckDrill<K extends KindName = KindOf<'neck'>> {
  readonly kind: K;
  readonly degrees: readonly number[];
  readonly sizes: readonly Size[];
  /** String sets, each from the highest string number down: [[5, 4], [4, 3]]. */
  readonly strings: readonly (readonly number[])[];
  /** Lowest and highest fret, both included. */
  readonly frets: readonly [number, number];
  /** Which of their shapes; all where left out. */
  readonly shapes?: ShapeChoice;
}

/** Phrases to be heard and traced. */
export interface EarDrill<K extends KindName = KindOf<'ear'>> {
  readonly kind: K;
  readonly degrees: readonly number[];
  readonly sizes: readonly Size[];
  readonly contours: readonly Contour[];
  /** Quarter notes a minute. */
  readonly tempo: number;
  /** Triplets where not given. */
  readonly rhythm?: Rhythm;
}

/** What is drilled from the deck's own phrases. */
export interface PhraseDrill<K extends KindName = PhraseKind> {
  readonly kind: K;
  /** Which of them, counted from 1; all where left out. */
  readonly phrases?: readonly number[];
}

/** The ways an arpeggio is played: `turn` is up and back. */
export const WAYS = ['up', 'down', 'turn'] as const;
export type Way = (typeof WAYS)[number];

/** How fast something is to be played. */
interface AtTempo {
  /** Quarter notes a minute, after a count-in; at leisure where left out. */
  readonly tempo?: number;
}

/** Arpeggios to be played on string sets inside frets. */
export interface PlayDrill extends NeckDrill<KindOf<'played'>>, AtTempo {
  readonly ways: readonly Way[];
}

/** The arpeggios of the deck's phrases, to be played as the phrases have them. */
export interface PlayPhrasesDrill extends PhraseDrill<KindOf<'played'>>, AtTempo {}

/** A figure that has a name, or the rhythm of each of the deck's phrases. */
export type DrilledFigure = FigureName | 'phrase';

/** Figures to be kept even, step by step at each of the tempos. */
export interface TimeDrill {
  readonly kind: KindOf<'time'>;
  readonly figures: readonly DrilledFigure[];
  /** Quarter notes a minute, rising. */
  readonly tempos: readonly number[];
  /** When the click sounds. */
  readonly clicks: readonly Clicks[];
}

/** The forms that drills have, by the names that `kinds.ts` gives them. What is done with each is in `drills/`. */
export interface Drills {
  readonly neck: NeckDrill;
  readonly ear: EarDrill;
  readonly phrase: PhraseDrill;
  readonly played: PlayDrill | PlayPhrasesDrill;
  readonly echoed: EarDrill<KindOf<'echoed'>> | PhraseDrill<KindOf<'echoed'>>;
  readonly time: TimeDrill;
}

/** A rule that yields items. */
export type Drill = Drills[FormName];

/** A drill of one kind's form. */
export type DrillOf<K extends KindName> = Drills[(typeof DECLARED)[K]['drill']];

/** Those of some drills that are of the deck's phrases, whatever their form. */
export type OfPhrases<D extends Drill = Drill> = Exclude<
  D,
  TimeDrill | { readonly degrees: readonly number[] }
>;

export function isPhraseDrill<D extends Drill>(drill: D): drill is OfPhrases<D> {
  return !('degrees' in drill) && !isTimeDrill(drill);
}

export function isTimeDrill(drill: Drill): drill is TimeDrill {
  return isKindOf('time', drill.kind);
}

/** A phrase as it is taught. */
export interface TaughtPhrase extends Phrase {
  /** What the teacher ruled that it outlines, if anything. */
  readonly rulings?: readonly Ruling[];
  /** How it lies on the neck where its notes have no places, if the teacher says so. */
  readonly hand?: HandChoice;
}

/** How hard an item is, from 1, the easiest, to 5; 3 is the middle. */
export type Mark = 1 | 2 | 3 | 4 | 5;

/** Marks by item id. */
export type Marks = Readonly<Record<string, Mark>>;

/** What a teacher hands out for a lesson. */
export interface Deck {
  readonly title: string;
  /** The teacher's note to the student; may be empty. */
  readonly note: string;
  /** The day of the next lesson, `2026-12-01`, or null. */
  readonly lessonDay: string | null;
  readonly instrument: Instrument;
  readonly key: Key;
  readonly drills: readonly Drill[];
  readonly phrases: readonly TaughtPhrase[];
  /** How hard single items are, set by the teacher or learned from a class; items without a mark are in the middle. */
  readonly marks?: Marks;
}

/** The slowest tempo and the fastest, quarter notes a minute. */
export const TEMPOS = [30, 240] as const;

/** How much a deck may hold: characters of its title, note and key, drills, string sets of a drill, phrases, notes of a phrase, tempos of a drill, marks. */
export const MOST = {
  title: 80,
  note: 500,
  drills: 20,
  stringSets: 20,
  phrases: 16,
  notes: 200,
  tempos: 20,
  key: 40,
  marks: 1000,
  /**
   * In all drills together: arpeggios on string sets or by contours, figures at a tempo with a click, notes of the phrases
   * drilled, of those without places the squares of how many strings sound each, rulings. Notes of an arpeggio × its strings.
   */
  arpeggios: 600,
  pulses: 1200,
  drilledNotes: 300,
  ways: 5400,
  spread: 50,
  rulings: 800,
};
