/**
 * What reports of versions 1 and 2 told of their items: days since the last answer and a stability, packed by odds whose
 * few numbers stand in the head. Read, and no longer written.
 */
import type { BitReader } from './bits.ts';
import { bell, even, oddsOf, oddsReader } from './odds.ts';
import type { Odds } from './odds.ts';

const SPREADS = [0.5, 1, 2, 4, 7, 11, 18, Infinity];
const [MISSES, DEGREES] = [even(3), even(7)];
/** Whatever the share told, neither side is impossible. */
const YES = Array.from({ length: 16 }, (_, yes) => oddsOf([4 * (15 - yes) + 0.25, 4 * yes + 0.25]));
const MARKED = oddsOf([63, 1]);

/** The values that there are of each, from the finest telling: steps of equal factors. */
const FINENESS = [1, 2, 4].map((coarser) => ({
  stability: logSteps(0.03, 400, 64 / coarser),
  days: logSteps(0.5, 60.5, 32 / coarser),
}));

/** A week, days. */
const AHEAD = 7;

/** What is known of an item now, of what was told then: nothing of ease. */
interface ItemBefore {
  /** A week after the report. */
  readonly recall: number;
  readonly ease: null;
  readonly answers: 0;
  readonly slow: boolean;
  readonly misses: number;
  readonly takenFor: number | null;
}

interface ToldBefore {
  readonly items: readonly (ItemBefore | null)[];
  readonly askedAbout: readonly number[];
}

/** The items and those asked about; null where the bits hold less or more than so many items. */
export function readItemsBefore(bits: BitReader, count: number): ToldBefore | null {
  const scales = FINENESS[bits.take(2)] ?? FINENESS[0]!;
  const odds = takeOdds(bits, scales.stability.length, scales.days.length);
  const from = oddsReader(bits.rest());
  const askedAbout: number[] = [];
  const items: (ItemBefore | null)[] = [];
  for (let place = 0; place < count; place++) {
    if (from.take(MARKED) === 1) askedAbout.push(place);
    if (from.take(odds.unseen) === 1) {
      items.push(null);
      continue;
    }
    const stability = scales.stability[from.take(odds.stability)]!;
    const days = scales.days[from.take(odds.days)]! - 0.5;
    const isMissed = from.take(odds.missed) === 1;
    const slow = !isMissed && from.take(odds.slow) === 1;
    const misses = isMissed ? 1 + from.take(MISSES) : 0;
    const takenFor = isMissed && from.take(odds.taken) === 1 ? 1 + from.take(DEGREES) : null;
    const recall = (1 + (FACTOR * (days + AHEAD)) / stability) ** DECAY;
    items.push({ recall, ease: null, answers: 0, slow, misses, takenFor });
  }
  return from.atEnd() ? { items, askedAbout } : null;
}

/** Recall was .9 after as many days as the stability said, and fell as this power of time. */
const DECAY = -0.1542;
const FACTOR = 0.9 ** (1 / DECAY) - 1;

interface ItemOdds {
  readonly stability: Odds;
  readonly days: Odds;
  readonly unseen: Odds;
  readonly missed: Odds;
  readonly slow: Odds;
  readonly taken: Odds;
}

/** The odds, from 33 bits that say how the items lie: where steps have their middle and how far they spread, and shares. */
function takeOdds(bits: BitReader, stabilities: number, days: number): ItemOdds {
  const place = (count: number) => {
    const middle = bits.take(6);
    return bell(count, middle, SPREADS[bits.take(3)]!);
  };
  const [stability, since] = [place(stabilities), place(days)];
  const share = () => YES[bits.take(4)]!;
  return {
    stability,
    days: since,
    unseen: share(),
    missed: share(),
    slow: share(),
    taken: share(),
  };
}

function logSteps(lowest: number, highest: number, count: number): number[] {
  const factor = Math.log(highest / lowest) / (count - 1);
  return Array.from({ length: count }, (_, step) => lowest * Math.exp(factor * step));
}
