import type { KindName } from '../decks/deck.ts';
import { activation, chances, depthAt, freshly, type Imprints, OWN } from '../memory/imprint.ts';
import type { Known, Memory } from '../memory/memory.ts';
import { DAY } from '../memory/model.ts';
import { noPace } from '../memory/pace.ts';
import { firstShare } from '../memory/start.ts';
import type { Item } from './item.ts';

/** What asking one item now would bring. */
export interface Prospect {
  readonly item: Item;
  readonly isNew: boolean;
  /** Expected gain, in chances of knowing it at both aims together, for each second that asking costs. */
  readonly gain: number;
}

/**
 * How far ahead a gain is looked for: soon, and later. In simulation the nearer aim alone neglects a student who
 * forgets at a constant rate, and the farther one alone those who forget by a power law.
 */
const AIMS = [3 * DAY, 21 * DAY];

/** Activations are reckoned for the beginning of so much time: until then they are not reckoned again. */
const MOMENT = DAY / 144;

/** Seconds from the answer to the next card: a glance after a right one, reading and listening after a wrong one. */
const VERDICT = { right: 2, wrong: 5 };

/**
 * What each item would bring, in the items' order:
 *
 * Σ [p(a(T) + depth · what an imprint laid now has left at T) − p(a(T))] / expected seconds, T the two aims,
 *
 * a the item's activation and p the chance of knowing it at one. Ranking by gain per second: Eglington & Pavlik,
 * "Optimizing practice scheduling requires quantitative tracking of individual item performance", npj Science of
 * Learning 5, 2020.
 */
export function prospects(items: readonly Item[], memory: Memory, now: number): Prospect[] {
  const moment = Math.floor((now + memory.shift) / MOMENT) * MOMENT;
  const costs = costsOf(memory);
  return items.map((item) => {
    const known = memory.items.get(item.id);
    const { present, aims } = known ? presence(known, moment) : unasked;
    const chance = chances(memory.ease, known?.ease ?? OWN, item.mark);
    const p = chance(present);
    const depth = depthAt(p);
    let gained = 0;
    for (let k = 0; k < aims.length; k += 2) {
      gained += chance(aims[k]! + depth * aims[k + 1]!) - chance(aims[k]!);
    }
    return { item, isNew: !known, gain: gained / costs(item.kind, p) };
  });
}

/** An item's activation at a moment. */
interface Presence {
  readonly moment: number;
  /** How many askings it is from. */
  readonly asked: number;
  readonly present: number;
  /** For each aim what is left of it then, and of an imprint of depth 1 laid now. */
  readonly aims: readonly number[];
}

function presenceOf(imprints: Imprints, asked: number, moment: number): Presence {
  const present = activation(imprints, moment);
  const aims = AIMS.flatMap((aim) => [activation(imprints, moment + aim), freshly(present, aim)]);
  return { moment, asked, present, aims };
}

const unasked = presenceOf([], 0, 0);
const presences = new WeakMap<Known, Presence>();

/** The same, reckoned once for a moment: with ten thousand items it is most of the work. */
function presence(known: Known, moment: number): Presence {
  const before = presences.get(known);
  if (before && before.moment === moment && before.asked === known.asked) return before;
  const found = presenceOf(known.imprints, known.asked, moment);
  presences.set(known, found);
  return found;
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
