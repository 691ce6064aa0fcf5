import { daysSince, type Memory } from '../memory/memory.ts';
import { type Outlook, outlook, recallAfter, strengthAfter } from '../memory/model.ts';
import { noPace } from '../memory/pace.ts';
import { firstShare, startOf } from '../memory/start.ts';
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
  return items.map((item) => {
    const known = memory.items.get(item.id);
    const ahead = known
      ? outlook(known.strength, daysSince(memory, known, now), WEEK)
      : firstOutlook(startOf(memory, item.id));
    const { recall } = ahead;
    const gained = recall * ahead.right + (1 - recall) * ahead.wrong - ahead.unasked;
    return { item, isNew: !known, recall, gain: gained / seconds(item, memory, recall) };
  });
}

const right = recallAfter(strengthAfter(null, 0, 3), WEEK);
const wrong = recallAfter(strengthAfter(null, 0, 1), WEEK);

/** What is not known yet is not forgotten either: unasked it stays where it starts. */
function firstOutlook(start: number): Outlook {
  return { recall: start, right, wrong, unasked: start };
}

/** The seconds that asking is expected to cost, verdict included, at a chance `p` of a right answer. */
function seconds(item: Item, memory: Memory, p: number): number {
  const cost = (memory.paces.get(item.kind) ?? noPace).seconds;
  return p * (cost.right + VERDICT.right) + (1 - p) * (cost.wrong + VERDICT.wrong);
}

/** The mean seconds of a card over these items, verdict included. */
export function secondsACard(items: readonly Item[], memory: Memory): number {
  if (items.length === 0) return 0;
  const share = firstShare(memory);
  return items.reduce((sum, item) => sum + seconds(item, memory, share), 0) / items.length;
}
