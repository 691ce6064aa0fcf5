/** The longest id of an item that the log takes, in characters. */
export const LONGEST_ID = 500;

/** The highest count that a device's reviews take: a hundred a day for two and a half centuries. */
export const MOST_COUNT = 10_000_000;

/** The latest time that is taken for one, ms: the year 2200. */
export const LATEST = Date.UTC(2200);

/** The longest that an answer can have taken, ms: a page left open for years. */
export const LONGEST_ANSWER = 1e11;

/** The stored record of one answered card. The log of these is the only truth about a student. */
export interface Review {
  /** The device that wrote it, a random id made once; with `n` it names the review for good. */
  readonly device: string;
  /** The device's own count, from 1. */
  readonly n: number;
  readonly item: string;
  readonly seed: number;
  /** When it was answered, ms since 1970 UTC, and the local clock's offset from UTC in minutes. */
  readonly at: number;
  readonly offset: number;
  readonly right: boolean;
  readonly takenFor: string | null;
  /** From the card shown to the answer, ms; of that, how long the card itself sounded; taps that made the answer. */
  readonly ms: number;
  readonly sounded: number;
  readonly taps: number;
  /** The page was hidden meanwhile, so the time means nothing. */
  readonly hidden: boolean;
  /** 1 wrong, 2 right but slow for this student, 3 right. */
  readonly grade: 1 | 2 | 3;
}

/**
 * Reviews in their order. A list will do; of a long log most lie packed, and each is made when it is asked for. Going
 * through them with `forEach` is fastest.
 */
export interface Reviews extends Iterable<Review> {
  readonly length: number;
  /** The review at a place from 0 on, or counted from the end where it is below 0. */
  at(place: number): Review | undefined;
  forEach(take: (review: Review) => void): void;
}
