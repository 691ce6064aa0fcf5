import { type Flaw, isBit, isReview } from './line.ts';
import type { Review } from './review.ts';

/** The version of a line that holds many reviews. */
export const COLUMNS = 2;

/**
 * Many reviews of one device, their counts following one another, as one line of the log: a JSON array of columns,
 * `[version, n, words, item, seed, at, offset, takenFor, ms, sounded, taps, hidden, grade]`. `n` is the first one's
 * count; `item` and `takenFor` are places in `words`, or null; `at` is the time since the review before. It is read in
 * half the time that a line for each takes.
 */
export function columnsOf(reviews: readonly Review[]): string {
  const places = new Map<string, number>();
  const placeOf = (word: string) => {
    const place = places.get(word) ?? places.size;
    places.set(word, place);
    return place;
  };
  const column = <T>(field: (review: Review, k: number) => T) => reviews.map(field);
  const columns = [
    column(({ item }) => placeOf(item)),
    column(({ seed }) => seed),
    column(({ at }, k) => at - (reviews[k - 1]?.at ?? 0)),
    column(({ offset }) => offset),
    column(({ takenFor }) => (takenFor === null ? null : placeOf(takenFor))),
    column(({ ms }) => ms),
    column(({ sounded }) => sounded),
    column(({ taps }) => taps),
    column(({ hidden }) => (hidden ? 1 : 0)),
    column(({ grade }) => grade),
  ];
  return JSON.stringify([COLUMNS, reviews[0]!.n, [...places.keys()], ...columns]);
}

/** Whether a parsed line of the log holds many reviews. */
export function hasColumns(row: unknown): row is unknown[] {
  return Array.isArray(row) && row[0] === COLUMNS;
}

/** The reviews that such a line holds, or what is wrong with it: all or none. Inverts `columnsOf`. */
export function reviewsOf(device: string, row: readonly unknown[]): readonly Review[] | Flaw {
  const [, first, words, ...columns] = row;
  if (!Number.isInteger(first) || !Array.isArray(words) || !areColumns(columns)) return 'foreign';
  const [item, seed, at, offset, takenFor, ms, sounded, taps, hidden, grade] = columns;
  const wordAt = (place: unknown): unknown => (place === null ? null : words[place as number]);
  const reviews: Review[] = [];
  let time = 0;
  for (let k = 0; k < item.length; k++) {
    time += at[k] as number;
    const review = {
      device,
      n: (first as number) + k,
      item: wordAt(item[k]),
      seed: seed[k],
      at: time,
      offset: offset[k],
      right: grade[k] !== 1,
      takenFor: wordAt(takenFor[k]),
      ms: ms[k],
      sounded: sounded[k],
      taps: taps[k],
      hidden: hidden[k] === 1,
      grade: grade[k],
    };
    if (!isReview(review) || !isBit(hidden[k]) || !Number.isInteger(at[k])) return 'foreign';
    reviews.push(review);
  }
  return reviews;
}

type Column = readonly unknown[];
// prettier-ignore
type Columns = readonly [
  Column, Column, Column, Column, Column, Column, Column, Column, Column, Column,
];

function areColumns(columns: readonly unknown[]): columns is Columns {
  const [first] = columns;
  return (
    columns.length === 10 &&
    Array.isArray(first) &&
    columns.every((column) => Array.isArray(column) && column.length === first.length)
  );
}
