import { recallAfter, type Strength, strengthAfter } from '../memory/model.ts';
import { daysSince, type Memory } from '../memory/memory.ts';
import { noPace } from '../memory/pace.ts';
import { type Starts, startsAt } from '../memory/start.ts';
import type { Item } from './item.ts';

/** What asking one item now would bring. */
export interface Prospect {
  readonly item: Item;
  readonly isNew: boolean;
  /** The chance of a right answer now; for an item never asked, where it starts. */
  readonly recall: number;
  /** Expected gain in recall a week from now, for each second that asking costs. */
  readonly gain: number;
}

/** How far ahead a gain is looked for, days. */
const WEEK = 7;

/** Seconds from the answer to the next card: a glance after a right one, reading and listening after a wrong one. */
const VERDICT = { right: 2, wrong: 5 };

/**
 * What each item would bring, in the items' order:
 *
 * G = [p·R(h; S right) + (1 − p)·R(h; S wrong) − R(h; not asked)] / expected seconds, h a week from now,
 *
 * p the item's recall now. Ranking by gain per second: Eglington & Pavlik, "Optimizing practice scheduling requires
 * quantitative tracking of individual item performance", npj Science of Learning 5, 2020.
 */
export function prospects(items: readonly Item[], memory: Memory, now: number): Prospect[] {
  const starts = startsAt(memory, now);
  return items.map((item) => prospect(item, memory, starts, now));
}

const firstRight = recallAfter(strengthAfter(null, 0, 3), WEEK);
const firstWrong = recallAfter(strengthAfter(null, 0, 1), WEEK);

function prospect(item: Item, memory: Memory, starts: Starts, now: number): Prospect {
  const known = memory.items.get(item.id);
  if (!known) {
    const p = starts.of(item.id);
    const gained = p * firstRight + (1 - p) * firstWrong - p;
    return { item, isNew: true, recall: p, gain: gained / seconds(item, memory, p) };
  }
  const days = daysSince(memory, known, now);
  const p = recallAfter(known.strength, days);
  const later = (strength: Strength) => recallAfter(strength, WEEK);
  const gained =
    p * later(strengthAfter(known.strength, days, 3)) +
    (1 - p) * later(strengthAfter(known.strength, days, 1)) -
    recallAfter(known.strength, days + WEEK);
  return { item, isNew: false, recall: p, gain: gained / seconds(item, memory, p) };
}

/** The seconds that asking is expected to cost, verdict included, at a chance `p` of a right answer. */
function seconds(item: Item, memory: Memory, p: number): number {
  const cost = (memory.paces.get(item.kind) ?? noPace).seconds;
  return p * (cost.right + VERDICT.right) + (1 - p) * (cost.wrong + VERDICT.wrong);
}

/** The mean seconds of a card over these items, verdict included. */
export function secondsACard(items: readonly Item[], memory: Memory): number {
  if (items.length === 0) return 0;
  const share = memory.asked === 0 ? 0.5 : 0.8;
  return items.reduce((sum, item) => sum + seconds(item, memory, share), 0) / items.length;
}

/** The chance that the item would be answered right at a time; one never asked begins from its siblings. */
export function expected(memory: Memory, starts: Starts, item: Item, at: number): number {
  const known = memory.items.get(item.id);
  return known ? recallAfter(known.strength, daysSince(memory, known, at)) : starts.of(item.id);
}
