import type { Review } from './review.ts';
import { type Columns, VERSION } from './columns.ts';

/** Puts reviews into columns; there is at least one, and their counts follow one another. */
export function columnsOf(reviews: readonly Review[]): Columns {
  const places = new Map<string, number>();
  const placeOf = (word: string) => {
    const place = places.get(word) ?? places.size;
    places.set(word, place);
    return place;
  };
  return {
    version: VERSION,
    n: reviews[0]!.n,
    item: Uint32Array.from(reviews, ({ item }) => placeOf(item)),
    seed: Uint32Array.from(reviews, ({ seed }) => seed),
    at: Float64Array.from(reviews, ({ at }) => at),
    offset: Int16Array.from(reviews, ({ offset }) => offset),
    takenFor: Uint32Array.from(reviews, ({ takenFor }) =>
      takenFor === null ? 0 : placeOf(takenFor) + 1,
    ),
    ms: Float64Array.from(reviews, ({ ms }) => ms),
    sounded: Float64Array.from(reviews, ({ sounded }) => sounded),
    taps: Uint16Array.from(reviews, ({ taps }) => taps),
    hidden: Uint8Array.from(reviews, ({ hidden }) => (hidden ? 1 : 0)),
    grade: Uint8Array.from(reviews, ({ grade }) => grade),
    words: [...places.keys()],
  };
}
