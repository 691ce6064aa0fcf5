/**
 * How likely everything is that a report tells of an item. The few numbers that say so stand in its head, so that a
 * report of much missed and one of little are both short.
 */
import type { BitReader, BitWriter } from './bits.ts';
import { bell, even, oddsOf } from './odds.ts';
import type { Odds } from './odds.ts';
import type { ItemSteps } from './report.ts';

/** How the items of a report lie: where steps have their middle and how far they spread, and shares in 15ths. */
interface Distribution {
  readonly stability: Place;
  readonly days: Place;
  readonly unseen: number;
  readonly missed: number;
  readonly slow: number;
  readonly taken: number;
}

interface Place {
  readonly middle: number;
  /** Which of `SPREADS`. */
  readonly spread: number;
}

/** The odds of every value. */
export interface Chances {
  readonly marked: Odds;
  readonly unseen: Odds;
  readonly stability: Odds;
  readonly days: Odds;
  readonly missed: Odds;
  readonly slow: Odds;
  readonly misses: Odds;
  readonly taken: Odds;
  readonly takenFor: Odds;
}

/** How many steps there are of each. */
interface Counts {
  readonly stability: number;
  readonly days: number;
}

const SPREADS = [0.5, 1, 2, 4, 7, 11, 18, Infinity];
const SHARES = ['unseen', 'missed', 'slow', 'taken'] as const;

const [MISSES, DEGREES] = [even(3), even(7)];
/** Whatever the share told, neither side is impossible. */
const YES = Array.from({ length: 16 }, (_, yes) => oddsOf([4 * (15 - yes) + 0.25, 4 * yes + 0.25]));
const MARKED = oddsOf([63, 1]);

/** How some items lie, so that they take the fewest bits. */
export function distributionOf(items: readonly ItemSteps[], counts: Counts): Distribution {
  const seen = items.flatMap((item) => item.seen ?? []);
  const missed = seen.filter(({ misses }) => misses > 0);
  return {
    stability: placeOf(
      seen.map(({ stability }) => stability),
      counts.stability,
    ),
    days: placeOf(
      seen.map(({ days }) => days),
      counts.days,
    ),
    unseen: share(items.length - seen.length, items.length),
    missed: share(missed.length, seen.length),
    slow: share(seen.filter(({ slow }) => slow === 1).length, seen.length - missed.length),
    taken: share(missed.filter(({ takenFor }) => takenFor > 0).length, missed.length),
  };
}

export function chanceOf(distribution: Distribution, counts: Counts): Chances {
  const odds = (name: 'stability' | 'days') =>
    bellOf(counts[name], distribution[name].middle, distribution[name].spread);
  return {
    marked: MARKED,
    unseen: YES[distribution.unseen]!,
    stability: odds('stability'),
    days: odds('days'),
    missed: YES[distribution.missed]!,
    slow: YES[distribution.slow]!,
    misses: MISSES,
    taken: YES[distribution.taken]!,
    takenFor: DEGREES,
  };
}

/** 33 bits. */
export function putDistribution(bits: BitWriter, distribution: Distribution): void {
  for (const { middle, spread } of [distribution.stability, distribution.days]) {
    bits.put(middle, 6);
    bits.put(spread, 3);
  }
  for (const name of SHARES) bits.put(distribution[name], 4);
}

export function takeDistribution(bits: BitReader): Distribution {
  const place = () => ({ middle: bits.take(6), spread: bits.take(3) });
  const [stability, days] = [place(), place()];
  const [unseen = 0, missed = 0, slow = 0, taken = 0] = SHARES.map(() => bits.take(4));
  return { stability, days, unseen, missed, slow, taken };
}

function share(some: number, all: number): number {
  return all === 0 ? 0 : Math.round((15 * some) / all);
}

/** The step in the middle, and the spread around it that packs these steps shortest. */
function placeOf(steps: readonly number[], count: number): Place {
  const middle = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  const bits = SPREADS.map((_, spread) => {
    const odds = bellOf(count, middle, spread);
    return steps.reduce((sum, step) => sum - Math.log2(odds[step + 1]! - odds[step]!), 0);
  });
  return { middle, spread: bits.indexOf(Math.min(...bits)) };
}

const bells = new Map<number, Odds>();

/** The odds of so many steps; each made once. */
function bellOf(count: number, middle: number, spread: number): Odds {
  const id = (count * 64 + middle) * SPREADS.length + spread;
  let odds = bells.get(id);
  if (!odds) bells.set(id, (odds = bell(count, middle, SPREADS[spread]!)));
  return odds;
}
