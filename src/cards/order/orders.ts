import type { Outlined } from '../excerpt/excerpt.ts';

/** So many are offered. */
export const OFFERED = 4;

/** Groups in an order, and the degrees that they come in: `2 5 1`. */
export interface Order {
  readonly answer: string;
  readonly groups: readonly Outlined[];
}

/** All orders that groups could come in, as their degrees tell them apart; the one they do come in first. */
export function orders(groups: readonly Outlined[]): Order[] {
  const found = new Map<string, Order>();
  for (const some of permutations(groups)) {
    const answer = some.map(({ chord }) => chord.degree).join(' ');
    if (!found.has(answer)) found.set(answer, { answer, groups: some });
  }
  return [...found.values()];
}

function permutations<T>(all: readonly T[]): T[][] {
  if (all.length === 0) return [[]];
  return all.flatMap((one, i) => permutations(all.toSpliced(i, 1)).map((rest) => [one, ...rest]));
}

/** In how many places another arpeggio comes. */
export function apart(a: Order, b: Order): number {
  return a.groups.filter(({ chord }, i) => chord.degree !== b.groups[i]!.chord.degree).length;
}
