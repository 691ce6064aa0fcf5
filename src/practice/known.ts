import { recall, type Memory } from '../memory/memory.ts';

/** How much of some items will be known at a moment, such as tomorrow morning, if nothing is asked until then. */
export interface Share {
  /** Their mean recall, 0 to 1; an item never asked counts as not known. */
  readonly recall: number;
  /** How many of them were ever asked, and how many they are. */
  readonly asked: number;
  readonly of: number;
}

export interface Named {
  readonly id: string;
  /** As `Item.mark`. */
  readonly mark?: number;
}

/** How much of these items is known at a time. */
export function shareOf(items: readonly Named[], memory: Memory, at: number): Share {
  let [sum, asked] = [0, 0];
  for (const { id, mark } of items) {
    const value = recall(memory, id, at, mark);
    if (value === null) continue;
    sum += value;
    asked++;
  }
  return { recall: items.length === 0 ? 0 : sum / items.length, asked, of: items.length };
}
