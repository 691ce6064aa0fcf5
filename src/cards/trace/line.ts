import type { Contour, Rhythm } from '../../decks/deck.ts';
import type { Size } from '../../theory/chord.ts';
import type { Random } from '../../theory/random.ts';
import { degreeOfStep } from '../../theory/scale.ts';

/**
 * A line of notes of a key, counted in scale steps: 0 is the tonic nearest below the middle of the range, 1 the second
 * degree above it, −1 the seventh below it. Groups of like length each walk one arpeggio.
 */
export interface Line {
  readonly steps: readonly number[];
  /** The degree that each group's arpeggio stands on. */
  readonly degrees: readonly number[];
  /** The one note that is not of its arpeggio, where there is one: which, counted from 0, and what it is. */
  readonly embellishment: { readonly index: number; readonly kind: 'passing' | 'neighbour' } | null;
}

/** How a group of four goes over the notes of its arpeggio, counted from its first note; one of three stops earlier. */
const WALKS: Record<Contour, readonly (readonly number[])[]> = {
  up: [[0, 1, 2, 3]],
  down: [[0, -1, -2, -3]],
  turn: [
    [0, 1, 0, -1],
    [0, -1, 0, 1],
  ],
  skip: [
    [0, 2, 1, 3],
    [0, -2, -1, -3],
  ],
};

/** Notes of a group: those of one beat in triplets, of two in eighths. */
export const GROUP: Readonly<Record<Rhythm, number>> = { triplets: 3, eighths: 4 };

/** A phrase has at most so many notes. */
const LONGEST = 12;

/** Scale steps above the root at which an arpeggio's notes lie, one octave and its inversions; ninths in one stack. */
const LADDERS: Record<Size, readonly number[]> = {
  triad: [0, 2, 4, 7, 9, 11],
  seventh: [0, 2, 4, 6, 7, 9, 11, 13],
  ninth: [0, 2, 4, 6, 8],
  eleventh: [0, 2, 4, 6, 8, 10],
  thirteenth: [0, 2, 4, 6, 8, 10, 12],
};

/** By how many degrees the next arpeggio's root lies higher: a fourth most often, then a fifth, a second, a third down. */
const ROOT_MOVES = [3, 3, 3, 4, 4, 1, 5];

interface LineOptions {
  readonly degree: number;
  readonly size: Size;
  readonly contour: Contour;
  /** How many groups, 1 to 4; of eighths no more than make twelve notes. */
  readonly groups: number;
  readonly rhythm: Rhythm;
  /** The lowest and the highest step allowed. */
  readonly range: readonly [number, number];
  /** Whether the last group may have a passing or neighbour tone for its middle note. */
  readonly embellished: boolean;
}

/** Walks arpeggios from the given degree on, each next one taken up by the nearest move. */
export function drawLine(options: LineOptions, random: Random): Line {
  const steps: number[] = [];
  const degrees: number[] = [];
  const long = GROUP[options.rhythm];
  const walk = random.pick(WALKS[options.contour]).slice(0, long);
  const groups = Math.min(options.groups, LONGEST / long);
  let degree = options.degree;
  for (let group = 0; group < groups; group++) {
    const found = groupsOf(degree, options, walk);
    const from = steps.at(-1);
    const chosen = from === undefined ? random.pick(found) : nearest(found, from);
    steps.push(...chosen);
    degrees.push(degree);
    degree = degreeOfStep(degree - 1 + random.pick(ROOT_MOVES));
  }
  const line = { steps, degrees, embellishment: null };
  return options.embellished ? embellish(line, options.range, random) : line;
}

/**
 * Puts a passing or a neighbour tone into the last group: between two notes a third apart the note between them, between
 * two like notes the step above or below (*Open Music Theory*, "Embellishing tones"). Where neither fits, or it would leave
 * the range, nothing.
 */
function embellish(line: Line, [low, high]: LineOptions['range'], random: Random): Line {
  const index = line.steps.length - 2;
  const [before, after] = [line.steps[index - 1]!, line.steps[index + 1]!];
  const apart = after - before;
  const by = apart === 0 ? random.pick([-1, 1]) : apart / 2;
  const tone = before + by;
  if (Math.abs(by) !== 1 || tone < low || tone > high) return line;
  const steps = line.steps.with(index, tone);
  return { ...line, steps, embellishment: { index, kind: apart === 0 ? 'neighbour' : 'passing' } };
}

/**
 * How hard a line is to hear, in notes of a plain arpeggio: each note 1, each leap of a fifth or more 1, each further
 * arpeggio 2, an embellishment 3, and in proportion to the tempo, 60 quarter notes a minute counting as it is. Our own
 * weights: they rank lines, they promise nothing.
 */
export function difficulty(line: Line, tempo: number): number {
  const leaps = line.steps
    .slice(1)
    .filter((step, i) => Math.abs(step - line.steps[i]!) >= 4).length;
  const heard = line.steps.length + leaps + 2 * (line.degrees.length - 1);
  return ((heard + (line.embellishment ? 3 : 0)) * tempo) / 60;
}

/**
 * Every way to walk the arpeggio inside the range; of larger chords the ways that sound their highest member, and of
 * these the ones that sound their root too: a ninth in one stack has none such, nor has every range.
 */
function groupsOf(
  degree: number,
  { size, range }: LineOptions,
  walk: readonly number[],
): number[][] {
  const ladder = LADDERS[size];
  const top = { triad: 0, seventh: 6, ninth: 8, eleventh: 10, thirteenth: 12 }[size] % 7;
  const groups: number[][] = [];
  for (let root = degree - 1 - 21; root <= range[1]; root += 7) {
    for (let start = 0; start < ladder.length; start++) {
      const group = walk.map((move) => root + (ladder[start + move] ?? NaN));
      if (!group.every((step) => step >= range[0] && step <= range[1])) continue;
      groups.push(group);
    }
  }
  const sounds = (group: readonly number[], member: number) =>
    group.some((step) => degreeOfStep(step - (degree - 1)) === member + 1);
  const telling = groups.filter((group) => sounds(group, top));
  const onRoot = telling.filter((group) => sounds(group, 0));
  return [onRoot, telling, groups].find(({ length }) => length > 0) ?? [];
}

/** The group that begins nearest to where the last one ended, a new note rather than the same again. */
function nearest(groups: readonly number[][], from: number): number[] {
  const distance = (group: readonly number[]) => Math.abs(group[0]! - from) || 3.5;
  return groups.reduce((best, group) => (distance(group) < distance(best) ? group : best));
}

/** `5 7 2 5`. */
export const pathOf = (steps: readonly number[]) => steps.map(degreeOfStep).join(' ');

/** Whether each group sounds the root of its arpeggio; an embellishment is none. */
export function rooted(line: Line): boolean[] {
  const starts = groupStarts(line);
  return line.degrees.map((degree, group) =>
    line.steps.some(
      (step, index) =>
        index >= starts[group]! &&
        index < (starts[group + 1] ?? line.steps.length) &&
        index !== line.embellishment?.index &&
        degreeOfStep(step) === degree,
    ),
  );
}

/** The index of each group's first note. */
export function groupStarts({ steps, degrees }: Line): number[] {
  return degrees.map((_, group) => (group * steps.length) / degrees.length);
}
