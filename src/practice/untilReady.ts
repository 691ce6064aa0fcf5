import { DAY } from '../memory/day.ts';
import type { Memory } from '../memory/memory.ts';
import { recall } from '../memory/memory.ts';
import { starts } from '../memory/start.ts';
import { type Item } from './item.ts';
import { secondsACard } from './expectedGain.ts';

/** Recall that counts as ready. */
const READY = 0.9;

/** How often an item is asked until it is ready: one that faded; a new one that its siblings tell all of, or nothing. */
const ASKS = { faded: 1.5, told: 1.5, untold: 4.5 };

/** How often these items still have to be asked, each, until they are ready at a time: 0 for those that will be. */
export function asksLeft(items: readonly Item[], memory: Memory, at: number): number[] {
  const startOf = starts(memory);
  return items.map(({ id, mark }) => {
    const value = recall(memory, id, at, mark);
    if (value === null) return ASKS.untold + (ASKS.told - ASKS.untold) * startOf(id);
    return value < READY ? ASKS.faded : 0;
  });
}

/** Seconds of practice in so many askings. */
export function secondsOf(asks: readonly number[], items: readonly Item[], memory: Memory): number {
  return asks.reduce((sum, each) => sum + each, 0) * secondsACard(items, memory);
}

/**
 * About how many minutes a day until the next lesson (a week from now where its day is not known) make a deck ready:
 * a rule of thumb, from the cards still to ask and what a card costs this student. 0 where nothing is to do.
 *
 * @param lesson when the next lesson is, ms, or null
 */
export function minutesADay(
  items: readonly Item[],
  memory: Memory,
  now: number,
  lesson: number | null,
): number {
  const until = lesson !== null && lesson > now ? lesson : now + 7 * DAY;
  const days = Math.max(1, Math.ceil((until - now) / DAY));
  const asks = asksLeft(items, memory, until);
  return Math.ceil(secondsOf(asks, items, memory) / 60 / days);
}
