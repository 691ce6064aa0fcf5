import { useMemo } from 'preact/hooks';
import { Facts } from '../../parts/Facts.tsx';
import { Weeks } from '../../parts/Weeks.tsx';
import type { Item } from '../../practice/item.ts';
import { recallByDay } from '../../practice/weeks.ts';
import { percent } from '../figures.ts';
import { log, memory } from '../state.ts';

const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });

/** What a day left is looked at at eight in the morning after: it is named after the evening before. */
const EVENING = 10 * 3_600_000;

/** How much was known the morning after each day so far. */
export function OverWeeks({ items, now }: { items: readonly Item[]; now: number }) {
  const days = useMemo(
    () => recallByDay(log.value?.reviews ?? [], items, now, -new Date(now).getTimezoneOffset()),
    [items, now, memory.value],
  );
  const named = days.map(({ at, recall }, index) => ({
    name: index === days.length - 1 ? 'today' : date.format(at - EVENING),
    at,
    share: recall,
  }));
  const [first, last] = [named[0], named.at(-1)];
  return (
    <section class="sheet">
      <h2>Over the weeks</h2>
      {!first || !last || named.length < 2 ? (
        <p class="soft">From tomorrow on you will see here how what you know grows and fades.</p>
      ) : (
        <>
          <Weeks
            points={named}
            label={`What you know: ${percent(first.share)} on ${first.name}, ${percent(last.share)} today, each looked at the morning after`}
            ends={[first.name, 'today']}
          />
          <Facts
            caption="What you know the morning after each day"
            head={['day', 'known']}
            rows={named.map(({ name, share }) => [name, percent(share)])}
          />
        </>
      )}
    </section>
  );
}
