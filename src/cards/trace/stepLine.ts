import type { Contour, Rhythm } from '../../decks/deck.ts';
import type { Size } from '../../theory/chord.ts';
import type { Random } from '../../theory/random.ts';
import { degreeOfStep } from '../../theory/scale.ts';

/**
 * A line of notes of a key, counted in scale steps: 0 is the tonic nearest below the middle of the range, 1 the second
 * degree above it, −1 the seventh below it. Groups of like length each walk one arpeggio.
 */
export interface StepLine {
  readonly steps: readonly number[];
  /** The degree that each group's arpeggio stands on. */
  readonly degrees: readonly number[];
  /** The one note that is not of its arpeggio, where there is one: which, counted from 0, and what it is. */
  readonly embellishment: { readonly index: number; readonly kind: 'passing' | 'neighbour' } | null;
}

/** Ways over the notes of an arpeggio, one below the other, counted from the first note of the way. */
type Walks = Readonly<Record<Contour, readonly (readonly number[])[]>>;

/** Of three notes and of four: any three neighbours of a triad are all of it. */
const WALKS: Readonly<Record<3 | 4, Walks>> = {
  3: {
    up: [[0, 1, 2]],
    down: [[0, -1, -2]],
    turn: [
      [0, 1, -1],
      [0, -1, 1],
    ],
    skip: [
      [0, 2, 1],
      [0, -2, -1],
    ],
  },
  4: {
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
  },
};

/** The same over a whole stack of four or six notes, by their numbers in it. */
const STACK_WALKS: Readonly<Record<4 | 6, Walks>> = {
  4: {
    up: [[0, 1, 2, 3]],
    down: [[3, 2, 1, 0]],
    turn: [
      [1, 0, 2, 3],
      [2, 3, 1, 0],
    ],
    skip: [
      [0, 2, 1, 3],
      [3, 1, 2, 0],
    ],
  },
  6: {
    up: [[0, 1, 2, 3, 4, 5]],
    down: [[5, 4, 3, 2, 1, 0]],
    turn: [
      [2, 1, 0, 3, 4, 5],
      [3, 4, 5, 2, 1, 0],
    ],
    skip: [
      [0, 2, 1, 4, 3, 5],
      [5, 3, 4, 1, 2, 0],
    ],
  },
};

/** Sizes beyond the seventh. */
type Extended = Exclude<Size, 'triad' | 'seventh'>;

/**
 * Scale steps above the root that a ninth and more are heard in, over two beats: without the root, or with three notes
 * alone, each would be another degree's plain chord. The ninth in six notes has its fifth below the root too.
 */
const STACKS: Readonly<Record<Extended, Readonly<Record<4 | 6, readonly number[]>>>> = {
  ninth: { 4: [0, 2, 6, 8], 6: [-3, 0, 2, 4, 6, 8] },
  eleventh: { 4: [0, 6, 8, 10], 6: [0, 2, 4, 6, 8, 10] },
  thirteenth: { 4: [0, 2, 6, 12], 6: [0, 2, 4, 6, 8, 12] },
};

export function isExtended(size: Size): size is Extended {
  return size !== 'triad' && size !== 'seventh';
}

/** Notes of a group: those of one beat in triplets, of two in eighths, and of two where a chord has five notes and more. */
function groupLength(size: Size, rhythm: Rhythm): 3 | 4 | 6 {
  if (rhythm === 'eighths') return 4;
  return isExtended(size) ? 6 : 3;
}

/** A phrase has at most so many notes. */
const LONGEST = 12;

