import type { KindName } from '../decks/deck.ts';
import { DAY } from '../memory/day.ts';
import { meanOver } from '../memory/forgetting.ts';
import { depthAt, easeOf, levelAt, logistic } from '../memory/imprint.ts';
import type { Memory } from '../memory/memory.ts';
import { noPace } from '../memory/pace.ts';
import { firstShare } from '../memory/start.ts';
import { activationsOf } from './activationTable.ts';
import type { Item } from './item.ts';

/** What asking one item now would bring. */
export interface ExpectedGain {
  readonly item: Item;
  readonly isNew: boolean;
  /** Expected gain, in chances of knowing it at both aims together, for each second that asking costs. */
  readonly gain: number;
}

/** Seconds from the answer to the next card: a glance after a right one, reading and listening after a wrong one. */
export const VERDICT = { right: 2, wrong: 5 };

/** What is new is shown first, and then mostly answered right. */
export const AFTER_SHOWING = 0.7;

/**
 * What is new counts by so much, in each way of forgetting: where a thing is had or not had, and stays the longer the
 * more often it came back, what was begun is better made sure first; where things fade on many scales, it is the other way.
 */
const NEW = [1, 1.5, 0.3];

/** The week between lessons, and how near a lesson is an aim: whatever is asked on its eve is known on its day. */
const [WEEK, NEAREST] = [7 * DAY, DAY];

/**
 * What each item would bring, in the items' order:
 *
 * Σ [p(a(T) + depth · what an imprint laid now has left at T) − p(a(T))] / expected seconds,
 *
 * T the next lesson (a week from now where its day is not known) and a week after it, a the item's activation and p the
 * chance of knowing it at one. Ranking by gain per second: Eglington & Pavlik, "Optimizing practice scheduling requires
 * quantitative tracking of individual item performance", npj Science of Learning 5, 2020. What answers have corrected of
 * the chances that are shown is left out: in simulation it cost up to 2.7 points, for it is learned from few.
 */
export function expectedGains(
  items: readonly Item[],
  memory: Memory,
  now: number,
  lesson: number | null,
): ExpectedGain[] {
  const here = now + memory.shift;
  const first = Math.max(here + NEAREST, (lesson ?? now + WEEK) + memory.shift);
  const table = activationsOf(items, memory, [first, first + WEEK], here);
  const { known, easeMean, easeVariance, present, atAims, fresh } = table;
  const costs = costsOf(memory);
  const newness = Math.exp(meanOver(memory.leanings, (way) => Math.log(NEW[way]!)));
  const own = { mean: 0, variance: 0 };
  return items.map((item, k) => {
    [own.mean, own.variance] = [easeMean[k]!, easeVariance[k]!];
    const ease = easeOf(memory.ease, own, item.mark);
    const chance = (active: number) => logistic(levelAt(active, ease, memory.ease, own));
    const p = chance(present[k]!);
    const depth = depthAt(p);
    let gained = 0;
    atAims.forEach((row, i) => {
      gained += chance(row[k]! + depth * fresh[i]![k]!) - chance(row[k]!);
    });
    const isNew = known[k] === undefined;
    const gain = isNew
      ? (newness * gained) / costs(item.kind, AFTER_SHOWING)
      : gained / costs(item.kind, p);
    return { item, isNew, gain };
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
