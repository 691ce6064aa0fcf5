import { activation, type Estimate, freshly, type Imprints, OWN } from '../memory/imprint.ts';
import type { Known, Memory } from '../memory/memory.ts';
import type { Item } from './item.ts';

/**
 * The time since an item was asked is taken in steps, each so much longer than the one before: what the item is like is
 * reckoned for the beginning of a step, and not again before the next.
 */
const STEP = 1.05;

/**
 * How the items of a list stand, a number for each in their order. Kept in plain rows of numbers: with ten thousand items,
 * fetching what lies about in objects would be most of the work.
 */
class ActivationTable {
  /** What is known of each; undefined where it was never asked. */
  readonly known: (Known | undefined)[];
  /** How easily each comes: `Known.ease`. */
  readonly easeMean: Float64Array;
  readonly easeVariance: Float64Array;
  /** The activation of each now, and at each aim. */
  readonly present: Float64Array;
  readonly atAims: readonly Float64Array[];
  /** What an imprint of depth 1 laid now would add at each aim. */
  readonly fresh: readonly Float64Array[];
  /** How many askings this is from, and the times on the memory's clock from which and until which it holds. */
  private readonly asked: Float64Array;
  private readonly from: Float64Array;
  private readonly until: Float64Array;
  /** How many items the memory knew. */
  private size = -1;

  constructor(
    private readonly items: readonly Item[],
    readonly memory: Memory,
    /** The times, ms on the memory's clock, at which things are to be known. */
    readonly aims: readonly number[],
    now: number,
  ) {
    const row = () => new Float64Array(items.length);
    this.known = items.map(() => undefined);
    [this.easeMean, this.easeVariance, this.present] = [row(), row(), row()];
    [this.atAims, this.fresh] = [aims.map(row), aims.map(row)];
    [this.asked, this.from, this.until] = [row(), row(), row()];
    items.forEach((_, k) => {
      this.reckonAims(k, [], OWN);
      this.reckonPresent(k, [], now);
    });
  }

  /** Brings up to date what no longer holds at a time of the memory's clock. */
  look(now: number): void {
    const { items, known, memory } = this;
    const grown = memory.items.size !== this.size;
    this.size = memory.items.size;
    for (let k = 0; k < items.length; k++) {
      const one = known[k] ?? (grown ? memory.items.get(items[k]!.id) : undefined);
      if (!one) continue;
      // A clock that was set back has moved what was laid.
      const isSame = this.asked[k] === one.asked && this.from[k]! <= now;
      if (isSame && now < this.until[k]!) continue;
      const step = Math.floor(Math.log(Math.max(1, (now - one.last) / 1000)) / Math.log(STEP));
      const moment = one.last + 1000 * STEP ** step;
      this.known[k] = one;
      this.asked[k] = one.asked;
      this.from[k] = Math.min(moment, now);
      this.until[k] = one.last + 1000 * STEP ** (step + 1);
      if (!isSame) this.reckonAims(k, one.imprints, one.ease);
      this.reckonPresent(k, one.imprints, moment);
    }
  }

  /** What only another answer changes. */
  private reckonAims(k: number, imprints: Imprints, ease: Estimate): void {
    this.easeMean[k] = ease.mean;
    this.easeVariance[k] = ease.variance;
    this.aims.forEach((aim, i) => {
      this.atAims[i]![k] = activation(imprints, aim);
    });
  }

  /** What every step of time changes. */
  private reckonPresent(k: number, imprints: Imprints, moment: number): void {
    const present = activation(imprints, moment);
    this.present[k] = present;
    this.aims.forEach((aim, i) => {
      this.fresh[i]![k] = freshly(present, aim - moment);
    });
  }
}

const tables = new WeakMap<readonly Item[], ActivationTable>();

/** How these items stand at a time of the memory's clock: the same table as the last time, brought up to date. */
export function activationsOf(
  items: readonly Item[],
  memory: Memory,
  aims: readonly number[],
  now: number,
): ActivationTable {
  let table = tables.get(items);
  const isSame =
    table?.memory === memory &&
    table.known.length === items.length &&
    table.aims.every((aim, i) => aim === aims[i]);
  if (!table || !isSame) {
    table = new ActivationTable(items, memory, aims, now);
    tables.set(items, table);
  }
  table.look(now);
  return table;
}
