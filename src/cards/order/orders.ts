import type { Random } from '../../theory/random.ts';
import type { Outlined } from '../excerpt/excerpt.ts';

/** So many are offered. */
export const OFFERED = 4;

/** Groups in an order, and the degrees that they come in: `2 5 1`. */
export interface Order {
  readonly answer: string;
  readonly groups: readonly Outlined[];
}

const found = new WeakMap<readonly Outlined[], readonly Order[]>();

/** All orders that groups could come in, as their degrees tell them apart; the one they do come in first. */
export function orders(groups: readonly Outlined[]): readonly Order[] {
  let all = found.get(groups);
  if (!all) found.set(groups, (all = inAllOrders(groups)));
  return all;
}

function inAllOrders(groups: readonly Outlined[]): Order[] {
  const byAnswer = new Map<string, Order>();
  for (const some of permutations(groups)) {
    const answer = some.map(({ chord }) => chord.degree).join(' ');
    if (!byAnswer.has(answer)) byAnswer.set(answer, { answer, groups: some });
  }
  return [...byAnswer.values()];
}

function permutations<T>(all: readonly T[]): T[][] {
  if (all.length === 0) return [[]];
  return all.flatMap((one, i) => permutations(all.toSpliced(i, 1)).map((rest) => [one, ...rest]));
}

/**
 * Four orders with the right one among them, that look alike from each of them: none is the common ancestor or the odd
 * one. Of such sets one that begins with the same arpeggio as often as can be; which of the best is drawn.
 */
export function offered(all: readonly Order[], random: Random): readonly Order[] {
  return random.pick(bestSets(all));
}

const known = new WeakMap<readonly Order[], readonly (readonly Order[])[]>();

/** The sets that cost least: of five arpeggios the best of 270,000, so reckoned once for all cards that are drawn of them. */
function bestSets(all: readonly Order[]): readonly (readonly Order[])[] {
  let best = known.get(all);
  if (!best) {
    const [right, ...others] = all;
    const scored = threes(others).map((three) => {
      const set = [right!, ...three];
      return { set, cost: cost(set) };
    });
    const least = scored.reduce((low, one) => Math.min(low, one.cost), Infinity);
    best = scored.flatMap((one) => (one.cost === least ? [one.set] : []));
    known.set(all, best);
  }
  return best;
}

/** Unevenness, and beginnings that differ from the right one's. Of four arpeggios or fewer some sets are even. */
function cost(set: readonly Order[]): number {
  const sums = set.map((one) => set.reduce((sum, other) => sum + apart(one, other), 0));
  const uneven = Math.max(...sums) - Math.min(...sums);
  return uneven + set.filter((one) => firstDegree(one) !== firstDegree(set[0]!)).length;
}

const firstDegree = ({ groups }: Order) => groups[0]!.chord.degree;

/** All ways to take three. */
function threes<T>(of: readonly T[]): T[][] {
  return of.flatMap((a, i) =>
    of.slice(i + 1).flatMap((b, j) => of.slice(i + j + 2).map((c) => [a, b, c])),
  );
}

/** In how many places another arpeggio comes. */
function apart(a: Order, b: Order): number {
  return a.groups.filter(({ chord }, i) => chord.degree !== b.groups[i]!.chord.degree).length;
}
