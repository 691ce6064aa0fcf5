import type { Item } from '../../practice/item.ts';
import { recallByDay } from '../../practice/weeks.ts';
import { log } from '../state.ts';

const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });

/** What a day left is looked at at eight in the morning after: it is named after the evening before. */
const EVENING = 10 * 3_600_000;

/** How much of these items was known the morning after each day so far, 0 to 1; the last is `today`. */
export function knownByDay(items: readonly Item[], now: number) {
  const offset = -new Date(now).getTimezoneOffset();
  const days = recallByDay(log.value?.reviews ?? [], items, now, offset);
  return days.map(({ at, recall }, index) => ({
    name: index === days.length - 1 ? 'today' : date.format(at - EVENING),
    at,
    share: recall,
  }));
}
