import { Unbroken, Written } from '../../parts/Written.tsx';
import { useLayoutEffect, useState } from 'preact/hooks';
import { wantsGuitar } from '../../cards/here.ts';
import type { Deck } from '../../decks/deck.ts';
import type { Fault } from '../../decks/envelope.ts';
import { lettersOf } from '../../decks/letters.ts';
import { plainLesson } from '../../decks/plainLesson.ts';
import type { Item } from '../../practice/item.ts';
import { minutesADay } from '../../practice/untilReady.ts';
import { unlock } from '../../sound/index.ts';
import { keyLabel } from '../../theory/naming.ts';
import { dayName, daysLeft, startAhead } from '../days.ts';
import { drillWords, instrumentWords } from '../deckWords.ts';
import { counted } from '../figures.ts';
import { pause } from '../later.ts';
import { lostSentence } from '../lost.ts';
import { beginRound } from '../round/session.ts';
import { leaving, route } from '../router.ts';
import {
  countable,
  haveItems,
  itemsOfDeck,
  memory,
  opened,
  settings,
  take,
  takeWritten,
  type Lesson as Kept,
} from '../state.ts';

/** A lesson that is not kept yet. */
interface Offer {
  readonly deck: Deck;
  /** Keeps it and makes it the one practised. */
  keep(): Promise<Kept>;
}

type Opened = Offer | Fault;

/** A lesson that came as a link: what it is, before anything is kept of it. */
export default function Lesson() {
  const payload = route.value.rest;
  const [read, setRead] = useState<Opened | null>(null);
  useLayoutEffect(() => {
    setRead(null);
    void openLink(payload)
      .then(setRead)
      .catch((error: unknown) => {
        setRead({ fault: lostSentence('The lesson could not be opened') });
        throw error;
      });
  }, [payload]);
  if (!read || !opened.value) return <main class="screen" aria-busy="true" />;
  return 'fault' in read ? <Unreadable fault={read.fault} /> : <Offered {...read} />;
}

/** What a link holds, one step after the other: a slow phone has time for a tap between them. */
async function openLink(payload: string): Promise<Opened> {
  const letters = await lettersOf(`#/lesson/${payload}`);
  if (typeof letters !== 'string') return letters;
  const offer = await offerOf(letters);
  if ('fault' in offer) return offer;
  await countable(offer.deck);
  await pause();
  await haveItems(offer.deck);
  await pause();
  return offer;
}

/** What reads any lesson comes only where a plain one is not all there is. */
async function offerOf(letters: string): Promise<Opened> {
  const plain = plainLesson(letters);
  if (plain) return { deck: plain.deck, keep: () => takeWritten(plain) };
  const read = (await import('../../decks/link.ts')).readLetters(letters);
  return 'fault' in read ? read : { deck: read.deck, keep: () => take(read.deck) };
}

/** Said of a lesson whose drills find nothing, as one made by hand may be. */
const NOTHING_TO_ASK =
  'Its drills find nothing to ask: no chord lies whole on their strings and frets, and no phrase outlines one. Ask your teacher for more strings or frets, or a lower capo.';

function Unreadable({ fault }: { fault: string }) {
  return (
    <main class="screen">
      <h1>This link cannot be opened</h1>
      <p class="notice bad" role="alert">
        {fault}
      </p>
      <p class="soft">Nothing on this phone was changed.</p>
      <a class="button main" href="#/today">
        Go on to today
      </a>
    </main>
  );
}

function Offered({ deck, keep }: Offer) {
  const now = Date.now();
  const items = itemsOfDeck(deck);
  const lessonAt = startAhead(deck.lessonDay, now);
  const minutes = minutesADay(items, memory.value.of, now, lessonAt);
  if (items.length === 0 && deck.drills.length > 0) return <Unreadable fault={NOTHING_TO_ASK} />;
  const start = async () => {
    unlock();
    const leave = leaving();
    const { id } = await keep();
    if (items.length === 0) return leave('phrases');
    await beginRound(id, Math.min(8, Math.max(3, minutes)));
    leave('round');
  };
  const later = () => {
    const leave = leaving();
    void keep().then(() => leave('today'));
  };
  return (
    <main class="screen offered">
      <header>
        <p class="label">A lesson for you</p>
        <h1>
          <Written text={deck.title} />
        </h1>
        {deck.note && (
          <p class="note" dir="auto">
            “{deck.note}”
          </p>
        )}
      </header>
      <Contents {...{ deck, items, minutes, now }} />
      <div class="buttons last">
        <button type="button" class="button" onClick={later}>
          Keep for later
        </button>
        <button type="button" class="button main" data-do="start" onClick={() => void start()}>
          {items.length > 0 ? 'Start' : 'See the phrases'}
        </button>
      </div>
    </main>
  );
}

interface ContentsProps {
  deck: Deck;
  items: readonly Item[];
  /** How many it takes a day. */
  minutes: number;
  now: number;
}

/** What is in the lesson, and what it asks of the student. */
function Contents({ deck, items, minutes, now }: ContentsProps) {
  const { key, instrument, lessonDay, drills, phrases } = deck;
  const isAsked = items.length > 0;
  return (
    <dl class="facts sheet">
      <dt>Key</dt>
      <dd class="music">{keyLabel(key, settings.value.naming)}</dd>
      <dt>Instrument</dt>
      <dd>{instrumentWords(instrument)}</dd>
      {lessonDay && (
        <>
          <dt>Next lesson</dt>
          <dd>
            {dayName(lessonDay, now)}, {daysLeft(lessonDay, now)}
          </dd>
        </>
      )}
      {isAsked && <Drills drills={drills} />}
      {phrases.length > 0 && (
        <>
          <dt>Phrases</dt>
          <dd>{phrases.length}, to see, hear and play</dd>
        </>
      )}
      {isAsked && (
        <>
          <dt>Time</dt>
          <dd>
            {counted(items.length, 'item')}, about {counted(minutes, 'minute')} a day
          </dd>
        </>
      )}
      {drills.some(({ kind }) => wantsGuitar(kind)) && (
        <>
          <dt>Guitar</dt>
          <dd>Some of its cards want the guitar in your hand.</dd>
        </>
      )}
    </dl>
  );
}

function Drills({ drills }: Pick<Deck, 'drills'>) {
  return (
    <>
      <dt>Drills</dt>
      <dd>
        <ul>
          {drills.map((drill, index) => (
            <li key={index}>
              <Unbroken text={drillWords(drill)} />
            </li>
          ))}
        </ul>
      </dd>
    </>
  );
}
