import { Written } from '../../parts/Written.tsx';
import { listed } from '../../parts/english.ts';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import type { Deck } from '../../decks/deck.ts';
import { GUITAR, instrumentId } from '../../neck/instrument.ts';
import { Stair } from '../../parts/Stair.tsx';
import { isEnough } from '../../practice/enough.ts';
import { nextCard } from '../../practice/next.ts';
import { canGoOn } from '../../practice/round.ts';
import { leastSure, minutesADay, readiness } from '../../practice/summary.ts';
import { unlock } from '../../sound/index.ts';
import { dayName, daysLeft, startAhead, tomorrowOf } from '../days.ts';
import { instrumentWords, itemWords } from '../deckWords.ts';
import { percent } from '../figures.ts';
import { takeUp } from '../guitar/hand.ts';
import { GuitarSwitch } from '../guitar/GuitarSwitch.tsx';
import { askable, begin, round } from '../round/session.ts';
import { timeLeft } from '../round/timeLeft.ts';
import { go } from '../router.ts';
import { currentLesson, itemsOfLesson, memory, opened, settings, type Lesson } from '../state.ts';
import { hasLessons } from '../../store/glance.ts';
import { FirstVisit } from './FirstVisit.tsx';
import { Unheard } from './Unheard.tsx';
import './Today.css';

/** The longest round that is offered unasked, minutes: about eight a day were as good as more (Molloy et al. 2012). */
const LONGEST = 8;

/** Rounds of other lengths, minutes. */
const LENGTHS = [3, 5, 8, 12];

/** What is practised now, how ready it is, and one button to begin. */
export default function Today() {
  // Who has no lesson need not wait to be told so.
  if (!opened.value && hasLessons()) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  if (!lesson) return <FirstVisit />;
  return itemsOfLesson(lesson.id).length > 0 ? (
    <LessonToday lesson={lesson} />
  ) : (
    <PhrasesToday lesson={lesson} />
  );
}

function LessonToday({ lesson }: { lesson: Lesson }) {
  const { deck, id } = lesson;
  const now = Date.now();
  const items = itemsOfLesson(id);
  const known = memory.value.of;
  const lessonAt = startAhead(deck.lessonDay, now);
  const minutes = Math.min(LONGEST, Math.max(3, minutesADay(items, known, now, lessonAt)));
  const current = round.value;
  const goesOn =
    current?.deck === id &&
    canGoOn(current, now, -new Date(now).getTimezoneOffset()) &&
    nextCard(current, askable(id), known, now) !== null;
  const start = async (length: Length | 'go on') => {
    unlock();
    takeUp(id);
    if (length !== 'go on') await begin(id, length);
    go('round');
  };
  const enough = items.length > 0 && isEnough(items, known, now, lessonAt);
  const unsure = [...new Set(leastSure(items, known, tomorrowOf(now), 6).map(itemWords))].slice(
    0,
    2,
  );
  return (
    <main class="screen today">
      <Head deck={deck} now={now} />
      <Ready lesson={lesson} now={now} lessonAt={lessonAt} />
      {unsure.length > 0 && <p class="soft">Least sure: {listed(unsure)}.</p>}
      {enough && (
        <p class="notice" role="status">
          Enough for today: what was asked is likely to be known, and nothing would gain much by
          being asked now. You may go on if you like.
        </p>
      )}
      <GuitarSwitch items={items} />
      <FreeMinute />
      <Unheard deck={id} />
      <Lengths start={(length) => void start(length)} />
      {deck.phrases.length > 0 && (
        <a class="button quiet soft" href="#/phrases">
          {phrasesOf(deck)}
        </a>
      )}
      <WithTheTeacher />
      <div class="last">
        <button
          type="button"
          class="button main wide"
          data-do="start"
          onClick={() => void start(goesOn ? 'go on' : minutes)}
        >
          {goesOn ? `Go on: ${timeLeft(current)}` : `Practise ${minutes} minutes`}
        </button>
      </div>
    </main>
  );
}

/** How long a round is: so many minutes, or until enough is known. */
type Length = number | 'enough';

/** A round of another length. */
function Lengths({ start }: { start(length: Length): void }) {
  return (
    <div class="lengths" role="group" aria-label="A round of another length">
      {LENGTHS.map((length) => (
        <button
          type="button"
          key={length}
          class="button quiet"
          aria-label={`Practise ${length} minutes`}
          onClick={() => start(length)}
        >
          {length} min
        </button>
      ))}
      <button type="button" class="button quiet" onClick={() => start('enough')}>
        until enough
      </button>
    </div>
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
      <FreeMinute />
      <div class="last">
        <a class="button main wide" href="#/phrases">
          {phrasesOf(deck)}
        </a>
      </div>
    </main>
  );
}

/** A minute of playing what one likes. */
function FreeMinute() {
  return (
    <a class="button quiet soft" href="#/minute">
      {settings.value.guitar.inHand ? 'A free minute' : 'A free minute, with the guitar in hand'}
    </a>
  );
}

/** What goes out of the page: a report to the teacher, and the days until the next lesson. */
function WithTheTeacher() {
  return (
    <>
      <a class="button quiet soft" href="#/send">
        Send a report to your teacher
      </a>
      <a class="button quiet soft" href="#/calendar">
        Practice days for your calendar
      </a>
    </>
  );
}

const phrasesOf = ({ phrases: { length } }: Deck) =>
  `${length === 1 ? 'The phrase' : `The ${length} phrases`} of this lesson`;

function Head({ deck, now }: { deck: Deck; now: number }) {
  return (
    <header>
      <p class="label">
        {deck.lessonDay
          ? `For ${dayName(deck.lessonDay, now)} · ${daysLeft(deck.lessonDay, now)}`
          : 'Your lesson'}
        <a class="settings-link alone" href="#/settings">
          Sound and names
        </a>
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

/** How ready the lesson is: a number with a meaning, and the staircase as full as each degree is known. */
function Ready({
  lesson,
  now,
  lessonAt,
}: {
  lesson: Lesson;
  now: number;
  lessonAt: number | null;
}) {
  const items = itemsOfLesson(lesson.id);
  const known = memory.value.of;
  const tomorrow = readiness(items, known, tomorrowOf(now));
  const then = readiness(items, known, lessonAt ?? now + 7 * 86_400_000);
  const { naming } = settings.value;
  const steps = degreeSteps(lesson.deck.key, 'triad', { naming, chordNames: false }).map(
    (step, index) => ({
      ...step,
      filled: tomorrow.byDegree[index] ?? 0,
    }),
  );
  const when =
    lesson.deck.lessonDay && lessonAt !== null ? dayName(lesson.deck.lessonDay, now) : 'next week';
  return (
    <section class="sheet ready">
      <div class="head">
        <h2 class="label">What you know of it</h2>
        {tomorrow.asked > 0 && (
          <a class="alone" href="#/known">
            Look closer
          </a>
        )}
      </div>
      <p class="figure">
        <strong>{percent(tomorrow.overall)}</strong>
        <span class="soft">
          tomorrow morning, {percent(then.overall)} by {when} if you stopped here; {tomorrow.asked}{' '}
          of {tomorrow.of} asked so far
        </span>
      </p>
      <Stair steps={steps} label="How much is known of each degree tomorrow morning" />
    </section>
  );
}
