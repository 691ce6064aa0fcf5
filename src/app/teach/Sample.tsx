import { useEffect, useRef, useState } from 'preact/hooks';
import { KINDS } from '../../cards/index.ts';
import type { Card, Explanation, Presented } from '../../cards/kind.ts';
import type { Item, Verdict } from '../../practice/item.ts';
import { settings } from '../state.ts';

interface Sampled {
  readonly card: Card;
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
  readonly presented: Presented | null;
}

const RIGHT: Verdict = { right: true, takenFor: null };
const NOT_KNOWN: Verdict = { right: false, takenFor: null };

/** Cards of a lesson in the making, as the student will see them: what is new is shown, then asked. Nothing is kept. */
export function Sample({ items, leave }: { items: readonly Item[]; leave(): void }) {
  const [sampled, setSampled] = useState(() => met(items));
  const { card, verdict, explanation, presented } = sampled;
  const { naming } = settings.value;
  const kind = KINDS[card.item.kind];
  const screen = useRef<HTMLElement>(null);
  useEffect(() => screen.current?.querySelector('h1')?.focus(), [card]);
  const answer = (given: string) => {
    const judged = kind.judge(card, given);
    const why = kind.explain(card, judged, given, naming);
    setSampled({ card, verdict: judged, explanation: why, presented: null });
  };
  const show = () =>
    setSampled({ card, verdict: NOT_KNOWN, explanation: answerOf(card), presented: 'asked for' });
  const next = () => setSampled(presented === 'new' ? asked(card.item) : met(items));
  return (
    <main class="screen round tried" ref={screen}>
      <header class="round-bar">
        <span class="soft grow">As the student sees it</span>
        <button type="button" class="bar-button word" onClick={leave}>
          Back to the lesson
        </button>
      </header>
      <kind.Face
        key={`${card.item.id} ${card.seed}`}
        card={card}
        verdict={verdict}
        explanation={explanation}
        shown={settings.value}
        presented={presented}
        answer={answer}
        show={show}
        guitar={null}
        unheard={() => {}}
        sounded={() => {}}
        next={next}
      />
    </main>
  );
}

/** Any item of the lesson, shown as at its first meeting. */
function met(items: readonly Item[]): Sampled {
  const { card } = asked(items[Math.floor(Math.random() * items.length)]!);
  return { card, verdict: RIGHT, explanation: answerOf(card), presented: 'new' };
}

function asked(item: Item): Sampled {
  const card = KINDS[item.kind].ask(item, Math.floor(Math.random() * 2 ** 32));
  return { card, verdict: null, explanation: null, presented: null };
}

function answerOf(card: Card): Explanation {
  return KINDS[card.item.kind].explain(card, RIGHT, '', settings.value.naming);
}
