import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import type { Item } from '../../practice/item.ts';
import type { Asked } from '../../practice/round.ts';
import { itemPlace } from '../deckWords.ts';
import { itemsOfLesson, settings } from '../state.ts';
import { questions, toggleQuestion } from './questions.ts';
import { round } from './session.ts';

/** The cards of the round once more: to see why, to hear them again, to mark one to ask the teacher about. */
export function LookBack({ leave }: { leave(): void }) {
  const { asked, deck } = round.value!;
  const [open, setOpen] = useState<number | null>(null);
  const [last, setLast] = useState<number | null>(null);
  const items = itemsOfLesson(deck);
  const itemOf = ({ item }: Asked) => items.find(({ id }) => id === item)!;
  if (open !== null) {
    const back = () => {
      setLast(open);
      setOpen(null);
    };
    return (
      <CardAgain
        key={open}
        asked={asked[open]!}
        item={itemOf(asked[open]!)}
        leave={back}
        next={() => (open === asked.length - 1 ? back() : setOpen(open + 1))}
      />
    );
  }
  return <Cards {...{ asked, itemOf, last, leave }} open={setOpen} />;
}

interface CardsProps {
  asked: readonly Asked[];
  itemOf(asked: Asked): Item;
  /** The one looked at last, by its index. */
  last: number | null;
  open(index: number): void;
  leave(): void;
}

function Cards({ asked, itemOf, last, open, leave }: CardsProps) {
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => list.current?.querySelectorAll('button')[last ?? 0]?.focus(), []);
  return (
    <main class="screen">
      <h1>The cards of this round</h1>
      <ol class="looked-back" ref={list}>
        {asked.map((one, index) => (
          <li key={index}>
            <button type="button" class="button" onClick={() => open(index)}>
              <span>{itemPlace(itemOf(one))}</span>
              <span class="soft">
                {questions.value.includes(one.item) && 'to ask · '}
                {one.right ? 'right' : one.shown ? 'shown to you' : 'missed'}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <div class="last">
        <button type="button" class="button main wide" onClick={leave}>
          Back
        </button>
      </div>
    </main>
  );
}

interface CardAgainProps {
  asked: Asked;
  item: Item;
  leave(): void;
  next(): void;
}

function CardAgain({ asked, item, leave, next }: CardAgainProps) {
  const kind = KINDS[item.kind];
  const { naming } = settings.value;
  const card = kind.ask(item, asked.seed);
  const { right, shown, takenFor } = asked;
  const verdict = useMemo(() => ({ right, takenFor }), [right, takenFor]);
  // What was tapped onto the neck is not kept: of a card to be placed the right answer alone is explained.
  const explained = { right: right || takenFor === null, takenFor };
  const explanation = kind.explain(card, explained, takenFor ?? '', naming);
  const isToAsk = questions.value.includes(item.id);
  const main = useRef<HTMLElement>(null);
  useEffect(() => main.current?.querySelector<HTMLElement>('[data-do="next"]')?.focus(), []);
  return (
    <main class="screen round" ref={main}>
      <header class="round-bar">
        <button type="button" class="bar-button" aria-label="Back to the cards" onClick={leave}>
          ×
        </button>
        <span class="soft grow">
          {right ? 'You knew this' : shown ? 'It was shown to you' : 'Not known yet'}
        </span>
        <button
          type="button"
          class="button small"
          aria-pressed={isToAsk}
          onClick={() => toggleQuestion(item.id)}
        >
          {isToAsk ? 'To ask the teacher' : 'Ask the teacher'}
        </button>
      </header>
      <kind.Face
        card={card}
        verdict={verdict}
        explanation={explanation}
        shown={settings.value}
        presented={shown ? 'asked for' : null}
        answer={() => {}}
        guitar={null}
        unheard={() => {}}
        sounded={() => {}}
        next={next}
      />
    </main>
  );
}
