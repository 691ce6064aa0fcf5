import { isConfusing, type ConfusingKind } from '../decks/kinds.ts';
import type { Memory } from '../memory/memory.ts';
import type { Size } from '../theory/chord.ts';
import type { Item } from './item.ts';
import { degreeAnswered } from './degreeAnswered.ts';

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
