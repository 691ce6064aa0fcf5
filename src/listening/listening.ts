/**
 * What passes between the ear and whoever asks it. Times are seconds on the clock of the microphone's audio context;
 * pitches are MIDI numbers as they sound (a capo and the tuning counted in).
 *
 * The judge never accuses in doubt: a note is `wrong` or `missing` only where that is sure, else it is `unheard`, which
 * is no answer at all. Which string was played is not claimed: a pitch does not tell.
 */

/** What is to be played. */
export interface Expected {
  /** MIDI numbers, in the order in which they are to be played where `order` is `given`. */
  readonly notes: readonly number[];
  /**
   * `given`: one after another; begun late, stopped and begun again as the player likes (the last attempt counts).
   * `any`: each once, in whatever order, several at a time too; played again it is no mistake.
   */
  readonly order: 'given' | 'any';
  /**
   * When each note is due, in seconds on the audio clock, rising; left out at leisure. It helps to tell which note an
   * event was; how even the playing was is for whoever gets the times to judge.
   */
  readonly due?: readonly number[];
  /** How far the whole guitar is off, in cents, as tuning up has found; 0 where left out. */
  readonly offset?: number;
  /** A4 in Hz; 440 where left out. */
  readonly reference?: number;
}

/** What is known of playing of which nothing is asked. */
export type FreePlaying = Pick<Expected, 'offset' | 'reference'>;

/** A4 in Hz of a guitar as it is tuned. */
export const referenceOf = ({ reference = 440, offset = 0 }: FreePlaying): number =>
  reference * 2 ** (offset / 1200);

/** A note that was heard where nothing was asked. */
export interface FreeNote {
  readonly time: number;
  readonly heard: number;
  /**
   * The chance, 0 to 1, that this note was plucked here: as the judge's weights have it, which know plucks of single
   * notes. Take what is under .8 as a guess.
   */
  readonly confidence: number;
}

/** What is told of free playing. */
export interface FreeListener {
  /** A note, in order, three tenths of a second after it was plucked, a faint one once the next was. None is taken back. */
  readonly onNote?: (note: FreeNote) => void;
  /** `finish` was called: all notes that were heard. */
  readonly onOver?: (notes: readonly FreeNote[]) => void;
}

/** What became of an expected note. */
export type NoteVerdict =
  | { readonly verdict: 'right'; readonly time: number }
  /** Another note was played in its place: `heard`. */
  | { readonly verdict: 'wrong'; readonly time: number; readonly heard: number }
  | { readonly verdict: 'missing' }
  /** It cannot be told. Neither right nor wrong. */
  | { readonly verdict: 'unheard' };

/** A note that was played and not asked for. Only sure ones are told. */
export interface Extra {
  readonly time: number;
  readonly heard: number;
  /** The expected note after which it came, −1 before the first. */
  readonly after: number;
}

/** What was played, as far as it is settled. */
export interface Performance {
  /** One for each expected note; null where it is still open. */
  readonly notes: readonly (NoteVerdict | null)[];
  readonly extras: readonly Extra[];
  /** How often the player began again. What went before is forgotten. */
  readonly restarts: number;
  /** Plucks of which it cannot be told which note they were; counted where notes may come in any order. */
  readonly untold?: number;
  /** Whether every note is settled and nothing more is awaited. */
  readonly over: boolean;
}

/** What the ear tells while it follows. */
export interface Follower {
  /**
   * At once, about a tenth of a second after the pluck: this expected note was heard, and right. Nothing but `right` is
   * ever told at once, and it may be taken back by what is settled.
   */
  readonly onRight?: (index: number, time: number) => void;
  /** Something more is settled: within two notes of its pluck. Called with the whole, as it now stands. */
  readonly onSettled?: (performance: Performance) => void;
  /** The last note is settled, or `finish` was called, or nothing was played for `PATIENCE` seconds after a beginning. */
  readonly onOver?: (performance: Performance) => void;
}

/** So long, in seconds, is silence waited through in the middle of a performance. */
export const PATIENCE = 6;

/** Something that is being listened to. Ended with the card, the screen or the page. */
export interface Task {
  /** Settles what is open with what has been heard, and ends. */
  finish(): void;
  /** Begins from the first note again, as if nothing had been played. */
  restart(): void;
  /** Ends without a further word. */
  stop(): void;
}

/** How a string stands while it is being tuned. */
export interface StringTuning {
  /** Which of the strings asked for, by its index. */
  readonly string: number;
  /** How far it is off, in cents: above 0 too high. The median of the last readings. */
  readonly cents: number;
  /** `ready` within `IN_TUNE`; `near` within `LEFT_SO`, where it may be left; else `off`. */
  readonly state: 'ready' | 'near' | 'off';
  readonly time: number;
}

/** Cents within which a string is in tune, and within which it may be left as it is. */
export const IN_TUNE = 5;
export const LEFT_SO = 15;

/** What is told while tuning up. */
export interface Tuner {
  readonly onString?: (tuning: StringTuning) => void;
}
