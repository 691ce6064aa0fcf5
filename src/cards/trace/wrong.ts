import type { Random } from '../../theory/random.ts';
import { degreeOfStep } from '../../theory/scale.ts';
import { groupStarts, pathOf, type Line } from './line.ts';

/** Whether the instrument has a scale step, so that a path over it can be sounded. */
export type HasStep = (step: number) => boolean;

/** Wrong paths near to a line: its contour from another degree, one note off, the arpeggio that shares two notes. */
export function nearPaths(line: Line, random: Random, has: HasStep): number[][] {
  return pickDistinct(line, has, [
    ...random
      .shuffle([-1, 1, -2, 2])
      .slice(0, 1)
      .map((by) => line.steps.map((step) => step + by)),
    oneOff(line, random),
    ...random.shuffle([sharing(line, 0, -1), sharing(line, 4, 1)]),
    ...[3, -3, 1, -1, 2].map((by) => line.steps.map((step) => step + by)),
    ...[1, -1].flatMap((by) => eachOff(line, by)),
  ]);
}

/**
 * Wrong paths far from a line: it turned upside down, turned round, and moved by a fourth with its end bent; an octave
 * away where the instrument has them only there.
 */
export function farPaths(line: Line, random: Random, has: HasStep): number[][] {
  const first = line.steps[0]!;
  const mirrored = line.steps.map((step) => 2 * first - step);
  const turned = line.steps.toReversed();
  const starts = groupStarts(line);
  const endsGroup = (index: number) =>
    index === line.steps.length - 1 || starts.includes(index + 1);
  const bent = (by: number) =>
    line.steps.map((step, index) => step + by + (endsGroup(index) ? 3 : 0));
  const all = [
    ...random.shuffle([3, -3, 4]).map((by) => mirrored.map((step) => step + by)),
    ...random.shuffle([bent(3), bent(-2), turned.map((step) => step + 1)]),
    ...[1, 2, -1, -2].map(bent),
    ...[3, -3, 2, -2].flatMap((by) => eachOff(line, by)),
  ];
  return pickDistinct(
    line,
    has,
    all.map((steps) => octaveOf(steps, has)),
  );
}

/** One note moved by a step, neither the first, which a singer holds on to, nor all of a repeated one. */
function oneOff({ steps }: Line, random: Random): number[] {
  const index = 1 + random.below(steps.length - 1);
  const by = random.pick([-1, 1]);
  return steps.map((step, i) => (i === index ? step + by : step));
}

/** The first group's root a step lower, or its fifth a step higher: a triad that keeps the two other notes. */
function sharing(line: Line, member: number, by: number): number[] {
  const root = line.degrees[0]! - 1;
  const end = groupStarts(line)[1] ?? line.steps.length;
  return line.steps.map((step, index) =>
    index < end && degreeOfStep(step) === degreeOfStep(root + member) ? step + by : step,
  );
}

/** The line with one note moved by so many steps: each but the first in its turn. */
function eachOff({ steps }: Line, by: number): number[][] {
  return steps.slice(1).map((step, i) => steps.with(i + 1, step + by));
}

/** Steps as they are, or an octave lower or higher where the instrument has them all only there. */
function octaveOf(steps: number[], has: HasStep): number[] {
  const octaves = [0, -7, 7].map((by) => steps.map((step) => step + by));
  return octaves.find((moved) => moved.every(has)) ?? steps;
}

/** The first three that the instrument has and whose rows of degrees differ from the right one and from each other. */
function pickDistinct(line: Line, has: HasStep, candidates: readonly number[][]): number[][] {
  const rows = new Set([pathOf(line.steps)]);
  const picked: number[][] = [];
  for (const steps of candidates) {
    if (picked.length === 3 || !steps.every(has) || rows.has(pathOf(steps))) continue;
    rows.add(pathOf(steps));
    picked.push(steps);
  }
  return picked;
}
