import type { Review, Reviews } from './review.ts';

/** Reviews one run after the other: those that were read, packed or not, then those since. */
export class Runs implements Reviews {
  #read: readonly Reviews[] = [];
  readonly #since: Review[] = [];

  /** Begins anew with what was read. */
  begin(runs: readonly Reviews[]): void {
    this.#read = runs;
    this.#since.length = 0;
  }

  push(review: Review): void {
    this.#since.push(review);
  }

  /** Takes back the last ones that were pushed. */
  drop(count: number): void {
    this.#since.length -= count;
  }

  get length(): number {
    return this.#read.reduce((sum, { length }) => sum + length, this.#since.length);
  }

  at(place: number): Review | undefined {
    let left = place < 0 ? place + this.length : place;
    if (left < 0) return undefined;
    for (const run of this.#read) {
      if (left < run.length) return run.at(left);
      left -= run.length;
    }
    return this.#since[left];
  }

  forEach(take: (review: Review) => void): void {
    for (const run of [...this.#read, this.#since]) run.forEach(take);
  }

  *[Symbol.iterator](): Generator<Review> {
    for (const run of [...this.#read, this.#since]) yield* run;
  }
}
