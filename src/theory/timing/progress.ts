import type { TimeVerdict } from './judge.ts';

/** A figure that was judged once. */
export interface TimeRecord {
  /** The figure's name, or whatever tells figures apart. */
  readonly figure: string;
  /** Beats a minute that were asked for. */
  readonly tempo: number;
  /** The spread as a fraction of a step; null where it was too small to be told, or nothing could be. */
  readonly evenness: number | null;
  readonly verdict: TimeVerdict | null;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** The highest tempo at which a figure was even. */
export interface EvenAt {
  readonly tempo: number;
  /** When it first was. */
  readonly at: number;
}

const WEEK = 7 * 24 * 3_600_000;

/** For each figure the highest tempo at which it was judged right, and when first; none where it never was. */
export function highestEven(records: readonly TimeRecord[]): Map<string, EvenAt> {
  const highest = new Map<string, EvenAt>();
  for (const { figure, tempo, at, verdict } of records) {
    if (verdict !== 'right') continue;
    const known = highest.get(figure);
    if (!known || tempo > known.tempo || (tempo === known.tempo && at < known.at))
      highest.set(figure, { tempo, at });
  }
  return highest;
}

/**
 * The same of one figure for each of the weeks up to a moment, the last one ending there; null for a week in which it was
 * never even.
 *
 * @param now milliseconds since 1970
 */
export function evenByWeek(
  records: readonly TimeRecord[],
  figure: string,
  now: number,
  weeks: number,
): (number | null)[] {
  return Array.from({ length: weeks }, (_, i) => {
    const end = now - (weeks - 1 - i) * WEEK;
    const within = records.filter(({ at }) => at > end - WEEK && at <= end);
    return highestEven(within).get(figure)?.tempo ?? null;
  });
}
