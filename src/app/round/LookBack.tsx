import { useState } from 'preact/hooks';
import { KINDS } from '../../cards/index.ts';
import type { Asked } from '../../practice/round.ts';
import { itemWords } from '../deckWords.ts';
import { itemsOfLesson, settings } from '../state.ts';
import { questions, toggleQuestion } from './questions.ts';
import { round } from './session.ts';

/** The cards of the round once more: to see why, to hear them again, to mark one to ask the teacher about. */
export function LookBack({ leave }: { leave(): void }) {
  const { asked, deck } = round.value!;
  const [open, setOpen] = useState<number | null>(null);
  const items = itemsOfLesson(deck);
  const itemOf = ({ item }: Asked) => items.find(({ id }) => id === item)!;
  if (open !== null) {
    const last = open === asked.length - 1;
    return (
      <CardAgain
        key={open}
        asked={asked[open]!}
        item={itemOf(asked[open]!)}
        leave={() => setOpen(null)}
        next={() => setOpen(last ? null : open + 1)}
      />
    );
  }
  return (
    <main class="screen">
      <h1>The cards of this round</h1>
      <ol class="looked-back">
        {asked.map((one, index) => (
          <li key={index}>
            <button type="button" class="button" onClick={() => setOpen(index)}>
              <span>{itemWords(itemOf(one))}</span>
              <span class="soft">
                {questions.value.includes(one.item) && 'to ask · '}
                {one.right ? 'right' : 'wrong'}
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
  item: ReturnType<typeof itemsOfLesson>[number];
  leave(): void;
  next(): void;
}

function CardAgain({ asked, item, leave, next }: CardAgainProps) {
  const kind = KINDS[item.kind];
  const { naming } = settings.value;
  const card = kind.ask(item, asked.seed);
  // What was tapped onto the neck is not kept: of a card to be placed its right answer is shown.
  const verdict = { right: asked.right || asked.takenFor === null, takenFor: asked.takenFor };
  const explanation = kind.explain(card, verdict, asked.takenFor ?? '', naming);
  const marked = questions.value.includes(item.id);
  return (
    <main class="screen round">
      <header class="round-bar">
        <button type="button" class="bar-button" aria-label="Back to the cards" onClick={leave}>
          ×
        </button>
        <span class="soft grow">{asked.right ? 'You had this right' : 'You had this wrong'}</span>
        <button
          type="button"
          class="button small"
          aria-pressed={marked}
          onClick={() => toggleQuestion(item.id)}
        >
          {marked ? 'To ask the teacher' : 'Ask the teacher'}
        </button>
      </header>
      <kind.Face
        card={card}
        verdict={verdict}
        explanation={explanation}
        shown={settings.value}
        answer={() => {}}
        sounded={() => {}}
        next={next}
      />
    </main>
  );
}
