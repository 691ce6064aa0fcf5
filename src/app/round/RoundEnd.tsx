import type { ComponentChildren } from 'preact';
import { wantsGuitar } from '../../cards/here.ts';
import type { Item } from '../../practice/item.ts';
import { summarise } from '../../practice/summary.ts';
import { useEffect, useRef, useState } from 'preact/hooks';
import { countRound, InstallHint } from './InstallHint.tsx';
import { LookBack } from './LookBack.tsx';
import { guitar } from '../guitar/guitar.ts';
import { itemsOfLesson, memory } from '../state.ts';
import { Grown } from './Grown.tsx';
import { Missed } from './Missed.tsx';
import { NewPlaces } from './NewPlaces.tsx';
import { ItemNames } from './ItemNames.tsx';
import { askable } from './askable.ts';
import { beginRound, end, round } from './session.ts';
import { go } from '../router.ts';
import './RoundEnd.css';

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
  const { cards, asked, rightFirst, fresh, grown, missed, left, unseen } = summary;
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
      {cards > 0 ? (
        <Grown>
          {rightFirst} of {asked} right first time
        </Grown>
      ) : (
        <LeftToPlay items={items} />
      )}
      <Group title="New and known" items={fresh}>
        <NewPlaces fresh={fresh} />
      </Group>
      <Group title="Comes again soon" items={missed}>
        <Missed items={missed} />
        {left.length > 0 && <p class="soft">What would not come today is left for another day.</p>}
      </Group>
      <Group title="Surer than before" items={grown}>
        <ItemNames items={grown} />
      </Group>
      <p class="soft">{unseenWords(unseen)}</p>
      <div class="ways-on">
        {cards > 0 && (
          <button type="button" class="button" onClick={look}>
            Look back over the cards
          </button>
        )}
        <a class="button" href="#/send">
          Send a report to your teacher
        </a>
      </div>
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
  return (
    <div class="buttons last">
      <button type="button" class="button" data-do="start" onClick={() => void beginRound(deck, 3)}>
        3 minutes more
      </button>
      <button type="button" class="button main" onClick={leave}>
        Back to today
      </button>
    </div>
  );
}

interface GroupProps {
  title: string;
  items: readonly Item[];
  children: ComponentChildren;
}

/** Some items of the round, how many they are, and a picture of them or their names. */
function Group({ title, items, children }: GroupProps) {
  if (items.length === 0) return null;
  return (
    <section class="sheet">
      <h2>
        {title} · {items.length}
      </h2>
      {children}
    </section>
  );
}
