import type { ClassStudent } from './StudentRow.tsx';
import { counted } from '../figures.ts';
import { needsInTime } from './timeWords.ts';

/** What of time and of free playing more than the one student has to work on: how many, most first. */
export function ClassInTime({ students }: { students: readonly ClassStudent[] }) {
  const counts = new Map<string, number>();
  for (const { latest } of students)
    for (const need of needsInTime(latest.report)) counts.set(need, (counts.get(need) ?? 0) + 1);
  if (counts.size === 0) return null;
  return (
    <section>
      <h2 class="label">In time, and playing freely</h2>
      <ul class="plain">
        {[...counts]
          .toSorted((a, b) => b[1] - a[1])
          .map(([need, count]) => (
            <li key={need} data-need={need}>
              {counted(count, 'student')}: {need}
            </li>
          ))}
      </ul>
    </section>
  );
}
