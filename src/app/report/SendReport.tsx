import { Written } from '../../parts/Written.tsx';
import { useState } from 'preact/hooks';
import { deckMark, MOST_TOLD, reportLink, senderMark } from '../../decks/report.ts';
import { reportOf } from '../../practice/report.ts';
import { startAhead } from '../days.ts';
import { itemPlace } from '../deckWords.ts';
import { LinkBox } from '../LinkBox.tsx';
import { questions, toggleQuestion } from '../round/questions.ts';
import { base } from '../router.ts';
import { currentLesson, itemsOfLesson, log, memory, opened, type Lesson } from '../state.ts';
import './Report.css';

/** What the student sends back to the teacher: nothing leaves the phone but by the link that is made here. */
export default function SendReport() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  return lesson ? <Send lesson={lesson} /> : <Nothing />;
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

function Send({ lesson }: { lesson: Lesson }) {
  const [question, setQuestion] = useState('');
  const [name, setName] = useState('');
  return (
    <main class="screen share send">
      <header>
        <h1>A report to your teacher</h1>
        <p class="soft">
          On “<Written text={lesson.deck.title} />
          ”: what you know of each item, what you take for what, the days you practised. Your name
          is in it only if you write it here.
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
          onInput={(event) => setName(plain(event.currentTarget.value))}
        />
      </label>
      <ToAsk lesson={lesson} />
      <LinkBox
        label="The report’s link"
        title={`Report on ${lesson.deck.title}`}
        link={linkOf(lesson, { question: question.trim(), name: name.trim() })}
        copied="Copied. Paste it into a message to your teacher."
      />
      <div class="last">
        <a class="button wide" href="#/today">
          Back to today
        </a>
      </div>
    </main>
  );
}

/** The link of a report on the lesson as it stands now, with what is written for the teacher. */
function linkOf(lesson: Lesson, written: { readonly question: string; readonly name: string }) {
  const now = Date.now();
  const report = reportOf(
    {
      items: itemsOfLesson(lesson.id),
      memory: memory.value.of,
      reviews: log.value!.reviews,
      questions: questions.value,
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
            <span>{itemPlace(item)}</span>
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
