import { useMemo } from 'preact/hooks';
import { KINDS } from '../../cards/index.ts';
import type { Card } from '../../cards/kind.ts';
import type { Item } from '../../practice/item.ts';
import { settings } from '../state.ts';

/** A card of the lesson as it is now, small and only to be looked at; nothing where it has none that is seen. */
export function MiniCard({ items, open }: { items: readonly Item[]; open(): void }) {
  const card = useMemo(() => firstSeen(items), [items]);
  if (!card) return null;
  const kind = KINDS[card.item.kind];
  return (
    <div class="mini">
      <div class="mini-card" inert>
        <kind.Face
          key={card.item.id}
          card={card}
          verdict={null}
          explanation={null}
          shown={settings.value}
          guitar={null}
          answer={() => {}}
          unheard={() => {}}
          sounded={() => {}}
          next={() => {}}
        />
      </div>
      <button
        type="button"
        class="mini-open"
        aria-label="A card of this lesson: see it large"
        onClick={open}
      />
    </div>
  );
}

/** The same seed always: the card changes with the lesson, and with nothing else. */
const SEED = 2;

/** What is kept in time is no picture. */
const PICTURED = { eye: true, hand: true, ear: false, time: false };

/** Of what is heard, or played, a picture shows nothing. */
function firstSeen(items: readonly Item[]): Card | null {
  const item = items.find(
    ({ kind }) => KINDS[kind].needs.length === 0 && PICTURED[KINDS[kind].sense],
  );
  return item ? KINDS[item.kind].ask(item, SEED) : null;
}
