import type { KindName } from '../decks/deck.ts';
import { chanceAt, depthAt, doubtOf, easeOf } from '../memory/imprint.ts';
import type { Memory } from '../memory/memory.ts';
import { noPace } from '../memory/pace.ts';
import { firstShare, starts } from '../memory/start.ts';
import type { Item } from './item.ts';
import { activationsOf } from './activationTable.ts';

/** What asking one item now would bring. */
export interface ExpectedGain {
  readonly item: Item;
  readonly isNew: boolean;
  /** Expected gain, in chances of knowing it at both aims together, for each second that asking costs. */
  readonly gain: number;
}

/** Seconds from the answer to the next card: a glance after a right one, reading and listening after a wrong one. */
const VERDICT = { right: 2, wrong: 5 };

/**
 * How much of what its siblings tell of an item never asked counts. In full it cost simulated students up to .7 points
 * at 4 minutes a day, for not being asked what they only seemed to know; half of it cost nothing.
 */
const TOLD = 0.5;

/**
 * What each item would bring, in the items' order:
 *
 * Σ [p(a(T) + depth · what an imprint laid now has left at T) − p(a(T))] / expected seconds, T the two aims,
 *
 * a the item's activation and p the chance of knowing it at one. Of an item never asked so much less is gained as its
 * siblings tell that it is known already. Ranking by gain per second: Eglington & Pavlik,
 * "Optimizing practice scheduling requires quantitative tracking of individual item performance", npj Science of
 * Learning 5, 2020.
 */
export function expectedGains(items: readonly Item[], memory: Memory, now: number): ExpectedGain[] {
  const table = activationsOf(items, memory, now + memory.shift);
  const { known, easeMean, easeVariance, present, soon, soonFresh, late, lateFresh } = table;
  const costs = costsOf(memory);
  const startOf = starts(memory);
  return items.map((item, k) => {
    const ease = easeOf(memory.ease, easeMean[k]!, easeVariance[k]!, item.mark);
    const doubt = doubtOf(memory.ease, easeVariance[k]!);
    const p = chanceAt(present[k]!, ease, doubt);
    const depth = depthAt(p);
    const gained =
      chanceAt(soon[k]! + Math.log(1 + depth * soonFresh[k]!), ease, doubt) -
      chanceAt(soon[k]!, ease, doubt) +
      chanceAt(late[k]! + Math.log(1 + depth * lateFresh[k]!), ease, doubt) -
      chanceAt(late[k]!, ease, doubt);
    if (known[k]) return { item, isNew: false, gain: gained / costs(item.kind, p) };
    const start = startOf(item.id);
    return { item, isNew: true, gain: (gained * (1 - TOLD * start)) / costs(item.kind, start) };
  });
}

/** The seconds that asking a kind of card is expected to cost, verdict included, at a chance `p` of a right answer. */
function costsOf({ paces }: Memory): (kind: KindName, p: number) => number {
  return (kind, p) => {
    const { right, wrong } = (paces.get(kind) ?? noPace).seconds;
    return p * (right + VERDICT.right) + (1 - p) * (wrong + VERDICT.wrong);
  };
}

/** The mean seconds of a card over these items, verdict included. */
export function secondsACard(items: readonly Item[], memory: Memory): number {
  if (items.length === 0) return 0;
  const costs = costsOf(memory);
  const share = firstShare(memory);
  return items.reduce((sum, { kind }) => sum + costs(kind, share), 0) / items.length;
}
