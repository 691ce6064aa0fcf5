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
 * The degree that a wrong answer stands for: itself, or of a path the one whose arpeggio its first three notes walk.
 * Null where those are no arpeggio of the size, or could be more than one, as two notes a third apart.
 */
export function degreeAnswered(answer: string, size: Size): number | null {
  const degrees = answer.split(' ').map(Number);
  if (degrees.length === 1) return degrees[0]!;
  const members = Array.from({ length: memberCount(size) }, (_, third) => (2 * third) % 7);
  const fits = DEGREES.filter((root) => {
    const above = degrees.slice(0, 3).map((degree) => (degree - root + 7) % 7);
    // Of chords larger than triads a phrase sounds the highest member: without it they would not be told apart.
    const telling = size === 'triad' || above.includes(members.at(-1)!);
    return telling && above.every((member) => members.includes(member));
  });
  return fits.length === 1 ? fits[0]! : null;
}
