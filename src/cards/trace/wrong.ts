import type { Random } from '../../theory/random.ts';
import { degreeOfStep } from '../../theory/scale.ts';
import { groupStarts, pathOf, type Line } from './line.ts';

/** Wrong paths near to a line: its contour from another degree, one note off, the arpeggio that shares two notes. */
export function nearPaths(line: Line, random: Random): number[][] {
  return pickDistinct(line, [
    ...random
      .shuffle([-1, 1, -2, 2])
      .slice(0, 1)
      .map((by) => line.steps.map((step) => step + by)),
    oneOff(line, random),
    ...random.shuffle([sharing(line, 0, -1), sharing(line, 4, 1)]),
    ...[3, -3, 1, -1, 2].map((by) => line.steps.map((step) => step + by)),
  ]);
}

/** Wrong paths far from a line: it turned upside down, turned round, and moved by a fourth with its end bent. */
export function farPaths(line: Line, random: Random): number[][] {
  const first = line.steps[0]!;
  const mirrored = line.steps.map((step) => 2 * first - step);
  const turned = line.steps.toReversed();
  const starts = groupStarts(line);
  const endsGroup = (index: number) =>
    index === line.steps.length - 1 || starts.includes(index + 1);
  const bent = (by: number) =>
    line.steps.map((step, index) => step + by + (endsGroup(index) ? 3 : 0));
  return pickDistinct(line, [
    ...random.shuffle([3, -3, 4]).map((by) => mirrored.map((step) => step + by)),
    ...random.shuffle([bent(3), bent(-2), turned.map((step) => step + 1)]),
    ...[1, 2, -1, -2].map(bent),
  ]);
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

/** The first three whose rows of degrees differ from the right one and from each other. */
function pickDistinct(line: Line, candidates: readonly number[][]): number[][] {
  const rows = new Set([pathOf(line.steps)]);
  const picked: number[][] = [];
  for (const steps of candidates) {
    if (picked.length === 3 || rows.has(pathOf(steps))) continue;
    rows.add(pathOf(steps));
    picked.push(steps);
  }
  return picked;
}
