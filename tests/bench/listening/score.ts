/** The judge over pieces with known truth, and what comes of it. */
import { Ear } from '../../../src/listening/ear.ts';
import type { NoteVerdict, Performance } from '../../../src/listening/listening.ts';
import { RATE } from './bank.ts';
import type { Mistake, Piece } from './phrases.ts';

export interface Score {
  notes: number;
  right: number;
  accepted: number;
  atOnce: number;
  /** Right notes told wrong or missing. */
  accused: number;
  unheard: number;
  /** Of those let through: how many were plucked all the same where they were told, for another note or before. */
  wrongs: Record<Mistake, { of: number; letThrough: number; plucked: number; named: number }>;
  extras: number;
  errors: number[];
  /** Notes settled, and those settled when two more had been plucked (and a quarter second gone). */
  settled: number;
  soon: number;
}

export const emptyScore = (): Score => ({
  notes: 0,
  right: 0,
  accepted: 0,
  atOnce: 0,
  accused: 0,
  unheard: 0,
  wrongs: Object.fromEntries(
    ['semitone', 'octave', 'other', 'skipped', 'extra', 'again'].map((kind) => [
      kind,
      { of: 0, letThrough: 0, plucked: 0, named: 0 },
    ]),
  ) as Score['wrongs'],
  extras: 0,
  errors: [],
  settled: 0,
  soon: 0,
});

const OPENING = Math.round(0.05 * RATE);
const QUIET = Math.round(0.5 * RATE);
/** Seconds by which a note may be off its pluck and still be that pluck. */
const NEAR = 0.07;
export const BLOCK = 512;

export interface Run {
  performance: Performance;
  atOnce: Map<number, number>;
  settledAt: (number | null)[];
}

/** Runs the ear over a piece as it would run in the browser. */
export function listen(piece: Piece): Run {
  const start = OPENING + QUIET;
  const ear = new Ear(
    RATE,
    { notes: piece.expected, order: 'given', offset: piece.offset },
    piece.samples.subarray(OPENING, start),
    start / RATE,
  );
  const atOnce = new Map<number, number>();
  const settledAt: (number | null)[] = piece.expected.map(() => null);
  let performance: Performance | null = null;
  const take = (said: ReturnType<Ear['hear']>, now: number) => {
    for (const one of said) {
      if (one.said === 'right') atOnce.set(one.index, one.time);
      else {
        performance = one.performance;
        performance.notes.forEach((verdict, i) => {
          if (!verdict) settledAt[i] = null;
          else settledAt[i] ??= now;
        });
      }
    }
  };
  for (let from = start; from < piece.samples.length; from += BLOCK) {
    take(ear.hear(piece.samples.subarray(from, from + BLOCK)), (from + BLOCK) / RATE);
  }
  take(ear.finish(), piece.samples.length / RATE);
  return { performance: performance!, atOnce, settledAt };
}

/** Adds what a run made of a piece. */
export function addTo(score: Score, piece: Piece, run: Run): void {
  const near = (a: number, b: number) => Math.abs(a - b) < NEAR;
  const isPlucked = (midi: number, time: number) =>
    piece.plucks.some((other) => other.midi === midi && near(other.time, time));
  const addTaken = (mistake: Mistake, midi: number, told: NoteVerdict) => {
    if (told.verdict !== 'right') return;
    score.wrongs[mistake].letThrough++;
    if (isPlucked(midi, told.time)) score.wrongs[mistake].plucked++;
  };
  piece.expected.forEach((midi, i) => {
    const pluck = piece.plucks.find(({ answers }) => answers === i);
    const told = run.performance.notes[i]!;
    score.notes++;
    if (told.verdict === 'unheard') score.unheard++;
    if (!pluck) {
      score.wrongs.skipped.of++;
      addTaken('skipped', midi, told);
      if (told.verdict === 'missing') score.wrongs.skipped.named++;
      return;
    }
    if (pluck.mistake) {
      const kind = score.wrongs[pluck.mistake];
      kind.of++;
      addTaken(pluck.mistake, midi, told);
      if (told.verdict === 'wrong' && told.heard === pluck.midi) kind.named++;
      return;
    }
    score.right++;
    const at = run.atOnce.get(i);
    if (at !== undefined && near(at, pluck.time)) score.atOnce++;
    if (told.verdict === 'right' && near(told.time, pluck.time)) {
      score.accepted++;
      score.errors.push(1000 * (told.time - pluck.time));
    }
    if (told.verdict === 'wrong' || told.verdict === 'missing') score.accused++;
    const settled = run.settledAt[i];
    const later = piece.plucks.filter(({ time }) => time > pluck.time)[1]?.time ?? pluck.time + 1;
    if (settled !== null && settled !== undefined) {
      score.settled++;
      if (settled < later + 0.25) score.soon++;
    }
  });
  const unasked = piece.plucks.filter(({ mistake }) => mistake === 'extra' || mistake === 'again');
  for (const { mistake } of unasked) score.wrongs[mistake!].of++;
  for (const extra of run.performance.extras) {
    const pluck = unasked.find(({ time }) => near(time, extra.time));
    if (pluck) score.wrongs[pluck.mistake!].named++;
    else if (
      !piece.plucks.some(
        (other) =>
          near(other.time, extra.time) &&
          (other.mistake || other.midi !== piece.expected[other.answers]),
      )
    )
      score.extras++;
  }
}
