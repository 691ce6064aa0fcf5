import { isConfusing, type ConfusingKind } from '../decks/kinds.ts';
import type { Memory } from '../memory/memory.ts';
import { memberCount, type Size } from '../theory/chord.ts';
import { DEGREES } from '../theory/scale.ts';
import type { Item } from './item.ts';

/** One arpeggio taken for another of the same size, in one kind of card. */
export interface Confusion {
  readonly kind: ConfusingKind;
  readonly size: Size;
  /** The degree that was asked, and the one that was answered. */
  readonly degree: number;
  readonly takenFor: number;
  readonly times: number;
}

/** What was taken for what over all these items, the most frequent first. */
export function confusions(items: readonly Item[], memory: Memory): Confusion[] {
  const found = new Map<string, Confusion>();
  for (const { id, kind, degree, size } of items) {
    if (!isConfusing(kind)) continue;
    for (const [answer, times] of memory.items.get(id)?.takenFor ?? []) {
      const takenFor = degreeAnswered(answer, size);
      if (takenFor === null || takenFor === degree) continue;
      const key = [kind, size, degree, takenFor].join();
      const before = found.get(key)?.times ?? 0;
      found.set(key, { kind, size, degree, takenFor, times: before + times });
    }
  }
  return [...found.values()].toSorted(
    (a, b) => b.times - a.times || a.degree - b.degree || a.takenFor - b.takenFor,
  );
}

/**
 * The degree that a wrong answer stands for: itself, or of a path the one whose arpeggio its first notes walk: three of
 * them, of chords larger than a seventh six or four. Null where those are no arpeggio of the size, or could be more than
 * one, as two notes a third apart.
 */
export function degreeAnswered(answer: string, size: Size): number | null {
  const degrees = answer.split(' ').map(Number);
  if (degrees.length === 1) return degrees[0]!;
  const lengths = memberCount(size) > 4 ? [6, 4] : [3];
  const found = lengths.map((length) => rootsOf(degrees.slice(0, length), size));
  return found.find((roots) => roots.length === 1)?.[0] ?? null;
}

/** The degrees on which an arpeggio of the size holds all these degrees, its highest member among them. */
function rootsOf(degrees: readonly number[], size: Size): number[] {
  const members = Array.from({ length: memberCount(size) }, (_, third) => (2 * third) % 7);
  return DEGREES.filter((root) => {
    const above = degrees.map((degree) => (degree - root + 7) % 7);
    // Of chords larger than triads a phrase sounds the highest member: without it they would not be told apart.
    const telling = size === 'triad' || above.includes(members.at(-1)!);
    const rooted = members.length <= 4 || above.includes(0);
    return telling && rooted && above.every((member) => members.includes(member));
  });
}
