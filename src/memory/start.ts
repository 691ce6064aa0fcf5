import type { Memory } from './memory.ts';

/**
 * Where an item that was never asked begins: from its siblings.
 *
 * Siblings are items of one kind whose ids differ in one part only, the degree apart: the same shape in another key,
 * the same chord on another string set. A family is all siblings along one part.
 */
export interface Family {
  /** Items of it that were asked, and how many of them were right the last time. */
  items: number;
  right: number;
}

/**
 * The student's own share of first answers right counts as much as so many siblings. Of 1, 2, 4, 8, 16 and siblings
 * left out, 16 foretold the first answers of simulated students best; where practice carries over more, a whole deck
 * in another key has siblings enough to be heard.
 */
const SHARE = 16;

/** The part of an id, counted from 0, that is the degree: `spot:Bb major:2:…`. */
const DEGREE = 2;

/**
 * The expected chance of a right first answer, 0 to 1: the share of siblings whose last answer was right, to which the
 * student's share of first answers right is added as sixteen more. The first answer then replaces it.
 */
export function startOf(memory: Memory, item: string): number {
  let right = SHARE * firstShare(memory);
  let items = SHARE;
  for (const id of familiesOf(item)) {
    const family = memory.families.get(id);
    if (!family) continue;
    right += family.right;
    items += family.items;
  }
  return right / items;
}

/** The student's share of first answers right, begun as one of two. */
export function firstShare({
  firsts,
  firstsRight,
}: Pick<Memory, 'firsts' | 'firstsRight'>): number {
  return (firstsRight + 1) / (firsts + 2);
}

const families = new Map<string, readonly string[]>();

/** The id with one part after another left open, but for kind and degree. Remembered: each item is asked for it often. */
export function familiesOf(item: string): readonly string[] {
  let found = families.get(item);
  if (!found) {
    const parts = item.split(':');
    found = parts.flatMap((_, open) =>
      open === 0 || open === DEGREE ? [] : [parts.with(open, '*').join(':')],
    );
    families.set(item, found);
  }
  return found;
}
