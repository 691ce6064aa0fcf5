/** Free playing over improvisations with known truth: what is told of its moves. */
import { FreeEar } from '../../../src/listening/free.ts';
import type { FreeNote } from '../../../src/listening/listening.ts';
import { isSure, ONSET_ERROR } from '../../../src/making/minute.ts';
import { overClick } from '../../../src/theory/free/pulse.ts';
import { RATE, type Guitar } from './bank.ts';
import { makePiece, SILENCE, type Conditions, type Piece } from './phrases.ts';
import { BLOCK } from './score.ts';

const LINES = ['stepwise', 'leaping', 'mixed'] as const;
const NOTES = 80;

const tempoOf = (i: number) => 60 + 30 * (Math.floor(i / 3) % 3);

/** Improvisations at 60 to 120 beats a minute in triplets, a third of each kind, in turn. */
const improvisation = (guitar: Guitar, ringing: Conditions['ringing'], i: number): Piece =>
  makePiece(
    guitar,
    {
      ringing,
      line: LINES[i % 3]!,
      length: NOTES,
      mistakes: 0,
      varied: true,
      tempo: tempoOf(i),
    },
    3_000_000 + i,
  );

function heardFreely(piece: Piece): FreeNote[] {
  const [opening, start] = [Math.round(0.05 * RATE), Math.round(0.55 * RATE)];
  const silence = piece.samples.subarray(opening, start);
  const ear = new FreeEar(RATE, { offset: piece.offset }, silence, start / RATE);
  const out: FreeNote[] = [];
  for (let from = start; from < piece.samples.length; from += BLOCK) {
    out.push(...ear.hear(piece.samples.subarray(from, from + BLOCK)));
  }
  return [...out, ...ear.finish()];
}

/**
 * The share of moves by more than a whole tone, in per cent, and the notes of the longest run by step one way.
 *
 * @param midis null for what is left out
 */
function movesOf(midis: readonly (number | null)[]): { leaps: number; run: number } {
  const moves = midis.slice(1).map((midi, i) => {
    const from = midis[i]!;
    return midi === null || from === null ? NaN : midi - from;
  });
  const moved = moves.filter((by) => Math.abs(by) > 0);
  let [run, longest, way] = [1, 1, 0];
  for (const by of moves) {
    const step = by !== 0 && Math.abs(by) <= 2;
    run = step ? (Math.sign(by) === way ? run + 1 : 2) : 1;
    way = step ? Math.sign(by) : 0;
    longest = Math.max(longest, run);
  }
  const leaps = moved.filter((by) => Math.abs(by) > 2).length;
  return { leaps: (100 * leaps) / Math.max(1, moved.length), run: longest };
}

export interface FreeScore {
  pieces: number;
  /** Notes played; of them heard as they were, within 70 ms; told and never played. */
  notes: number;
  heard: number;
  made: number;
  /** Notes told, and truly played, of those told with a confidence of .8 and more. */
  confident: number;
  confidentTrue: number;
  /** Improvisations whose share of leaps is told within 5 points, and their longest run within one note. */
  leapsNear: number;
  runNear: number;
  leaps: [told: number, truth: number][];
  /** Improvisations whose spread around the beat is told within a tenth; the told as a part of the true one, of each. */
  evenNear: number;
  even: number[];
}

/** Hears so many improvisations. */
export function freeScoreOf(
  guitars: readonly Guitar[],
  ringing: Conditions['ringing'],
  pieces: number,
): FreeScore {
  const score: FreeScore = {
    pieces,
    notes: 0,
    heard: 0,
    made: 0,
    confident: 0,
    confidentTrue: 0,
    leapsNear: 0,
    runNear: 0,
    leaps: [],
    evenNear: 0,
    even: [],
  };
  for (let i = 0; i < pieces; i++) {
    add(score, improvisation(guitars[i % guitars.length]!, ringing, i), tempoOf(i));
  }
  return score;
}

/** Standard deviation of plucks from even triplets, seconds. */
function spreadOf({ plucks }: Piece, tempo: number): number {
  const off = plucks.map(({ time }, i) => time - (i * 20) / tempo);
  const middle = off.reduce((sum, x) => sum + x, 0) / off.length;
  return Math.sqrt(off.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (off.length - 1));
}

function add(score: FreeScore, piece: Piece, tempo: number): void {
  const told = heardFreely(piece);
  const same = (note: FreeNote, pluck: { midi: number; time: number }) =>
    note.heard === pluck.midi && Math.abs(note.time - pluck.time) < 0.07;
  const isTrue = (note: FreeNote) => piece.plucks.some((pluck) => same(note, pluck));
  const sure = told.filter(({ confidence }) => confidence >= 0.8);
  score.notes += piece.plucks.length;
  score.heard += piece.plucks.filter((pluck) => told.some((note) => same(note, pluck))).length;
  score.made += told.filter((note) => !isTrue(note)).length;
  score.confident += sure.length;
  score.confidentTrue += sure.filter(isTrue).length;
  const truth = movesOf(piece.plucks.map(({ midi }) => midi));
  // As of a free minute: what is less sure is left out, and nothing moves to or from it.
  const own = movesOf(told.map(({ heard }, k) => (isSure(told, k) ? heard : null)));
  if (Math.abs(truth.leaps - own.leaps) <= 5) score.leapsNear++;
  if (Math.abs(truth.run - own.run) <= 1) score.runNear++;
  score.leaps.push([own.leaps, truth.leaps]);
  const onsets = told.filter((_, k) => isSure(told, k)).map(({ time }) => time - SILENCE);
  const even = overClick(onsets, 60 / tempo, { error: ONSET_ERROR })?.spread ?? NaN;
  const part = even / spreadOf(piece, tempo);
  if (Math.abs(part - 1) <= 0.1) score.evenNear++;
  score.even.push(part);
}
