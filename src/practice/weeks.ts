import { localDay } from '../memory/day.ts';
import { morningAfter } from '../memory/morning.ts';
import { emptyMemory, learn } from '../memory/memory.ts';
import type { Review, Reviews } from '../store/review.ts';
import { shareOf } from './known.ts';

/** How much of some items was known the morning after a day. */
interface DayRecall {
  /** When that was, ms; the last of them is tomorrow morning. */
  readonly at: number;
  /** Their mean recall, 0 to 1; an item not asked until then counts as not known. */
  readonly recall: number;
}

/** So many days are shown one by one; of a longer time no more than these, whole weeks apart. */
const DAYS = 56;

/**
 * Mean recall of the items the morning after each local day since the first of them was asked, tomorrow's the last: one
 * pass over the log. Days without practice are in it too, so that it shows what fades.
 *
 * @param reviews the whole log in its order
 * @param offset the local clock's offset from UTC now, minutes
 */
export function recallByDay(
  reviews: Reviews,
  items: readonly { readonly id: string }[],
  now: number,
  offset: number,
): DayRecall[] {
  const ids = new Set(items.map(({ id }) => id));
  const first = firstOf(reviews, ids);
  if (!first) return [];
  const today = localDay(now, offset);
  const days = Math.max(0, today - localDay(first.at, first.offset));
  const apart = days <= DAYS ? 1 : 7 * Math.ceil(days / DAYS / 7);
  const memory = emptyMemory();
  const points: DayRecall[] = [];
  let day = today - Math.floor(days / apart) * apart;
  const upTo = (end: number) => {
    for (; day < Math.min(end, today); day += apart) {
      const at = morningAfter(day, offset);
      points.push({ at, recall: shareOf(items, memory, at).recall });
    }
  };
  for (const review of reviews) {
    upTo(localDay(review.at, review.offset));
    learn(memory, review);
  }
  upTo(today);
  const tomorrow = morningAfter(today, offset);
  return [...points, { at: tomorrow, recall: shareOf(items, memory, tomorrow).recall }];
}

function firstOf(reviews: Reviews, ids: ReadonlySet<string>): Review | null {
  for (const review of reviews) if (ids.has(review.item)) return review;
  return null;
}
