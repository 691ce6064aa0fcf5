import { useMemo } from 'preact/hooks';
import { Weeks } from '../../parts/Weeks.tsx';
import { knownByDay } from '../known/byDay.ts';
import { percent } from '../figures.ts';
import { itemsOfLesson, memory, type Lesson } from '../state.ts';

/** What was known the morning after each day, as a line; nothing before the second of them. */
export function GrowthLine({ lesson, now }: { lesson: Lesson; now: number }) {
  const days = useMemo(() => knownByDay(itemsOfLesson(lesson.id), now), [lesson, memory.value]);
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last || days.length < 2) return null;
  return (
    <Weeks
      points={days}
      label={`What you know: ${percent(first.share)} on ${first.name}, ${percent(last.share)} today, each looked at the morning after`}
      ends={[first.name, last.name]}
    />
  );
}
