import type { Memory } from '../memory/memory.ts';
import { recall } from '../memory/memory.ts';
import { DEGREES } from '../theory/scale.ts';
import { itemDegree, type Item } from './item.ts';
import { shareOf } from './known.ts';

/** How much of a deck is known, 0 to 1. An item never asked counts as not known. */
export interface Readiness {
  readonly overall: number;
  /** By degree, the first of them at 0; null where the deck has no item on it. */
  readonly byDegree: readonly (number | null)[];
  readonly asked: number;
  readonly of: number;
}

/** How ready someone will be at a time, tomorrow morning or on lesson day, if nothing more is asked until then. */
export function readiness(items: readonly Item[], memory: Memory, at: number): Readiness {
  const mean = (some: readonly Item[]) => shareOf(some, memory, at).recall;
  const degrees = DEGREES.map((degree) => items.filter((it) => itemDegree(it) === degree));
  return {
    overall: items.length === 0 ? 0 : mean(items),
    byDegree: degrees.map((some) => (some.length === 0 ? null : mean(some))),
    asked: items.filter(({ id }) => memory.items.has(id)).length,
    of: items.length,
  };
}

/** The items asked already that are least likely to be known at a time, the least likely first. */
export function leastSure(
  items: readonly Item[],
  memory: Memory,
  at: number,
  count: number,
): Item[] {
  return items
    .flatMap((item) => {
      const value = recall(memory, item.id, at, item.mark);
      return value === null ? [] : [{ item, value }];
    })
    .toSorted((a, b) => a.value - b.value)
    .slice(0, count)
    .map(({ item }) => item);
}
