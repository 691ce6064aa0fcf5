import { type Memory, recallOf } from './memory.ts';

/**
 * Where an item that was never asked begins: from its siblings.
 *
 * Siblings are items of one kind whose ids differ in one part only, the degree apart: the same shape in another key,
 * the same chord on another string set. The start is the mean of the siblings' recall now, to which the student's
 * share of first answers right is added twice over: one sibling moves it by a third, many carry it. The first answer
 * replaces it.
 */
export interface Starts {
  /** The expected chance of a right first answer, 0 to 1. */
  of(item: string): number;
}

const WEIGHT = 2;

/** The part of an id, counted from 0, that is the degree: `spot:Bb major:2:…`. */
const DEGREE = 2;

/** The starts of all items at a moment: one pass over what is known, then a few look-ups an item. */
export function startsAt(memory: Memory, now: number): Starts {
  const share = firstShare(memory);
  const families = new Map<string, { sum: number; count: number }>();
  for (const [id, known] of memory.items) {
    const value = recallOf(memory, known, now);
    for (const family of familiesOf(id)) {
      const entry = families.get(family);
      if (entry) {
        entry.sum += value;
        entry.count++;
      } else families.set(family, { sum: value, count: 1 });
    }
  }
  return {
    of(item) {
      let sum = WEIGHT * share;
      let count = WEIGHT;
      for (const family of familiesOf(item)) {
        const entry = families.get(family);
        if (!entry) continue;
        sum += entry.sum;
        count += entry.count;
      }
      return sum / count;
    },
  };
}

/** The student's share of first answers right, begun as one of two. */
export function firstShare({ firsts, firstsRight }: Memory): number {
  return (firstsRight + 1) / (firsts + 2);
}

/** The id with one part after another left open, but for kind and degree. */
export function familiesOf(item: string): string[] {
  const parts = item.split(':');
  const families: string[] = [];
  for (let i = 1; i < parts.length; i++) {
    if (i === DEGREE) continue;
    families.push(parts.map((part, k) => (k === i ? '*' : part)).join(':'));
  }
  return families;
}
