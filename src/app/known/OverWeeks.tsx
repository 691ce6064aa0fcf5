import { useMemo } from 'preact/hooks';
import { Facts } from '../../parts/Facts.tsx';
import { Weeks } from '../../parts/Weeks.tsx';
import type { Item } from '../../practice/item.ts';
import { percent } from '../figures.ts';
import { memory } from '../state.ts';
import { knownByDay } from './byDay.ts';

/** How much was known the morning after each day so far. */
export function OverWeeks({ items, now }: { items: readonly Item[]; now: number }) {
  const days = useMemo(() => knownByDay(items, now), [items, now, memory.value]);
  const [first, last] = [days[0], days.at(-1)];
  return (
    <section class="sheet">
      <h2>Over the weeks</h2>
      {!first || !last || days.length < 2 ? (
        <p class="soft">From tomorrow on you will see here how what you know grows and fades.</p>
      ) : (
        <>
          <Weeks
            points={days}
            label={`What you know: ${percent(first.share)} on ${first.name}, ${percent(last.share)} today, each looked at the morning after`}
            ends={[first.name, 'today']}
          />
          <Facts
            caption="What you know the morning after each day"
            head={['day', 'known']}
            rows={days.map(({ name, share }) => [name, percent(share)])}
          />
        </>
      )}
    </section>
  );
}
