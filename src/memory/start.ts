import { openings } from '../decks/id.ts';
import type { Memory } from './memory.ts';

/**
 * Where an item that was never asked begins: from its siblings.
 *
 * Siblings are items of one kind whose ids differ in one part only, the degree apart: the same shape in another key,
 * the same chord on another string set. A family is all siblings along one part.
 */
interface Family {
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

/**
 * The expected chance of a right first answer to an item, 0 to 1: the share of siblings whose last answer was right, to
 * which the student's share of first answers right is added as sixteen more. The first answer then replaces it.
 */
export function starts(memory: Memory): (item: string) => number {
  let known: Map<string, Family> | undefined;
  const share = SHARE * firstShare(memory);
  return (item) => {
    known ??= familiesIn(memory);
    let [right, items] = [share, SHARE];
    for (const id of familiesOf(item)) {
      const family = known.get(id);
      if (!family) continue;
      right += family.right;
      items += family.items;
    }
    return right / items;
  };
}

function familiesIn({ items }: Memory): Map<string, Family> {
  const found = new Map<string, Family>();
  for (const [item, { lastRight }] of items) {
    for (const id of familiesOf(item)) {
      let family = found.get(id);
      if (!family) found.set(id, (family = { items: 0, right: 0 }));
      family.items++;
      if (lastRight) family.right++;
    }
  }
  return found;
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
  if (!found) families.set(item, (found = openings(item)));
  return found;
}
