import { DAY } from '../memory/day.ts';
import type { Memory } from '../memory/memory.ts';
import { recall } from '../memory/memory.ts';
import { starts } from '../memory/start.ts';
import { DEGREES } from '../theory/scale.ts';
import { itemDegree, type Item } from './item.ts';
import { shareOf } from './known.ts';
import { isLeft } from './owed.ts';
import { secondsACard } from './expectedGain.ts';
import type { Round } from './round.ts';

/** What a round came to. */
interface Summary {
  readonly cards: number;
  /** Items that were asked, and how many of them were right at the first asking. */
  readonly asked: number;
  readonly rightFirst: number;
  /** Items answered right for the first time ever; items whose recall stands higher than before. */
  readonly fresh: readonly Item[];
  readonly grown: readonly Item[];
  /** Items whose last answer was wrong: they come again. */
  readonly missed: readonly Item[];
  /** Of those the ones that were missed so often that they are left for another day. */
  readonly left: readonly Item[];
  /** Items of the deck never asked yet. */
  readonly unseen: number;
}

/** What grew in a round, and what is left to do. The memory is that after the round. */
export function summarise(round: Round, items: readonly Item[], memory: Memory): Summary {
  const byId = new Map(items.map((item) => [item.id, item]));
  const last = new Map(round.asked.map((asked) => [asked.item, asked]));
  const first = new Map(round.asked.toReversed().map((asked) => [asked.item, asked]));
  const those = (test: (id: string) => boolean) =>
    [...last.keys()].filter(test).flatMap((id) => byId.get(id) ?? []);
  return {
    cards: round.asked.length,
    asked: first.size,
    rightFirst: [...first.values()].filter(({ right }) => right).length,
    fresh: those((id) => first.get(id)!.isNew && last.get(id)!.right),
    grown: those((id) => !first.get(id)!.isNew && last.get(id)!.right),
    missed: those((id) => !last.get(id)!.right),
    left: those((id) => !last.get(id)!.right && isLeft(round, id)),
    unseen: items.filter(({ id }) => !memory.items.has(id)).length,
  };
}

/** How much of a deck is known, 0 to 1. An item never asked counts as not known. */
export interface Readiness {
  readonly overall: number;
  /** By degree, the first of them at 0; null where the deck has no item on it. */
  readonly byDegree: readonly (number | null)[];
  readonly asked: number;
  readonly of: number;
}

/** How ready someone will be at a time, tomorrow morning or on lesson day, if nothing more is asked until then. */
export function readiness(items: readonly Item[], memory: Memory, at: number): Readiness {
  const mean = (some: readonly Item[]) => shareOf(some, memory, at).recall;
  const degrees = DEGREES.map((degree) => items.filter((it) => itemDegree(it) === degree));
  return {
    overall: items.length === 0 ? 0 : mean(items),
    byDegree: degrees.map((some) => (some.length === 0 ? null : mean(some))),
    asked: items.filter(({ id }) => memory.items.has(id)).length,
    of: items.length,
  };
}

/** The items asked already that are least likely to be known at a time, the least likely first. */
export function leastSure(
  items: readonly Item[],
  memory: Memory,
  at: number,
  count: number,
): Item[] {
  return items
    .flatMap((item) => {
      const value = recall(memory, item.id, at, item.mark);
      return value === null ? [] : [{ item, value }];
    })
    .toSorted((a, b) => a.value - b.value)
    .slice(0, count)
    .map(({ item }) => item);
}

/** Recall that counts as ready. */
const READY = 0.9;

/** How often an item is asked until it is ready: one that faded; a new one that its siblings tell all of, or nothing. */
const ASKS = { faded: 1.5, told: 1.5, untold: 4.5 };

/** How often these items still have to be asked, each, until they are ready at a time: 0 for those that will be. */
function asksLeft(items: readonly Item[], memory: Memory, at: number): number[] {
  const startOf = starts(memory);
  return items.map(({ id, mark }) => {
    const value = recall(memory, id, at, mark);
    if (value === null) return ASKS.untold + (ASKS.told - ASKS.untold) * startOf(id);
    return value < READY ? ASKS.faded : 0;
  });
}

/** Seconds of practice in so many askings. */
function secondsOf(asks: readonly number[], items: readonly Item[], memory: Memory): number {
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
