import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { Unbroken, Written } from '../../parts/Written.tsx';
import type { Deck } from '../../decks/deck.ts';
import type { Item } from '../../practice/item.ts';
import { GUITAR, instrumentId } from '../../neck/instrument.ts';
import { isEnough } from '../../practice/enough.ts';
import { leastSure } from '../../practice/readiness.ts';
import { dayName, daysLeft, startAhead } from '../days.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { instrumentWords, itemWords } from '../deckWords.ts';
import { GuitarSwitch } from '../guitar/GuitarSwitch.tsx';
import { currentLesson, itemsOfLesson, memory, settings, type Lesson } from '../state.ts';
import { Begin } from './Begin.tsx';
import { itemsListed } from './itemsListed.ts';
import { usualMinutes } from './lengths.ts';
import { Ready } from './Ready.tsx';
import { WithoutSound } from './WithoutSound.tsx';
import './Today.css';

/** The lesson practised: how ready it is, and one button to begin; of one without drills its phrases. */
export default function LessonToday() {
  const lesson = currentLesson();
  if (!lesson) return null;
  return itemsOfLesson(lesson.id).length > 0 ? (
    <ItemsToday key={lesson.id} lesson={lesson} />
  ) : (
    <PhrasesToday lesson={lesson} />
  );
}

function ItemsToday({ lesson }: { lesson: Lesson }) {
  const { deck, id } = lesson;
  const now = Date.now();
  const items = itemsOfLesson(id);
  const lessonAt = startAhead(deck.lessonDay, now);
  const usual = usualMinutes(items, memory.value.of, now, lessonAt);
  const [minutes, setMinutes] = useState<number | null>(null);
  const isDone = isEnough(items, memory.value.of, now, lessonAt);
  return (
    <main class="screen today">
      <Head deck={deck} now={now} />
      <Ready {...{ lesson, now, lessonAt }} minutes={minutes ?? usual} />
      {isDone ? (
        <p class="notice" role="status">
          Enough for today: what was asked is likely to be known, and nothing would gain much by
          being asked now. You may go on if you like.
        </p>
      ) : (
        <LeastSure items={items} now={now} />
      )}
      <WithoutSound deck={id} />
      <GuitarSwitch items={items} />
      <Tiles deck={deck} isAsked />
      <SettingsLink />
      <Begin {...{ lesson, usual, isDone }} choose={setMinutes} />
    </main>
  );
}

/** A lesson without drills: there is nothing to ask, and its phrases to play. */
function PhrasesToday({ lesson: { deck } }: { lesson: Lesson }) {
  return (
    <main class="screen today">
      <Head deck={deck} now={Date.now()} />
      <p>
        Nothing is asked in this lesson: it has {deck.phrases.length === 1 ? 'a phrase' : 'phrases'}{' '}
        to see, hear and play along with.
      </p>
      <Tiles deck={{ ...deck, phrases: [] }} />
      <SettingsLink />
      <div class="last">
        <a class="button main wide" href="#/phrases">
          {phrasesOf(deck)} of this lesson
        </a>
      </div>
    </main>
  );
}

function Head({ deck, now }: { deck: Deck; now: number }) {
  return (
    <header>
      <p class="label">
        {deck.lessonDay
          ? `For ${dayName(deck.lessonDay, now)} · ${daysLeft(deck.lessonDay, now)}`
          : 'Your lesson'}
      </p>
      <h1>
        <Written text={deck.title} />
      </h1>
      {deck.note && (
        <p class="note" dir="auto">
          “{deck.note}”
        </p>
      )}
      {instrumentId(deck.instrument) !== instrumentId(GUITAR) && (
        <p class="soft">{instrumentWords(deck.instrument)}</p>
      )}
    </header>
  );
}

/** What is asked about is told in a few words: two of the six least sure that are not called the same. */
function LeastSure({ items, now }: { items: readonly Item[]; now: number }) {
  const least = leastSure(items, memory.value.of, tomorrowOf(now), 6).map(itemWords);
  const unsure = itemsListed([...new Set(least)].slice(0, 2));
  return unsure ? (
    <p class="soft">
      Least sure: <Unbroken text={unsure} />.
    </p>
  ) : null;
}

const phrasesOf = ({ phrases: { length } }: Deck) =>
  length === 1 ? 'The phrase' : `The ${length} phrases`;

/** What else there is to do with the lesson, one as large as the other. */
function Tiles({ deck, isAsked = false }: { deck: Deck; isAsked?: boolean }) {
  return (
    <ul class="tiles">
      {deck.phrases.length > 0 && (
        <Tile to="phrases" name={phrasesOf(deck)}>
          of this lesson
        </Tile>
      )}
      <Tile to="minute" name="A free minute">
        {!settings.value.guitar.inHand && 'with the guitar in hand'}
      </Tile>
      {isAsked && (
        <>
          <Tile to="send" name="Send a report">
            to your teacher
          </Tile>
          <Tile to="calendar" name="Practice days">
            for your calendar
          </Tile>
        </>
      )}
    </ul>
  );
}

function SettingsLink() {
  return (
    <p class="settings-link">
      <a class="alone" href="#/settings">
        Sound and names
      </a>
    </p>
  );
}

function Tile({ to, name, children }: { to: string; name: string; children: ComponentChildren }) {
  return (
    <li>
      <a class="button" href={`#/${to}`}>
        {name} <span class="soft">{children}</span>
      </a>
    </li>
  );
}
