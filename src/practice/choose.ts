import type { Memory } from '../memory/memory.ts';
import { seedAt } from '../theory/random.ts';
import { type ExpectedGain, expectedGains } from './expectedGain.ts';
import { itemDegree, type Item } from './item.ts';
import { cardsBehind, lastItem, type Round, secondsLeft } from './round.ts';

/** From so many items that were never right on, and no fewer than were, nothing new is begun: the same come again. */
const LOST = 8;

/** So many items has the first round of a beginner; fewer where it is short, of so many minutes at most. */
const FIRST = { items: 8, fewer: 6, short: 3 };

/** What is new is shown only while so many seconds are left to ask it in. */
const TO_ASK = 40;

/**
 * The item to ask next: of those that may be asked the one that brings most; null where the round has asked all.
 *
 * Items are asked once a round; what comes again is another matter (owed.ts). Never the same degree or string set twice
 * running, and the kinds of the deck by turns (Brunmair & Richter 2019): a mean over all items is easily had by starving
 * the kind that takes longest. Of each kind new items in the order of the deck's drills, as the teacher put them. Where
 * nothing is left under these, the last ones are let go first: a deck on one string set is asked too. Of several that
 * bring the same, as new ones often do, the first drill has its turn, and in it the round's seed draws one: in the order
 * of their degrees an answer could be counted out.
 */
export function choose(
  round: Round,
  items: readonly Item[],
  memory: Memory,
  now: number,
): Item | null {
  const open = openTo(round, expectedGains(items, memory, now, round.lesson), memory);
  const before = lastItem(round, items);
  const rules: ((expected: ExpectedGain) => boolean)[] = [
    ({ item }) => !before || itemDegree(item) === null || itemDegree(item) !== itemDegree(before),
    mixed(round, items, open),
    inTurn(open),
    ({ item }) => item.strings === '' || item.strings !== before?.strings,
  ];
  const draw = seedAt(round.seed, cardsBehind(round));
  let [best, most, lot]: [ExpectedGain | null, number, number] = [null, -1, 0];
  open.forEach((one, k) => {
    const drawn = seedAt(draw, k);
    const more =
      best === null ||
      (one.gain - best.gain || drillOf(best.item) - drillOf(one.item) || drawn - lot) > 0;
    // Of ten thousand almost all: their rules need not be asked.
    if (most === rules.length && !more) return;
    const broken = rules.findIndex((rule) => !rule(one));
    const kept = broken < 0 ? rules.length : broken;
    if (kept > most || (kept === most && more)) [best, most, lot] = [one, kept, drawn];
  });
  return (best as ExpectedGain | null)?.item ?? null;
}

/** What the round may still ask: nothing twice, and nothing new where there is no room for it. */
function openTo(round: Round, all: readonly ExpectedGain[], memory: Memory): ExpectedGain[] {
  const came = new Set([...round.asked, ...round.met, ...round.owed].map(({ item }) => item));
  const hasTime = !round.meets || (secondsLeft(round) ?? Infinity) > TO_ASK;
  const isFirst = memory.asked <= round.asked.length;
  const hasRoom = isFirst ? came.size < firstItems(round) : !isLost(round, all, memory);
  const mayBegin = hasTime && hasRoom;
  return all.filter(
    ({ item, isNew }) => !came.has(item.id) && (!isNew || (mayBegin && isNext(item, memory))),
  );
}

/** Whether what comes before it is known: was right the last time. */
function isNext({ after }: Item, { items }: Memory): boolean {
  return after === undefined || items.get(after)?.lastRight === true;
}

function firstItems({ goal }: Round): number {
  if (goal !== 'enough' && 'cards' in goal) return Math.min(goal.cards, FIRST.items);
  const isShort = goal !== 'enough' && 'minutes' in goal && goal.minutes <= FIRST.short;
  return isShort ? FIRST.fewer : FIRST.items;
}

/** Whether most of what was begun was never right. */
function isLost(round: Round, all: readonly ExpectedGain[], memory: Memory): boolean {
  const met = round.met.filter(({ item }) => !memory.items.has(item)).length;
  const asked = all.filter(({ isNew }) => !isNew);
  const never = asked.filter(({ item }) => memory.items.get(item.id)!.right === 0).length;
  return met + never >= LOST && 2 * never >= asked.length;
}

function drillOf({ drill = 0 }: Item): number {
  return drill;
}

/** Whether its kind has had no more cards of the round than any other that has something left to ask. */
function mixed(
  round: Round,
  items: readonly Item[],
  open: readonly ExpectedGain[],
): (expected: ExpectedGain) => boolean {
  const counts = new Map<string, number>();
  for (const { item } of open) counts.set(item.kind, 0);
  const kinds = new Map(items.map(({ id, kind }) => [id, kind]));
  for (const { item } of round.asked) {
    const kind = kinds.get(item);
    const count = kind && counts.get(kind);
    if (count !== undefined) counts.set(kind!, Number(count) + 1);
  }
  const least = Math.min(...counts.values());
  return ({ item }) => counts.get(item.kind) === least;
}

/** Whether it was asked before, or is from the first drill of its kind that has something new. */
function inTurn(open: readonly ExpectedGain[]): (expected: ExpectedGain) => boolean {
  const first = new Map<string, number>();
  for (const { item, isNew } of open) {
    if (!isNew) continue;
    const drill = drillOf(item);
    first.set(item.kind, Math.min(drill, first.get(item.kind) ?? drill));
  }
  return ({ item, isNew }) => !isNew || drillOf(item) === first.get(item.kind);
}
