import { KINDS } from '../../cards/index.ts';
import { KIND_NAMES } from '../../decks/deck.ts';
import { isKindOf } from '../../decks/kinds.ts';
import { BarChart } from '../../parts/BarChart.tsx';
import type { Item } from '../../practice/item.ts';
import { usualSeconds } from '../../practice/shares.ts';
import { memory } from '../state.ts';

/** How long a right answer takes, by kind of card, over all lessons. Listening is not counted. */
export function Paces({ items }: { items: readonly Item[] }) {
  // How soon someone begins to tap is no pace.
  const kinds = KIND_NAMES.filter(
    (kind) => !isKindOf('time', kind) && items.some((item) => item.kind === kind),
  );
  const paces = kinds.flatMap((kind) => {
    const pace = memory.value.of.paces.get(kind);
    const seconds = pace ? usualSeconds(pace) : null;
    return seconds === null ? [] : [{ name: KINDS[kind].words.brief, seconds }];
  });
  const slowest = Math.max(...paces.map(({ seconds }) => seconds));
  return (
    <section class="sheet">
      <h2>How fast</h2>
      {paces.length === 0 ? (
        <p class="soft">After a few more right answers you will see here how long one takes you.</p>
      ) : (
        <>
          <p class="soft">The seconds that a right answer usually takes you.</p>
          <BarChart
            label="Seconds that a right answer usually takes"
            bars={paces.map(({ name, seconds }) => ({
              name,
              filled: seconds / slowest,
              figure: `${seconds.toFixed(1)} s`,
            }))}
          />
        </>
      )}
    </section>
  );
}
