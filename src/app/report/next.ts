import { itemsOf } from '../../cards/index.ts';
import { MOST } from '../../decks/deck.ts';
import { draftOf, shortened } from '../../making/fromDeck.ts';
import { marksOf, weakDrills } from '../../practice/lesson.ts';
import { fittedInTime } from '../../practice/nextInTime.ts';
import { dayAfter, daysUntil, startOf } from '../days.ts';
import { go } from '../router.ts';
import { begin, openKept } from '../teach/kept/kept.ts';
import type { KnownReport } from './reports.ts';

/** Opens the next lesson, made from what these reports on one lesson show to be weak, in the form. */
export async function makeNext(some: readonly KnownReport[], now: number): Promise<void> {
  const [first] = some;
  if (!first) return;
  const { deck } = first.lesson;
  const all = some.map(({ report }) => report);
  const drills = fittedInTime(weakDrills(deck, first.items, all), deck, all);
  await openKept();
  begin({
    ...draftOf(drills.length > 0 ? { ...deck, drills } : deck),
    title: onceMore(deck.title),
    note: '',
    lessonDay: deck.lessonDay && weekAfter(deck.lessonDay, now),
    marks: marksOf(all, itemsOf(deck)).marks,
  });
  go('teach');
}

const AGAIN = ': once more';

function onceMore(title: string): string {
  return title.endsWith(AGAIN) ? title : shortened(title, MOST.title - AGAIN.length) + AGAIN;
}

/** The same day of the week, the first that is not past. */
function weekAfter(lessonDay: string, now: number): string {
  let day = dayAfter(startOf(lessonDay), 7);
  while (daysUntil(day, now) < 0) day = dayAfter(startOf(day), 7);
  return day;
}
