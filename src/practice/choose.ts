import { kindOf } from '../decks/id.ts';
import { seedAt } from '../theory/random.ts';
import type { Item } from './item.ts';
import type { ExpectedGain } from './expectedGain.ts';
import type { Round } from './round.ts';

/** A missed item is asked once more, this many cards later at the earliest. */
const REST = 12;

/**
 * The item to ask next: of those that may be asked the one that brings most; null where the round has asked all.
 *
 * An item is asked once a round, a missed one once more after a rest. Never the same degree or string set twice
 * running, and all kinds of the deck mixed (Brunmair & Richter 2019); of each kind new items in the order of the
 * deck's drills, as the teacher put them. Where nothing is left under these, the last ones are let go first: a deck on
 * one string set is asked too. A contrast goes before everything. Of several that bring the same, as new ones often do,
 * the first drill has its turn, and in it the round's seed draws one: in the order of their degrees an answer could be
 * counted out.
 */
export function choose(round: Round, ranked: readonly ExpectedGain[]): ExpectedGain | null {
  const wanted = round.contrast[0];
  const contrast = wanted === undefined ? undefined : ranked.find(({ item }) => item.id === wanted);
  if (contrast) return contrast;

  const open = ranked.filter(isOpen(round));
  const last = round.asked.at(-1);
  const before = last && ranked.find(({ item }) => item.id === last.item)?.item;
  const rules: ((expected: ExpectedGain) => boolean)[] = [
    ({ item }) => item.degree !== before?.degree,
    mixed(round, open),
    inTurn(open),
    ({ item }) => item.strings === '' || item.strings !== before?.strings,
  ];
  const draw = seedAt(round.seed, round.asked.length);
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
  return best;
}

function drillOf({ drill = 0 }: Item): number {
  return drill;
}

/** How many cards more one kind may have had than another. */
const AHEAD = 2;

/** Whether its kind has not had more than its share of the round, of the kinds that have something left to ask. */
function mixed(round: Round, open: readonly ExpectedGain[]): (expected: ExpectedGain) => boolean {
  const counts = new Map<string, number>();
  for (const { item } of open) counts.set(item.kind, 0);
  for (const { item } of round.asked) {
    const count = counts.get(kindOf(item));
    if (count !== undefined) counts.set(kindOf(item), count + 1);
  }
  const least = Math.min(...counts.values());
  return ({ item }) => counts.get(item.kind)! < least + AHEAD;
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

/** Whether the round may still ask it. */
function isOpen(round: Round): (expected: ExpectedGain) => boolean {
  const times = new Map<string, number>();
  const rested = new Set<string>();
  round.asked.forEach(({ item, right }, k) => {
    times.set(item, (times.get(item) ?? 0) + 1);
    if (!right && round.asked.length - k > REST) rested.add(item);
  });
  return ({ item }) => {
    const asked = times.get(item.id) ?? 0;
    return asked === 0 || (asked === 1 && rested.has(item.id));
  };
}
