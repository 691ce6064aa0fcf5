/** Which tap was meant for which onset. */
export interface Match {
  /** Pairs of indices, both rising. */
  readonly pairs: readonly Pair[];
  /** Expected onsets without a tap. */
  readonly missing: readonly number[];
  /** Taps between the first and the last that were meant for none: doubles and strays. */
  readonly extra: readonly number[];
  /** Taps along with the count-in, and after the end. */
  readonly outside: readonly number[];
}

export interface Pair {
  readonly slot: number;
  readonly tap: number;
}

/**
 * What a step costs that is a whole smallest step off, a missing and an extra tap. A tap is meant for an onset rather than
 * a stray beside a gap while it is less than half a step off.
 */
const COST = { off: 6, missing: 3, extra: 3 } as const;
/** At most so many taps are skipped between two that are matched, and so many onsets. */
const SKIP = { taps: 4, slots: 32 } as const;

/**
 * Matches taps to expected onsets by the steps from one to the next, not by the distance from the grid, so that whoever
 * leaves the tempo is still followed. Only the first tap is held to the grid, or a figure could begin anywhere.
 *
 * @param taps seconds, rising; 0 as for `slots`
 * @param slots seconds, rising
 * @param lag by how much taps come late as a rule, in seconds; a lag that is off by more than half a step can shift a
 *   figure of equal steps by one
 */
export function matched(taps: readonly number[], slots: readonly number[], lag = 0): Match {
  const unit = smallestStep(slots);
  const ways = waysTo(taps, slots, lag, unit);
  let best: Way | null = null;
  let least = Infinity;
  ways.forEach((row, tap) =>
    row.forEach((way, slot) => {
      const late = taps.slice(tap + 1).filter((t) => t < slots.at(-1)! + lag + unit / 2).length;
      const cost = way.cost + COST.missing * (slots.length - 1 - slot) + COST.extra * late;
      if (cost < least) [best, least] = [way, cost];
    }),
  );
  return matchOf(best, taps.length, slots.length);
}

interface Way extends Pair {
  readonly cost: number;
  readonly from: Way | null;
}

function waysTo(taps: readonly number[], slots: readonly number[], lag: number, unit: number) {
  const ways: Way[][] = [];
  taps.forEach((time, tap) => {
    const row: Way[] = [];
    ways.push(row);
    const early = taps.slice(0, tap).filter((t) => t > slots[0]! + lag - unit / 2).length;
    slots.forEach((expected, slot) => {
      const off = (COST.off * Math.abs(time - expected - lag)) / unit;
      let cost = off + COST.missing * slot + COST.extra * early;
      let from: Way | null = null;
      for (let a = 1; a <= Math.min(SKIP.taps, tap); a++)
        for (let b = 1; b <= Math.min(SKIP.slots, slot); b++) {
          const skipped = COST.extra * (a - 1) + COST.missing * (b - 1);
          if (skipped >= cost) break;
          const before = ways[tap - a]![slot - b]!;
          const step = expected - slots[slot - b]!;
          // A held note may be off by more, as the variance of an interval grows with its length (Wing & Kristofferson).
          const strayed = Math.abs(time - taps[tap - a]! - step) / Math.sqrt(step * unit);
          const through = before.cost + COST.off * strayed + skipped;
          if (through < cost) [cost, from] = [through, before];
        }
      row.push({ tap, slot, cost, from });
    });
  });
  return ways;
}

function matchOf(end: Way | null, taps: number, slots: number): Match {
  const pairs: Pair[] = [];
  for (let way = end; way; way = way.from) pairs.unshift({ slot: way.slot, tap: way.tap });
  const [met, used] = [new Set(pairs.map((p) => p.slot)), new Set(pairs.map((p) => p.tap))];
  const unused = Array.from({ length: taps }, (_, i) => i).filter((i) => !used.has(i));
  const inside = (i: number) => i > (pairs[0]?.tap ?? 0) && i < (pairs.at(-1)?.tap ?? 0);
  return {
    pairs,
    missing: Array.from({ length: slots }, (_, i) => i).filter((i) => !met.has(i)),
    extra: unused.filter(inside),
    outside: unused.filter((i) => !inside(i)),
  };
}

function smallestStep(slots: readonly number[]): number {
  return slots.slice(1).reduce((least, at, i) => Math.min(least, at - slots[i]!), Infinity);
}
