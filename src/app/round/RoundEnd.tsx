import { wantsGuitar } from '../../cards/here.ts';
import type { Item } from '../../practice/item.ts';
import { summarise } from '../../practice/summary.ts';
import { useEffect, useRef, useState } from 'preact/hooks';
import { countRound, InstallHint } from './InstallHint.tsx';
import { LookBack } from './LookBack.tsx';
import { itemPlace } from '../deckWords.ts';
import { guitar, takeUp } from '../guitar/hand.ts';
import { itemsOfLesson, memory } from '../state.ts';
import { askable, begin, end, round } from './session.ts';
import { go } from '../router.ts';

/** At the end of a round: what grew, what comes again, what is next. */
export default function RoundEnd() {
  const [looking, setLooking] = useState(false);
  if (looking) return <LookBack leave={() => setLooking(false)} />;
  return <Ended look={() => setLooking(true)} />;
}

function Ended({ look }: { look(): void }) {
  const current = round.value!;
  const items = itemsOfLesson(current.deck);
  const summary = summarise(current, items, memory.value.of);
  const { cards, right, fresh, grown, missed, left, unseen } = summary;
  // What had the focus is gone; so that is heard what came instead.
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    title.current?.focus();
    if (cards > 0) countRound(current.started);
  }, []);
  return (
    <main class="screen round-end">
      <h1 ref={title} tabIndex={-1}>
        {cards === 0 ? 'Nothing to ask now' : 'Done for now'}
      </h1>
      {askable(current.deck).length === 0 && items.length > 0 && (
        <p>What this lesson asks must be heard, and the phone does not sound: turn sound on.</p>
      )}
      {cards > 0 && (
        <p>
          {right} of {cards} right.
        </p>
      )}
      {cards === 0 && <LeftToPlay items={items} />}
      <Group title="New and known" items={fresh.map(itemPlace)} />
      <Group title="Surer than before" items={grown.map(itemPlace)} />
      <Group title="Comes again soon" items={missed.map(itemPlace)} />
      <Left count={left.length} />
      <p class="soft">{unseenWords(unseen)}</p>
      {cards > 0 && (
        <button type="button" class="button" onClick={look}>
          Look back over the cards
        </button>
      )}
      <p>
        <a href="#/send">Send a report to your teacher</a>
      </p>
      <p class="soft">Stretch your hands and rest your ears before you go on.</p>
      <InstallHint />
      <Onward deck={current.deck} />
    </main>
  );
}

/** Says so where what is left needs a guitar that is not in hand. */
function LeftToPlay({ items }: { items: readonly Item[] }) {
  if (guitar.value || !items.some(({ kind }) => wantsGuitar(kind))) return null;
  return <p>The cards that are left are played: take the guitar in hand, on Today.</p>;
}

function unseenWords(unseen: number): string {
  return unseen === 0
    ? 'Every item of this lesson has been asked.'
    : `${unseen} ${unseen === 1 ? 'item has' : 'items have'} not been asked yet; they come in little by little.`;
}

function Onward({ deck }: { deck: string }) {
  const leave = () => void end().then(() => go('today'));
  const more = () => {
    takeUp(deck);
    void begin(deck, 3);
  };
  return (
    <div class="buttons last">
      <button type="button" class="button" data-do="start" onClick={more}>
        3 minutes more
      </button>
      <button type="button" class="button main" onClick={leave}>
        Back to today
      </button>
    </div>
  );
}

/** That the round did not go on with what was missed over and over. */
function Left({ count }: { count: number }) {
  if (count === 0) return null;
  return (
    <p>
      {count === 1
        ? 'One of these would not come today; it is left for another day.'
        : `${count} of these would not come today; they are left for another day.`}
    </p>
  );
}

function Group({ title, items }: { title: string; items: readonly string[] }) {
  if (items.length === 0) return null;
  const some = items.slice(0, 4);
  const rest = items.length - some.length;
  return (
    <section class="sheet">
      <h2>
        {title} · {items.length}
      </h2>
      <p>{[...some, ...(rest > 0 ? [`${rest} more`] : [])].join(' · ')}</p>
    </section>
  );
}
