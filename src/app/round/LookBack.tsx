import { Unbroken } from '../../parts/Written.tsx';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import { Choice } from '../../parts/Choices.tsx';
import type { Item } from '../../practice/item.ts';
import type { Asked } from '../../practice/round.ts';
import { itemPlace } from '../deckWords.ts';
import { itemsOfLesson, settings } from '../state.ts';
import { questions } from './questions.ts';
import { toggleQuestion } from './toggleQuestion.ts';
import { round } from './session.ts';

/** The cards of the round once more: to see why, to hear them again, to mark one to ask the teacher about. */
export function LookBack({ leave }: { leave(): void }) {
  const { asked, deck } = round.value!;
  const [isMissedOnly, setMissedOnly] = useState(false);
  const [open, setOpen] = useState<number | null>(null);
  const [last, setLast] = useState<number | null>(null);
  const items = itemsOfLesson(deck);
  const cards = asked
    .filter(({ right }) => !right || !isMissedOnly)
    .map((one) => ({ asked: one, item: items.find(({ id }) => id === one.item)! }));
  if (open !== null) {
    const back = () => {
      setLast(open);
      setOpen(null);
    };
    return (
      <CardAgain
        key={open}
        {...cards[open]!}
        leave={back}
        next={() => (open === cards.length - 1 ? back() : setOpen(open + 1))}
      />
    );
  }
  return (
    <Cards {...{ cards, last, leave }} open={setOpen}>
      {asked.some(({ right }) => !right) && (
        <Choice
          label="Missed only"
          checked={isMissedOnly}
          change={(now) => {
            setMissedOnly(now);
            setLast(null);
          }}
        />
      )}
    </Cards>
  );
}

/** A card of the round, and its item. */
interface Answered {
  asked: Asked;
  item: Item;
}

interface CardsProps {
  cards: readonly Answered[];
  /** The one looked at last, by its index. */
  last: number | null;
  open(index: number): void;
  leave(): void;
  /** What chooses among them. */
  children: ComponentChildren;
}

function Cards({ cards, last, open, leave, children }: CardsProps) {
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => list.current?.querySelectorAll('button')[last ?? 0]?.focus(), []);
  return (
    <main class="screen round-end">
      <h1>The cards of this round</h1>
      <div>{children}</div>
      <ol class="looked-back" ref={list}>
        {cards.map(({ asked, item }, index) => (
          <li key={`${asked.item} ${asked.seed}`}>
            <button type="button" class="button" onClick={() => open(index)}>
              <span>
                <Unbroken text={itemPlace(item)} />
              </span>
              <span class="soft">
                {questions.value.includes(asked.item) && 'to ask · '}
                {outcomeOf({ asked, item })}
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

/** `right`, `shown to you`, `missed: ii, not IV`. */
function outcomeOf(answered: Answered): string {
  const { right, shown } = answered.asked;
  if (right) return 'right';
  return shown ? 'shown to you' : `missed: ${explained(answered).explanation.title}`;
}

/** The card as it was asked, and what its answer came to. Of a round from before answers were kept, the right one. */
function explained({ asked, item }: Answered) {
  const { right, takenFor, seed } = asked;
  const kind = KINDS[item.kind];
  const card = kind.ask(item, seed);
  const given = asked.given ?? takenFor;
  const verdict = { right: right || given === null, takenFor };
  return { card, explanation: kind.explain(card, verdict, given ?? '', settings.value.naming) };
}

interface CardAgainProps extends Answered {
  leave(): void;
  next(): void;
}

function CardAgain({ asked, item, leave, next }: CardAgainProps) {
  const { Face } = KINDS[item.kind];
  const { right, shown, takenFor } = asked;
  const { card, explanation } = useMemo(() => explained({ asked, item }), [asked, item]);
  const verdict = useMemo(() => ({ right, takenFor }), [right, takenFor]);
  const isToAsk = questions.value.includes(item.id);
  const main = useRef<HTMLElement>(null);
  useEffect(() => main.current?.querySelector<HTMLElement>('[data-do="next"]')?.focus(), []);
  return (
    <main class="screen round" ref={main}>
      <header class="round-bar">
        <button
          type="button"
          class="button quiet small"
          aria-label="Back to the cards"
          onClick={leave}
        >
          Back
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
      <Face
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
