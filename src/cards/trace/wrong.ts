/**
 * The wrong paths beside a line. Whoever looks at the four without hearing must not see which is the odd one or the
 * common ancestor of the others, so they are the four corners of a square: two independent changes of the line, the
 * one, the other and both. Each corner is then as far from the others as every other corner is. All begin on the same
 * note, and the changes are arpeggios again where there are such.
 */
import type { Contour } from '../../decks/deck.ts';
import { CONTOURS } from '../../decks/deck.ts';
import type { Random } from '../../theory/random.ts';
import { DEGREES } from '../../theory/scale.ts';
import {
  groupsOf,
  groupStarts,
  isExtended,
  pathOf,
  type GroupOptions,
  type StepLine,
} from './stepLine.ts';

/** Whether the instrument has a scale step, so that a path over it can be sounded. */
type HasStep = (step: number) => boolean;

/** What wrong paths are made from. */
interface WrongOptions extends GroupOptions {
  readonly has: HasStep;
  /** Near paths keep each note within two steps; far ones have notes that lie three and more off. */
  readonly near: boolean;
}

/** Other notes from one of the line's on. */
interface Change {
  readonly from: number;
  readonly steps: readonly number[];
}

/** So many squares are tried for one that keeps enough of the line's ups and downs, and moves as much. */
const TRIED = 24;

/** In so many of a hundred cards all four rise and fall alike, where there are such. */
const ALIKE = 45;

/** Three wrong paths, different from the line and from one another. */
export function wrongPaths(line: StepLine, options: WrongOptions, random: Random): number[][] {
  const alike = random.below(100) < ALIKE ? 4 : 2;
  // Lines go to what lies near: the right path must not be known as the one that moves least.
  const quieter = random.below(4);
  const draw = squares(line, options, random);
  let [best, least] = [null as number[][] | null, Infinity];
  for (let tried = 0; tried < TRIED && least > 0; tried++) {
    const three = draw();
    if (!three || !isUsable(line, three, options.has)) continue;
    const missed = 4 * Math.max(0, alike - likeTurns(line, three));
    const off = missed + Math.abs(quieter - quieterThan(line, three));
    if (off < least) [best, least] = [three, off];
  }
  return best ?? shifted(line, options.has);
}

/** How many of the four rise and fall as the line does. */
function likeTurns({ steps }: StepLine, wrong: readonly number[][]): number {
  return 1 + wrong.filter((other) => turns(other) === turns(steps)).length;
}

/** How many of the wrong paths move less than the line, taking a half for those that move as much. */
function quieterThan({ steps }: StepLine, wrong: readonly number[][]): number {
  const own = moves(steps);
  return wrong.reduce((sum, other) => sum + (Math.sign(own - moves(other)) + 1) / 2, 0);
}

/** All moves of a path together, in scale steps. */
function moves(steps: readonly number[]): number {
  return steps.slice(1).reduce((sum, step, i) => sum + Math.abs(step - steps[i]!), 0);
}

/** Draws squares around the line, or, of the stacks of larger chords, now and then four of them in a row. */
function squares(line: StepLine, options: WrongOptions, random: Random): () => number[][] | null {
  if (line.degrees.length === 1) return () => square(line, notePair(line, options, random));
  const firsts = firstGroups(line, options);
  const laters = line.degrees.slice(1).map((_, i) => laterGroups(line, i + 1, options));
  return () => {
    if (isExtended(options.size) && random.below(2) === 0) return onOtherDegrees(line, random);
    const seconds = random.pick(laters);
    if (firsts.length === 0 || seconds.length === 0) return null;
    return square(line, [random.pick(firsts), random.pick(seconds)]);
  };
}

/** The one change, the other, and both. */
function square({ steps }: StepLine, [one, other]: readonly [Change, Change]): number[][] {
  const changed = (before: readonly number[], { from, steps: by }: Change) =>
    before.toSpliced(from, by.length, ...by);
  return [changed(steps, one), changed(steps, other), changed(changed(steps, one), other)];
}

/** Other arpeggios that begin on the line's first note. */
function firstGroups(line: StepLine, options: WrongOptions): Change[] {
  const own = groupAt(line, 0);
  const contours = isExtended(options.size) ? CONTOURS : [options.contour];
  return otherGroups(own, contours, options)
    .filter((group) => group[0] === own[0])
    .map((steps) => ({ from: 0, steps }));
}

/** Other arpeggios in the place of a later group; one with an embellishing tone is moved as it is. */
function laterGroups(line: StepLine, number: number, options: WrongOptions): Change[] {
  const from = groupStarts(line)[number]!;
  const own = groupAt(line, number);
  const embellished = (line.embellishment?.index ?? -1) >= from;
  const others = embellished
    ? [-2, -1, 1, 2].map((by) => own.map((step) => step + by))
    : otherGroups(own, [options.contour], options);
  const off = (group: readonly number[]) =>
    Math.max(...group.map((step, i) => Math.abs(step - own[i]!)));
  const fitting = others.filter((group) => (options.near ? off(group) <= 2 : off(group) >= 3));
  return (fitting.length > 0 ? fitting : others).map((steps) => ({ from, steps }));
}

function otherGroups(
  own: readonly number[],
  contours: readonly Contour[],
  options: WrongOptions,
): number[][] {
  const found = contours.flatMap((contour) =>
    DEGREES.flatMap((degree) =>
      [0, 1].flatMap((way) => groupsOf(degree, { ...options, contour }, way)),
    ),
  );
  return found.filter((group) => pathOf(group) !== pathOf(own));
}

function groupAt(line: StepLine, number: number): readonly number[] {
  const starts = groupStarts(line);
  return line.steps.slice(starts[number], starts[number + 1]);
}

/** Two single notes, neither of them the first, each another way: for a line of one arpeggio. */
function notePair({ steps }: StepLine, { near }: WrongOptions, random: Random): [Change, Change] {
  const [a, b] = random
    .shuffle(steps.map((_, index) => index).slice(1))
    .slice(0, 2)
    .toSorted((x, y) => x - y);
  const change = (index: number): Change => {
    const by = random.pick(near ? [-1, 1] : [-3, -2, 2, 3]);
    return { from: index, steps: [steps[index]! + by] };
  };
  return [change(a!), change(b!)];
}

/** The last group as it is on three other degrees: of the four in a row the right one has any place. */
function onOtherDegrees(line: StepLine, random: Random): number[][] {
  const from = groupStarts(line).at(-1)!;
  const place = random.below(4);
  const by = [0, 1, 2, 3].map((row) => row - place).filter((row) => row !== 0);
  return by.map((steps) => [
    ...line.steps.slice(0, from),
    ...line.steps.slice(from).map((step) => step + steps),
  ]);
}

/** The line's ups and downs. */
function turns(steps: readonly number[]): string {
  return steps
    .slice(1)
    .map((step, i) => Math.sign(step - steps[i]!))
    .join();
}

function isUsable({ steps }: StepLine, wrong: readonly number[][], has: HasStep): boolean {
  const rows = new Set([steps, ...wrong].map(pathOf));
  return rows.size === wrong.length + 1 && wrong.every((path) => path.every(has));
}

/** Where an instrument leaves no square: single notes moved until there are three. */
function shifted(line: StepLine, has: HasStep): number[][] {
  const found: number[][] = [];
  for (const by of [1, -1, 2, -2, 3, -3]) {
    for (let index = 1; index < line.steps.length; index++) {
      const steps = line.steps.with(index, line.steps[index]! + by);
      if (found.length < 3 && isUsable(line, [...found, steps], has)) found.push(steps);
    }
  }
  return found;
}
