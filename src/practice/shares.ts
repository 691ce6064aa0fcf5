import type { Memory } from '../memory/memory.ts';
import type { Pace } from '../memory/pace.ts';
import type { Place } from '../neck/place.ts';
import { median } from '../theory/timing/median.ts';
import { shareOf, type Named, type Share } from './known.ts';

/** A place of the neck, and how much is known of the items that it belongs to. */
export interface KnownPlace extends Place, Share {}

/** The same for each group of items that one thing is true of, in the order in which the groups first come. */
export function sharesBy<T extends Named>(
  items: readonly T[],
  group: (item: T) => string,
  memory: Memory,
  at: number,
): Map<string, Share> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = group(item);
    const some = groups.get(name) ?? [];
    some.push(item);
    groups.set(name, some);
  }
  return new Map([...groups].map(([name, some]) => [name, shareOf(some, memory, at)]));
}

/** Every place that belongs to one of the items, once. An item that has a place twice counts there once. */
export function placesKnown(
  items: readonly (Named & { readonly places: readonly Place[] })[],
  memory: Memory,
  at: number,
): KnownPlace[] {
  const byPlace = new Map<string, { place: Place; items: Set<Named> }>();
  for (const item of items) {
    for (const { string, fret } of item.places) {
      const key = `${string}/${fret}`;
      const there = byPlace.get(key) ?? { place: { string, fret }, items: new Set() };
      there.items.add(item);
      byPlace.set(key, there);
    }
  }
  return [...byPlace.values()].map(({ place, items: some }) => ({
    ...place,
    ...shareOf([...some], memory, at),
  }));
}

/** Fewer right answers than these tell no pace. */
const ENOUGH = 5;

/** The middle one of the seconds that right answers took lately; null where they are too few to tell. */
export function usualSeconds({ right }: Pace): number | null {
  return right.length < ENOUGH ? null : median(right.map(({ seconds }) => seconds));
}
