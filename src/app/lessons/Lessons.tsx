import { useEffect, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/deckLink.ts';
import { readLink } from '../../decks/link.ts';
import { isolated } from '../../decks/plain.ts';
import { readReport } from '../../decks/report.ts';
import { Written } from '../../parts/Written.tsx';
import { readiness } from '../../practice/readiness.ts';
import { keyLabel } from '../../theory/naming.ts';
import { AskedTwice } from '../AskedTwice.tsx';
import { tomorrowOf } from '../tomorrow.ts';
import { percent } from '../figures.ts';
import { LinkForm } from '../TextForm.tsx';
import { READYMADE } from '../readymade.ts';
import { ReadymadeList } from '../ReadymadeList.tsx';
import { go } from '../router.ts';
import { end, round } from '../round/session.ts';
import {
  chooseLesson,
  currentLesson,
  itemsOfLesson,
  lessons,
  memory,
  opened,
  prepare,
  quarantined,
  settings,
  takeWritten,
  type Lesson,
  type QuarantinedLesson,
} from '../state.ts';
import { deleteLesson, setAway } from '../keptLessons.ts';
import './Lessons.css';

/** The lessons on this phone, and ways to bring in more. */
export default function Lessons() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const here = lessons.value.filter(({ away }) => !away);
  const away = lessons.value.filter((lesson) => lesson.away);
  return (
    <main class="screen lessons">
      <h1>Lessons</h1>
      <LinkForm label="A link from your teacher" open={openLink} />
      <ul class="lesson-list">
        {here.map((lesson) => (
          <LessonRow key={lesson.id} lesson={lesson} />
        ))}
      </ul>
      {away.length > 0 && (
        <details>
          <summary>Put away · {away.length}</summary>
          <ul class="lesson-list">
            {away.map((lesson) => (
              <LessonRow key={lesson.id} lesson={lesson} />
            ))}
          </ul>
        </details>
      )}
      {quarantined.value.length > 0 && (
        <section>
          <h2>Cannot be read</h2>
          <ul class="lesson-list">
            {quarantined.value.map((lesson) => (
              <QuarantinedRow key={lesson.id} {...lesson} />
            ))}
          </ul>
        </section>
      )}
      <Readymade />
    </main>
  );
}

/** A link tapped in a message opens in the browser, not in the app on the home screen: so it can be pasted here. */
async function openLink(link: string): Promise<string | null> {
  const report = readReport(link);
  if ('report' in report) {
    go('report', report.payload);
    return null;
  }
  const read = await readLink(link);
  // Of a damaged report what is wrong with it is said, not that it is no lesson.
  if ('fault' in read) return /#?\/report\//.test(link) ? report.fault : read.fault;
  location.hash = await deckLink(read.deck, '');
  return null;
}

/** Whether the items of a lesson are here: of several long ones that takes a while. */
function usePrepared(lesson: Lesson): boolean {
  const [prepared, setPrepared] = useState<Deck | null>(null);
  const { deck } = lesson;
  useEffect(() => void prepare(lesson).then(() => setPrepared(deck)), [deck]);
  return prepared === deck;
}

/** How far a lesson has come, in a few words. */
function standing(id: string): string {
  const items = itemsOfLesson(id);
  const { overall, asked, of } = readiness(items, memory.value.of, tomorrowOf(Date.now()));
  if (of === 0) return 'to see and play';
  return asked === 0 ? 'not begun' : `${percent(overall)} known tomorrow`;
}

function LessonRow({ lesson }: { lesson: Lesson }) {
  const { id, deck, away } = lesson;
  const isPrepared = usePrepared(lesson);
  const current = currentLesson()?.id === id;
  return (
    <li class="sheet">
      <h2>
        <Written text={deck.title} />
      </h2>
      <p class="soft">
        {keyLabel(deck.key, settings.value.naming)}
        {isPrepared && ` · ${standing(id)}`}
        {current && ' · practised now'}
      </p>
      <div class="buttons">
        <button
          type="button"
          class="button"
          onClick={() => void setAway(id, !away)}
          aria-label={`${away ? 'Take back' : 'Put away'}: ${isolated(deck.title)}`}
        >
          {away ? 'Take back' : 'Put away'}
        </button>
        {!away && (
          <button
            type="button"
            class="button"
            aria-label={`Practise ${isolated(deck.title)}`}
            onClick={() => void chooseLesson(id).then(() => go('today'))}
          >
            Practise
          </button>
        )}
      </div>
      {away && <DeleteLesson id={id} title={deck.title} />}
    </li>
  );
}

function QuarantinedRow({ id, title, fault }: QuarantinedLesson) {
  return (
    <li class="sheet">
      <h2>
        <Written text={title} />
      </h2>
      <p class="soft">{fault} Ask your teacher for it once more.</p>
      <DeleteLesson id={id} title={title} />
    </li>
  );
}

function DeleteLesson({ id, title }: { id: string; title: string }) {
  const done = async () => {
    if (round.value?.deck === id) await end();
    await deleteLesson(id);
  };
  return (
    <AskedTwice
      name="Delete"
      of={isolated(title)}
      first="This takes the lesson off this phone. What you answered stays, and counts again should the lesson come back."
      second="Sure? Only its link, or a file with it, brings the lesson back."
      keep="Keep it"
      doIt={['Delete it', 'Yes, delete it']}
      done={() => void done()}
    />
  );
}

function Readymade() {
  const have = new Set(lessons.value.map(({ deck }) => deck.title));
  const others = READYMADE.filter(({ deck }) => !have.has(deck.title));
  if (others.length === 0) return null;
  return (
    <section>
      <h2>Ready-made</h2>
      <ReadymadeList
        lessons={others}
        name="Take it"
        use={(lesson) => void takeWritten(lesson).then(() => go('today'))}
      />
    </section>
  );
}
