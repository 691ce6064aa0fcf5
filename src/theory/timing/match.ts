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
 * What a step costs that is a whole smallest step off, a missing and an extra tap, and one along with the count-in or
 * after the end. A tap is meant for an onset rather than a stray beside a gap while it is less than half a step off.
 */
const COST = { off: 6, missing: 3, extra: 3, outside: 1 } as const;
/**
 * Where nobody measured how late taps come, a beginning costs so much a second while it is late by no more seconds than
 * glass and sound over the air together may be (a judgement). All of it is less than a missing onset: equal steps of which
 * each has its tap are not shifted by one, be all taps later than a step.
 */
const UNMEASURED = { late: 8, most: 0.35 } as const;
/** At most so many taps are skipped between two that are matched, and so many onsets. */
const SKIP = { taps: 4, slots: 32 } as const;

/**
 * Matches taps to expected onsets by the steps from one to the next, not by the distance from the grid, so that whoever
 * leaves the tempo is still followed. Only the first tap is held to the grid, or a figure could begin anywhere.
 *
 * @param taps seconds, rising; 0 as for `slots`
 * @param slots seconds, rising
 * @param lag by how much taps come late as a rule, in seconds, null where that was not measured; one that was, and is off
 *   by more than half a step, can shift a figure of equal steps by one
 */
export function matched(
  taps: readonly number[],
  slots: readonly number[],
  lag: number | null = null,
): Match {
  const unit = smallestStep(slots);
  const { cost, from } = cheapestWays(taps, slots, lag, unit);
  const end = slots.at(-1)! + (lag ?? 0) + unit / 2;
  let best = -1;
  let least = Infinity;
  taps.forEach((_, tap) => {
    const rest = taps.slice(tap + 1);
    const inside = rest.filter((time) => time < end).length;
    const late = COST.extra * inside + COST.outside * (rest.length - inside);
    slots.forEach((__, slot) => {
      const at = tap * slots.length + slot;
      const whole = cost[at]! + late + COST.missing * (slots.length - 1 - slot);
      if (whole < least) [best, least] = [at, whole];
    });
  });
  const pairs: Pair[] = [];
  for (let at = best; at >= 0; at = from[at]!)
    pairs.unshift({ tap: Math.floor(at / slots.length), slot: at % slots.length });
  return matchOf(pairs, taps.length, slots.length);
}

/** The least cost of a way that ends with a tap meant for a slot, and the pair before it or −1: `[tap × slots + slot]`. */
function cheapestWays(
  taps: readonly number[],
  slots: readonly number[],
  lag: number | null,
  unit: number,
) {
  const n = slots.length;
  const cost = new Float64Array(taps.length * n);
  const from = new Int32Array(taps.length * n).fill(-1);
  const start = slots[0]! + (lag ?? 0) - unit / 2;
  taps.forEach((time, tap) => {
    const late = taps.slice(0, tap).filter((t) => t > start).length;
    const early = COST.extra * late + COST.outside * (tap - late);
    for (let slot = 0; slot < n; slot++) {
      let least = offGrid(time - slots[slot]!, unit, lag) + early + COST.missing * slot;
      let before = -1;
      for (let a = 1; a <= SKIP.taps && a <= tap; a++)
        for (let b = 1; b <= SKIP.slots && b <= slot; b++) {
          const skipped = COST.extra * (a - 1) + COST.missing * (b - 1);
          if (skipped >= least) break;
          const at = (tap - a) * n + slot - b;
          if (cost[at]! + skipped >= least) continue;
          const step = slots[slot]! - slots[slot - b]!;
          // A held note may be off by more, as the variance of an interval grows with its length (Wing & Kristofferson).
          const strayed = Math.abs(time - taps[tap - a]! - step) / Math.sqrt(step * unit);
          const through = cost[at]! + skipped + COST.off * strayed;
          if (through < least) [least, before] = [through, at];
        }
      cost[tap * n + slot] = least;
      from[tap * n + slot] = before;
    }
  });
  return { cost, from };
}

/** What a beginning so many seconds late costs. */
function offGrid(late: number, unit: number, lag: number | null): number {
  const off = COST.off / unit;
  if (lag !== null || late < 0) return off * Math.abs(late - (lag ?? 0));
  const device = Math.min(late, UNMEASURED.most);
  return Math.min(off, UNMEASURED.late) * device + off * (late - device);
}

function matchOf(pairs: readonly Pair[], taps: number, slots: number): Match {
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
