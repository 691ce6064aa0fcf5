import { DAY } from '../memory/day.ts';
import type { Memory } from '../memory/memory.ts';
import type { Item } from './item.ts';
import { asksLeft, secondsOf } from './untilReady.ts';

/** Days that something new takes at least: an item is asked once a round, and gaps of a day are what makes it stay. */
const LEAST_DAYS = 5;

/** While one learns for so many days, what was learned first fades by as much again as all of it took. */
const FADING = 25;

/**
 * About how many days make a deck ready at so many minutes a day, every day: those that all askings of `minutesADay`
 * take, and for what fades meanwhile `days / 25` as many again; no fewer than five where anything is new. 0 where
 * nothing is to do.
 *
 * A rule of thumb. Against rounds of eight minutes with a simulated student who forgets by a power law, and decks of 28
 * to 162 items, it was at most a third off the day on which .85 would be known a week ahead. It does not know how hard
 * the deck is for this student, and of days without practice only what has faded by now.
 */
export function daysUntilKnown(
  items: readonly Item[],
  memory: Memory,
  now: number,
  minutes: number,
): number {
  const asks = asksLeft(items, memory, now + 7 * DAY);
  const days = secondsOf(asks, items, memory) / 60 / minutes;
  const isNew = items.some(({ id }) => !memory.items.has(id));
  return Math.ceil(Math.max(isNew ? LEAST_DAYS : 0, days * (1 + days / FADING)));
}
