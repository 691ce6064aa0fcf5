import { type Flaw, isBit, isReview } from './logLine.ts';
import type { Review, Reviews } from './review.ts';

export const VERSION = 1;

/** The columns, and the arrays that hold whatever a review may hold there. */
const ARRAYS = {
  /** A place in `words`. */
  item: Uint32Array,
  seed: Uint32Array,
  at: Float64Array,
  offset: Int16Array,
  /** A place in `words`, counted from 1; 0 for none. */
  takenFor: Uint32Array,
  ms: Float64Array,
  sounded: Float64Array,
  taps: Uint16Array,
  hidden: Uint8Array,
  grade: Uint8Array,
};

type Arrays = { readonly [Name in keyof typeof ARRAYS]: InstanceType<(typeof ARRAYS)[Name]> };

/**
 * Many reviews of one device, their counts following one another from `n` on, in columns. The browser stores arrays as
 * they are, so that a hundred thousand reviews are read in less than half the time that a line for each takes.
 */
export interface Columns extends Arrays {
  readonly version: number;
  readonly n: number;
  readonly words: readonly string[];
}

/** The reviews that a stored value holds in columns, or what is wrong with it: all or none. Inverts `columnsOf`. */
export function reviewsOf(device: string, value: unknown): Reviews | Flaw {
  const columns = (value ?? {}) as Partial<Columns>;
  if (Number.isInteger(columns.version) && columns.version! > VERSION) return 'newer';
  if (columns.version !== VERSION || !areWhole(columns)) return 'foreign';
  const packed = new Packed(device, columns);
  let areSound = columns.hidden.every(isBit);
  packed.forEach((review) => (areSound &&= isReview(review)));
  return areSound ? packed : 'foreign';
}

/** Reviews that stay in columns: as objects they would take twice the memory, and opening half as long again. */
class Packed implements Reviews {
  readonly #device: string;
  readonly #columns: Columns;

  constructor(device: string, columns: Columns) {
    this.#device = device;
    this.#columns = columns;
  }

  get length(): number {
    return this.#columns.item.length;
  }

  at(place: number): Review | undefined {
    const from0 = place < 0 ? place + this.length : place;
    return from0 >= 0 && from0 < this.length ? this.#made(from0) : undefined;
  }

  forEach(take: (review: Review) => void): void {
    for (let k = 0; k < this.length; k++) take(this.#made(k));
  }

  *[Symbol.iterator](): Generator<Review> {
    for (let k = 0; k < this.length; k++) yield this.#made(k);
  }

  #made(k: number): Review {
    const columns = this.#columns;
    const { n, words } = columns;
    const taken = columns.takenFor[k]!;
    const grade = columns.grade[k]!;
    return {
      device: this.#device,
      n: n + k,
      item: words[columns.item[k]!]!,
      seed: columns.seed[k]!,
      at: columns.at[k]!,
      offset: columns.offset[k]!,
      right: grade !== 1,
      takenFor: taken === 0 ? null : words[taken - 1]!,
      ms: columns.ms[k]!,
      sounded: columns.sounded[k]!,
      taps: columns.taps[k]!,
      hidden: columns.hidden[k] === 1,
      grade: grade as Review['grade'],
    };
  }
}

/** Whether every column is there, all of one length; what stands in them is for each review to say. */
function areWhole(columns: Partial<Columns>): columns is Columns {
  return (
    Array.isArray(columns.words) &&
    Object.entries(ARRAYS).every(([name, kind]) => {
      const column = columns[name as keyof Arrays];
      return column instanceof kind && column.length === columns.item!.length;
    })
  );
}