/** Scale steps above the root at which an arpeggio's notes lie, one octave and its inversions. */
const LADDERS: Readonly<Record<Exclude<Size, Extended>, readonly number[]>> = {
  triad: [0, 2, 4, 7, 9, 11],
  seventh: [0, 2, 4, 6, 7, 9, 11, 13],
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
export function drawLine(options: LineOptions, random: Random): StepLine {
  const steps: number[] = [];
  const degrees: number[] = [];
  const groups = Math.min(options.groups, LONGEST / groupLength(options.size, options.rhythm));
  const way = random.below(2);
  let degree = options.degree;
  for (let group = 0; group < groups; group++) {
    const found = groupsOf(degree, options, way);
    const from = steps.at(-1);
    const chosen = from === undefined ? random.pick(found) : near(found, from, random);
    steps.push(...chosen);
    degrees.push(degree);
    degree = degreeOfStep(degree - 1 + random.pick(ROOT_MOVES));
  }
  const line = { steps, degrees, embellishment: null };
  return options.embellished && groups > 1 && !isExtended(options.size)
    ? embellish(line, options.range, random)
    : line;
}

/**
 * Puts a passing or a neighbour tone into the last group: between two notes a third apart the note between them, between
 * two like notes the step above or below (*Open Music Theory*, "Embellishing tones"). Where neither fits, or it would leave
 * the range or take the root's place, nothing.
 */
function embellish(line: StepLine, [low, high]: LineOptions['range'], random: Random): StepLine {
  const index = line.steps.length - 2;
  const [before, after] = [line.steps[index - 1]!, line.steps[index + 1]!];
  const apart = after - before;
  const by = apart === 0 ? random.pick([-1, 1]) : apart / 2;
  const tone = before + by;
  if (Math.abs(by) !== 1 || tone < low || tone > high) return line;
  const steps = line.steps.with(index, tone);
  const group = steps.slice(groupStarts(line).at(-1)).toSpliced(-2, 1);
  if (!group.some((step) => degreeOfStep(step) === line.degrees.at(-1))) return line;
  return { ...line, steps, embellishment: { index, kind: apart === 0 ? 'neighbour' : 'passing' } };
}

/**
 * How hard a line is to hear, in notes of a plain arpeggio: each note 1, each leap of a fifth or more 1, each further
 * arpeggio 2, an embellishment 3, and in proportion to the tempo, 60 quarter notes a minute counting as it is. Our own
 * weights: they rank lines, they promise nothing.
 */
export function difficulty(line: StepLine, tempo: number): number {
  const leaps = line.steps
    .slice(1)
    .filter((step, i) => Math.abs(step - line.steps[i]!) >= 4).length;
  const heard = line.steps.length + leaps + 2 * (line.degrees.length - 1);
  return ((heard + (line.embellishment ? 3 : 0)) * tempo) / 60;
}

/** What a group is drawn from. */
export type GroupOptions = Pick<LineOptions, 'size' | 'contour' | 'rhythm' | 'range'>;

/**
 * Every way to walk the arpeggio on a degree inside the range, each with its root. Of sevenths those that sound their
 * seventh; only where a range has none such, what it has.
 *
 * @param way which of a contour's two ways, 0 or 1
 */
export function groupsOf(degree: number, options: GroupOptions, way: number): number[][] {
  const { size, range } = options;
  const groups = isExtended(size)
    ? stacksOf(degree, size, options, way)
    : walksOf(degree, size, options, way);
  const within = groups.filter((group) =>
    group.every((step) => step >= range[0] && step <= range[1]),
  );
  const sounds = (group: readonly number[], step: number) =>
    group.some((other) => degreeOfStep(other - (degree - 1)) === step + 1);
  const onRoot = within.filter((group) => sounds(group, 0));
  const telling = size === 'seventh' ? onRoot.filter((group) => sounds(group, 6)) : onRoot;
  return [telling, onRoot, within].find(({ length }) => length > 0) ?? [];
}

/** The roots of a degree in every octave that could reach into a range, in scale steps. */
function roots(degree: number, [low, high]: LineOptions['range']): number[] {
  const found: number[] = [];
  for (let root = degree - 1 - 21; root <= high + 7; root += 7)
    if (root > low - 14) found.push(root);
  return found;
}

function walksOf(
  degree: number,
  size: Exclude<Size, Extended>,
  { contour, rhythm, range }: GroupOptions,
  way: number,
): number[][] {
  const walks = WALKS[rhythm === 'eighths' ? 4 : 3][contour];
  const walk = walks[way % walks.length]!;
  const ladder = LADDERS[size];
  return roots(degree, range).flatMap((root) =>
    ladder.map((_, start) => walk.map((move) => root + (ladder[start + move] ?? NaN))),
  );
}

function stacksOf(
  degree: number,
  size: Extended,
  { contour, rhythm, range }: GroupOptions,
  way: number,
): number[][] {
  const long = rhythm === 'eighths' ? 4 : 6;
  const walks = STACK_WALKS[long][contour];
  const walk = walks[way % walks.length]!;
  const stack = walk.map((note) => STACKS[size][long][note]!);
  const found = roots(degree, range).map((root) => stack.map((step) => root + step));
  const fits = (group: readonly number[]) =>
    group.every((step) => step >= range[0] && step <= range[1]);
  return found.some(fits) ? found : [stack.map((step) => folded(degree - 1 + step, range))];
}

/** A step in the octave that begins where a short neck does. */
function folded(step: number, [low]: LineOptions['range']): number {
  return low + ((((step - low) % 7) + 7) % 7);
}

/** So many scale steps further than the nearest may a group begin: the line that moves least is not always the right one. */
const NEAR = 2;

/** A group that begins near to where the last one ended, with a new note rather than the same again. */
function near(groups: readonly number[][], from: number, random: Random): number[] {
  const distance = (group: readonly number[]) => Math.abs(group[0]! - from) || 3.5;
  const least = Math.min(...groups.map(distance));
  return random.pick(groups.filter((group) => distance(group) <= least + NEAR));
}

/** `5 7 2 5`. */
export const pathOf = (steps: readonly number[]) => steps.map(degreeOfStep).join(' ');

/** The index of each group's first note. */
export function groupStarts({ steps, degrees }: StepLine): number[] {
  return degrees.map((_, group) => (group * steps.length) / degrees.length);
}
