import { isolated } from '../../decks/plain.ts';
import { Unbroken, Written } from '../../parts/Written.tsx';
import { useEffect, useState } from 'preact/hooks';
import { deckMark, MOST_TOLD, reportLink, senderMark } from '../../decks/report.ts';
import { reportOf, type LessonKnowledge } from '../../practice/report.ts';
import { startAhead } from '../days.ts';
import { itemPlace } from '../deckWords.ts';
import { LinkBox } from '../LinkBox.tsx';
import { LinesToSend } from '../minute/LinesToSend.tsx';
import { minutes, openMinutes, type Minute } from '../minute/minutes.ts';
import { questions } from '../round/questions.ts';
import { toggleQuestion } from '../round/toggleQuestion.ts';
import { base } from '../router.ts';
import {
  changeSettings,
  currentLesson,
  haveLog,
  itemsOfLesson,
  log,
  memory,
  opened,
  settings,
  type Lesson,
} from '../state.ts';
import { readTimings } from './timings.ts';
import './Report.css';

/** What the student sends back to the teacher: nothing leaves the phone but by the link that is made here. */
export default function SendReport() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  return lesson ? <Ready lesson={lesson} /> : <Nothing />;
}

/** What of the phone's a report tells beside the log. */
type Kept = Pick<LessonKnowledge, 'timings' | 'minutes'>;

/** Reads what is kept of answers, figures and free minutes before there is a link. */
function Ready({ lesson }: { lesson: Lesson }) {
  const [kept, setKept] = useState<Kept | null>(null);
  useEffect(() => {
    void Promise.all([readTimings(), openMinutes(), haveLog()]).then(([timings]) => {
      const own = (minutes.value ?? []).filter((one) => one.lesson === lesson.id);
      setKept({ timings, minutes: own.map(playedOf) });
    });
  }, [lesson]);
  return kept ? <Send lesson={lesson} kept={kept} /> : <main class="screen" aria-busy="true" />;
}

function playedOf({ at, figures }: Minute): Kept['minutes'][number] {
  const { leaping, run, outlined, reach, spread } = figures;
  return { at, leaping: leaping ?? 0, run, outlined, reach: reach ?? 0, spread };
}

function Nothing() {
  return (
    <main class="screen">
      <h1>A report</h1>
      <p>
        There is no lesson to report on yet. Open the link your teacher sent, and practise a little.
      </p>
      <a class="button main" href="#/lessons">
        Lessons
      </a>
    </main>
  );
}

function Send({ lesson, kept }: { lesson: Lesson; kept: Kept }) {
  const [question, setQuestion] = useState('');
  const { name } = settings.value.report;
  return (
    <main class="screen share send">
      <header>
        <h1>A report to your teacher</h1>
        <p class="soft">
          On “<Written text={lesson.deck.title} />
          ”: what you know of each item, what you take for what, how evenly you keep time, the
          figures of your free minutes, the days you practised. Your name is in it only if you write
          it here.
        </p>
      </header>
      <label class="field">
        <span class="label">A question to your teacher</span>
        <input
          type="text"
          maxLength={MOST_TOLD.question}
          value={question}
          onInput={(event) => setQuestion(plain(event.currentTarget.value))}
        />
      </label>
      <label class="field">
        <span class="label">Your name, if you like</span>
        <input
          type="text"
          maxLength={MOST_TOLD.name}
          autocomplete="off"
          value={name}
          onInput={(event) =>
            changeSettings({ report: { name: plain(event.currentTarget.value) } })
          }
        />
      </label>
      <ToAsk lesson={lesson} />
      <LinkBox
        label="The report’s link"
        title={`Report on ${isolated(lesson.deck.title)}`}
        link={linkOf(lesson, kept, { question: question.trim(), name: name.trim() })}
        copied="Copied. Paste it into a message to your teacher."
        text="How my practice went. Tap to see it."
      />
      <LinesToSend lesson={lesson.id} />
      <div class="last">
        <a class="button wide" href="#/today">
          Back to today
        </a>
      </div>
    </main>
  );
}

/** The link of a report on the lesson as it stands now, with what is written for the teacher. */
function linkOf(
  lesson: Lesson,
  kept: Kept,
  written: { readonly question: string; readonly name: string },
) {
  const now = Date.now();
  const report = reportOf(
    {
      items: itemsOfLesson(lesson.id),
      memory: memory.value.of,
      reviews: log.value!.reviews,
      questions: questions.value,
      ...kept,
      lesson: startAhead(lesson.deck.lessonDay, now),
    },
    { deck: deckMark(lesson.id), sender: senderMark(log.value!.device), ...written },
    now,
    -new Date(now).getTimezoneOffset(),
  );
  return reportLink(report, base());
}

/** The cards that the student wants to ask about, each of which can be left out. */
function ToAsk({ lesson }: { lesson: Lesson }) {
  const toAsk = itemsOfLesson(lesson.id)
    .filter(({ id }) => questions.value.includes(id))
    .slice(0, MOST_TOLD.askedAbout);
  if (toAsk.length === 0) return null;
  return (
    <section>
      <h2 class="label">Cards to ask about</h2>
      <ul class="to-ask">
        {toAsk.map((item) => (
          <li key={item.id}>
            <span>
              <Unbroken text={itemPlace(item)} />
            </span>
            <button
              type="button"
              class="button small"
              aria-label={`Leave out: ${itemPlace(item)}`}
              onClick={() => toggleQuestion(item.id)}
            >
              Leave out
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What a keyboard or a paste may bring in that no link carries. */
const plain = (text: string) => text.replaceAll(/[\p{Cc}\p{Cs}]/gu, ' ');
