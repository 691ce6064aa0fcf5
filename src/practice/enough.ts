import { DAY } from '../memory/day.ts';
import type { Memory } from '../memory/memory.ts';
import { expectedGains } from './expectedGain.ts';
import type { Item } from './item.ts';
import { shareOf } from './known.ts';

/** Below this expected gain a second nothing is worth asking today. */
const WORTH = 1 / 120;

/** So much of what was asked is likely to be known: a day later, on the whole. */
const LIKELY = 0.8;

/**
 * Whether it is enough for today: nothing is worth its seconds, and what was asked is likely to be known tomorrow. Where
 * nothing helps because nothing stays, it is never enough. Show it; the student may go on.
 */
export function isEnough(
  items: readonly Item[],
  memory: Memory,
  now: number,
  lesson: number | null,
): boolean {
  const asked = items.filter(({ id }) => memory.items.has(id));
  if (shareOf(asked, memory, now + DAY).recall < LIKELY) return false;
  return expectedGains(items, memory, now, lesson).every(({ gain }) => gain < WORTH);
}
