import { useMemo } from 'preact/hooks';
import { KINDS } from '../../cards/index.ts';
import { Facts } from '../../parts/Facts.tsx';
import { Weeks } from '../../parts/Weeks.tsx';
import { inTime, WEEKS, type FigureInTime } from '../../practice/inTime.ts';
import type { Item } from '../../practice/item.ts';
import { DAY } from '../../memory/day.ts';
import { log, memory } from '../state.ts';

const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });

/** The fastest at which each figure was kept even, over the weeks. Nothing where the lesson asks for none. */
export function InTime({ items, now }: { items: readonly Item[]; now: number }) {
  const figures = useMemo(
    () => inTime(items, log.value?.reviews ?? [], now),
    [items, now, memory.value],
  );
  if (figures.length === 0) return null;
  const week = (i: number) => date.format(now - (WEEKS - i) * 7 * DAY + DAY);
  return (
    <section class="sheet">
      <h2>In time</h2>
      {figures.map((figure) => (
        <Figure key={figure.item.id} figure={figure} now={now} />
      ))}
      <Facts
        caption="The fastest that was even, week by week, in quarter notes a minute"
        head={['week from', ...figures.map(nameOf)]}
        rows={Array.from({ length: WEEKS }, (_, i) => [
          week(i),
          ...figures.map(({ weeks }) => (weeks[i] === null ? '–' : String(weeks[i]))),
        ])}
      />
    </section>
  );
}

/** `triplets`, `the rhythm of phrase 2`: an item's words without its tempo. */
function nameOf({ item }: FigureInTime): string {
  return KINDS[item.kind].words.item(item).replace(/ at \d+$/, '');
}

function Figure({ figure, now }: { figure: FigureInTime; now: number }) {
  const { highest, weeks } = figure;
  const points = weeks.flatMap((tempo, i) =>
    tempo === null ? [] : [{ at: now - (WEEKS - 1 - i) * 7 * DAY, tempo }],
  );
  const top = Math.max(...points.map(({ tempo }) => tempo), 1);
  const words = highest
    ? `even up to ♩ = ${highest.tempo}, first on ${date.format(highest.at)}`
    : 'not yet even at any tempo';
  return (
    <div data-in-time={nameOf(figure)}>
      <p>
        <strong>{nameOf(figure)}</strong> <span class="soft">{words}</span>
      </p>
      {points.length > 1 && (
        <Weeks
          points={points.map(({ at, tempo }) => ({ at, share: tempo / top }))}
          label={`${nameOf(figure)}: the fastest that was even was ${points[0]!.tempo} at first and ${points.at(-1)!.tempo} last`}
          ends={[date.format(points[0]!.at), date.format(points.at(-1)!.at)]}
          scale={[`♩ = ${top}`, '', '0']}
        />
      )}
    </div>
  );
}
