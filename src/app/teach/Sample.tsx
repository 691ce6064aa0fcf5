import { useEffect, useRef, useState } from 'preact/hooks';
import { KINDS } from '../../cards/index.ts';
import type { Card, Explanation } from '../../cards/kind.ts';
import type { Item, Verdict } from '../../practice/item.ts';
import { settings } from '../state.ts';

interface Sampled {
  readonly card: Card;
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
}

/** Cards of a lesson in the making, as the student will see them. Nothing is kept of the answers. */
export function Sample({ items, leave }: { items: readonly Item[]; leave(): void }) {
  const [sampled, setSampled] = useState(() => draw(items));
  const { card, verdict, explanation } = sampled;
  const { naming } = settings.value;
  const kind = KINDS[card.item.kind];
  const screen = useRef<HTMLElement>(null);
  useEffect(() => screen.current?.querySelector('h1')?.focus(), []);
  const answer = (given: string) => {
    const judged = kind.judge(card, given);
    const why = kind.explain(card, judged, given, naming);
    setSampled({ card, verdict: judged, explanation: why });
  };
  return (
    <main class="screen round" ref={screen}>
      <header class="round-bar">
        <button type="button" class="bar-button" aria-label="Back to the lesson" onClick={leave}>
          ×
        </button>
        <span class="soft">A card as the student sees it</span>
      </header>
      <kind.Face
        key={`${card.item.id} ${card.seed}`}
        card={card}
        verdict={verdict}
        explanation={explanation}
        shown={settings.value}
        answer={answer}
        guitar={null}
        unheard={() => {}}
        sounded={() => {}}
        next={() => setSampled(draw(items))}
      />
    </main>
  );
}

function draw(items: readonly Item[]): Sampled {
  const item = items[Math.floor(Math.random() * items.length)]!;
  const seed = Math.floor(Math.random() * 2 ** 32);
  return { card: KINDS[item.kind].ask(item, seed), verdict: null, explanation: null };
}
