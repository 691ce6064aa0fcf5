import { motion } from '../analysis/motion.ts';
import { degreeOf, type Key } from '../key.ts';
import { spell } from '../spell.ts';
import { beats } from '../rhythm.ts';
import type { PhraseNote } from '../phrase.ts';
import { median } from '../timing/median.ts';

/** A note that was heard. */
export interface HeardNote {
  /** C4 = 60. */
  readonly midi: number;
  /** When it began, in seconds. */
  readonly at: number;
  /** Whether something came between it and the note before that could not be told: then that was no move of the two. */
  readonly broken?: boolean;
}

/** Notes in a row, each a step from the one before. */
export interface Run {
  /** The first note's index. */
  readonly from: number;
  /** Moves, so that one more note is in it. */
  readonly steps: number;
  readonly direction: 'up' | 'down';
}

/** Nothing new for a while. */
export interface Pause {
  /** The index of the note before it. */
  readonly after: number;
  /** From that note's onset to the next one's. */
  readonly seconds: number;
}

/** How a free line of single notes moved: plain facts. */
export interface FreeLine {
  readonly notes: number;
  readonly steps: number;
  readonly leaps: number;
  readonly repeats: number;
  /** Leaps among the moves, repeated notes included, 0 to 1; null without a move. */
  readonly leaping: number | null;
  /** The longest way up or down by step through notes of the key, the first of those as long; null where there is none. */
  readonly run: Run | null;
  readonly pauses: readonly Pause[];
  /** The lowest and the highest note, and how far apart they are in semitones; null without a note. */
  readonly range: {
    readonly low: number;
    readonly high: number;
    readonly semitones: number;
  } | null;
}

/** A pause is so many times the usual step, and so many seconds, at least: a held note is shorter (a judgement). */
const PAUSE = { times: 3, seconds: 1 } as const;

/**
 * How notes that were heard moved in a key. A step and a leap are what they are in a phrase (`motion`). Which arpeggios
 * they outlined says `analyse`, once they are written in beats.
 *
 * @param notes in the order of their onsets
 */
export function freeLine(notes: readonly HeardNote[], key: Key): FreeLine {
  const parts = unbroken(notes).map((part) => part.map(({ midi }) => namedNote(midi, key)));
  const moved = parts.map((part) => motion({ notes: part, tempo: 60 }, key));
  const sum = (of: 'steps' | 'leaps' | 'repeats') => moved.reduce((all, one) => all + one[of], 0);
  const [steps, leaps, repeats] = [sum('steps'), sum('leaps'), sum('repeats')];
  const moves = steps + leaps + repeats;
  const pitches = notes.map(({ midi }) => midi);
  const [low, high] = [Math.min(...pitches), Math.max(...pitches)];
  return {
    notes: notes.length,
    steps,
    leaps,
    repeats,
    leaping: moves > 0 ? leaps / moves : null,
    run: longestRun(parts, key),
    pauses: pausesOf(notes),
    range: notes.length > 0 ? { low, high, semitones: high - low } : null,
  };
}

/** The notes in pieces, cut wherever something could not be told. */
function unbroken(notes: readonly HeardNote[]): HeardNote[][] {
  const parts: HeardNote[][] = [];
  for (const note of notes) {
    if (note.broken || parts.length === 0) parts.push([]);
    parts.at(-1)!.push(note);
  }
  return parts;
}

function namedNote(midi: number, key: Key): PhraseNote {
  return { midi, name: spell(key, midi), at: beats(0), length: beats(1) };
}

function longestRun(parts: readonly (readonly PhraseNote[])[], key: Key): Run | null {
  let longest: Run | null = null;
  let begins = 0;
  for (const part of parts) {
    for (const run of runsOf(part, key)) {
      if (run.steps > (longest?.steps ?? 0)) longest = { ...run, from: begins + run.from };
    }
    begins += part.length;
  }
  return longest;
}

/** Every run as it stands after each of its moves. */
function runsOf(notes: readonly PhraseNote[], key: Key): Run[] {
  let run: Run | null = null;
  return notes.slice(1).flatMap((to, i) => {
    const from = notes[i]!;
    const direction = to.midi > from.midi ? 'up' : 'down';
    if (!isStep(from, to, key)) run = null;
    else if (run?.direction === direction) run = { ...run, steps: run.steps + 1 };
    else run = { from: i, steps: 1, direction };
    return run ? [run] : [];
  });
}

function isStep(from: PhraseNote, to: PhraseNote, key: Key): boolean {
  const inKey = [from, to].every(({ name }) => degreeOf(key, name) !== null);
  return inKey && motion({ notes: [from, to], tempo: 60 }, key).steps === 1;
}

function pausesOf(notes: readonly HeardNote[]): Pause[] {
  const gaps = notes.slice(1).map(({ at }, i) => at - notes[i]!.at);
  const least = Math.max(PAUSE.seconds, PAUSE.times * median(gaps));
  return gaps.flatMap((seconds, after) =>
    seconds >= least && !notes[after + 1]!.broken ? [{ after, seconds }] : [],
  );
}
