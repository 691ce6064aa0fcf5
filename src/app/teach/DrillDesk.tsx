import { Unbroken } from '../../parts/Written.tsx';
import { useMemo } from 'preact/hooks';
import { itemsOf, KINDS } from '../../cards/index.ts';
import type { Deck } from '../../decks/deck.ts';
import { drillOf, isTogether, type MadeDrill } from '../../making/draft.ts';
import { drillFault } from '../../making/draftFault.ts';
import type { Item } from '../../practice/item.ts';
import { itemPlace } from '../deckWords.ts';
import { counted } from '../figures.ts';
import { useFocusOnTitle } from '../focus.ts';
import { change, draft } from './kept/openDraft.ts';
import { MarkSearch } from './MarkChoice.tsx';
import { DrillTuning } from './DrillTuning.tsx';

interface DrillDeskProps {
  deck: Deck;
  index: number;
  /** Shows cards of these items. */
  sample(items: readonly Item[]): void;
  leave(): void;
}

/** One drill, tuned on its own. */
export function DrillDesk({ deck, index, sample, leave }: DrillDeskProps) {
  const { drills } = draft.value;
  const made = drills[index]!;
  const drill = drillOf(made, draft.value);
  const fault = drillFault(drill, draft.value);
  const items = useMemo(
    () => (fault ? [] : itemsOf({ ...deck, drills: [drill] })),
    [JSON.stringify(drill), deck],
  );
  const title = useFocusOnTitle();
  const set = (next: MadeDrill) => change({ drills: drills.with(index, next) });
  return (
    <main class="screen teach">
      <header>
        <h1 ref={title} tabIndex={-1}>
          Drill {index + 1}
        </h1>
        <p>Cards to {KINDS[drill.kind].words.drills}</p>
        <Following
          made={made}
          follow={drills.includes(drill.kind) ? null : () => set(drill.kind)}
        />
      </header>
      <DrillTuning drill={drill} set={set} />
      <Samples fault={fault} items={items} />
      <MarkSearch items={items} />
      <div class="buttons last">
        <button
          type="button"
          class="button"
          disabled={items.length === 0}
          onClick={() => sample(items)}
        >
          Try a card
        </button>
        <button type="button" class="button main" onClick={leave}>
          Back to the lesson
        </button>
      </div>
    </main>
  );
}

/** Whether the drill follows the form; one that was tuned apart can do so again, where no other of its kind does. */
function Following({ made, follow }: { made: MadeDrill; follow: (() => void) | null }) {
  if (isTogether(made)) {
    return (
      <p class="soft">
        It follows the lesson’s form. What you change here changes this drill alone.
      </p>
    );
  }
  return (
    follow && (
      <button type="button" class="button small" onClick={follow}>
        Let it follow the form again
      </button>
    )
  );
}

/** So many items are named, from all over the drill. */
const NAMED = 4;

/** What the drill asks now: how many items, some of them by name. */
function Samples({ fault, items }: { fault: string | null; items: readonly Item[] }) {
  if (fault || items.length === 0) {
    return (
      <p class="notice bad" role="status">
        {fault ??
          'No such arpeggio lies whole on these strings inside these frets: choose more strings or frets.'}
      </p>
    );
  }
  const step = Math.max(1, Math.floor(items.length / NAMED));
  const named = items.filter((_, i) => i % step === 0).slice(0, NAMED);
  return (
    <div role="status">
      <p>
        {counted(items.length, 'item')}
        {items.length > named.length ? ', such as:' : ':'}
      </p>
      <ul class="soft">
        {named.map((item) => (
          <li key={item.id}>
            <Unbroken text={itemPlace(item)} />
          </li>
        ))}
      </ul>
    </div>
  );
}
