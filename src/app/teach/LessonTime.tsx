import { emptyMemory } from '../../memory/memory.ts';
import type { Item } from '../../practice/item.ts';
import { minutesADay } from '../../practice/untilReady.ts';
import { daysUntilKnown } from '../../practice/daysUntilKnown.ts';
import { startOf } from '../days.ts';
import { counted } from '../figures.ts';

/** As many minutes a day as are worth it, early on (Molloy et al. 2012). */
const MINUTES = 8;

/** What a lesson asks of a student who knows nothing of it yet. */
export function LessonTime({
  items,
  lessonDay,
}: {
  items: readonly Item[];
  lessonDay: string | null;
}) {
  if (items.length === 0) {
    return (
      <p class="soft" role="status">
        Nothing to practise: a lesson to see, hear and play.
      </p>
    );
  }
  const now = Date.now();
  const minutes = minutesADay(items, emptyMemory(), now, lessonDay ? startOf(lessonDay) : null);
  const days = daysUntilKnown(items, emptyMemory(), now, MINUTES);
  return (
    <p class="soft" role="status">
      {counted(items.length, 'item')} · about {counted(minutes, 'minute')} a day{' '}
      {lessonDay ? 'until the next lesson' : 'for a week'} · known after about {days} days of{' '}
      {MINUTES} minutes
    </p>
  );
}
