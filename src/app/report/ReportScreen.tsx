import { Unbroken, Written } from '../../parts/Written.tsx';
import type { VNode } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { listed } from '../../parts/english.ts';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { KINDS } from '../../cards/index.ts';
import { KIND_NAMES } from '../../decks/deck.ts';
import { readReport, type Report } from '../../decks/report.ts';
import { Stair } from '../../parts/Stair.tsx';
import type { Item } from '../../practice/item.ts';
import { pictureOf, regionsOf, type Picture } from '../../practice/picture.ts';
import { chordOn } from '../../theory/chord.ts';
import { parentKey } from '../../theory/scale.ts';
import { dayName } from '../days.ts';
import { itemPlace } from '../deckWords.ts';
import { counted, percent } from '../figures.ts';
import { AskedTwice } from '../AskedTwice.tsx';
import { go, route } from '../router.ts';
import { opened, settings } from '../state.ts';
import { Keeping } from './Keeping.tsx';
import { MarksBehind } from './MarksBehind.tsx';
import { makeNext } from './next.ts';
import { Practised } from './Practised.tsx';
import { Regions } from './Regions.tsx';
import {
  arrive,
  keepAs,
  lessonOf,
  knownReport,
  remove,
  reportFault,
  type Fate,
  type KnownReport,
} from './reports.ts';
import { confusionWords, reportDay, studentName } from './reportWords.ts';
import { TimeFacts } from './TimeFacts.tsx';
import './Report.css';

type Read =
  | { readonly report: Report; readonly link: string; readonly fate: Fate | undefined }
  | { readonly fault: string };

/** A report that came as a link: kept, and shown as far as this device knows its lesson. */
export default function ReportScreen() {
  const payload = route.value.rest;
  const [read, setRead] = useState<Read | null>(null);
  useEffect(() => {
    if (!opened.value) return;
    setRead(null);
    const result = readReport(`#/report/${payload}`);
    const fault = 'fault' in result ? result.fault : reportFault(result.report, Date.now());
    if (fault !== null || 'fault' in result) setRead({ fault: fault! });
    else {
      const { report } = result;
      const link = `#/report/${result.payload}`;
      void arrive(report, link).then((fate) => setRead({ report, link, fate }));
    }
  }, [payload, opened.value]);
  if (!read) return <main class="screen" aria-busy="true" />;
  if ('fault' in read) return <Unreadable fault={read.fault} />;
  const lesson = lessonOf(read.report);
  const known = lesson && knownReport(read.report, read.link, lesson);
  const keeping = (
    <Keeping
      {...read}
      keep={(how) =>
        void keepAs(how, read.report, read.link).then((fate) => setRead({ ...read, fate }))
      }
    />
  );
  return known ? (
    <Told one={known} keeping={keeping} />
  ) : (
    <Unknown report={read.report} link={read.link} keeping={keeping} />
  );
}

function Unreadable({ fault }: { fault: string }) {
  return (
    <main class="screen">
      <h1>This report cannot be opened</h1>
      <p class="notice bad" role="alert">
        {fault}
      </p>
      <p class="soft">Nothing on this device was changed.</p>
      <a class="button main" href="#/class">
        Your students’ reports
      </a>
    </main>
  );
}

/** The lesson is on another device: a report does not carry it. */
function Unknown({ report, link, keeping }: { report: Report; link: string; keeping: VNode }) {
  const { question, name, sender, items } = report;
  return (
    <main class="screen report">
      <header>
        <p class="label">Report of {reportDay(report, true)}</p>
        <h1>
          <Written text={studentName(name, sender)} />
        </h1>
        {keeping}
      </header>
      {question && <blockquote dir="auto">“{question}”</blockquote>}
      <p class="notice" role="status">
        This device does not have the lesson that the report is on. Open that lesson’s link here
        first: the one this student had by {reportDay(report)}, with {counted(items.length, 'item')}
        . What is kept of its reports waits until then.
      </p>
      <Practised report={report} />
      <Removing report={report} link={link} />
      <div class="buttons last">
        <a class="button" href="#/class">
          All reports
        </a>
        <a class="button main" href="#/lessons">
          Paste the lesson’s link
        </a>
      </div>
    </main>
  );
}

/** Takes this report off the device, or all of its student's. */
function Removing({ report: { sender, deck }, link }: { report: Report; link: string }) {
  const removing = (which: Parameters<typeof remove>[0]) => () =>
    void remove(which).then(() => go('class'));
  const words = {
    second: 'Sure? Only its link, sent once more, brings a report back.',
    keep: 'Keep it',
    doIt: ['Remove', 'Yes, remove'] as const,
  };
  return (
    <>
      <AskedTwice
        name="Remove this report"
        first="This takes the report off this device."
        {...words}
        done={removing({ sender, deck, link })}
      />
      <AskedTwice
        name="Remove all of this student’s"
        first="This takes every report of this student off this device, on all lessons."
        {...words}
        done={removing({ sender })}
      />
    </>
  );
}

function Told({ one, keeping }: { one: KnownReport; keeping: VNode }) {
  const { report, items } = one;
  const picture = pictureOf(report, items);
  const reports = useMemo(() => [one], [one]);
  return (
    <main class="screen report">
      <Whose one={one} keeping={keeping} />
      {report.question && <blockquote dir="auto">“{report.question}”</blockquote>}
      <AsksAbout items={picture.askedAbout} />
      <Readiness one={one} picture={picture} />
      <Taken one={one} picture={picture} />
      <Regions regions={regionsOf(report, items)} />
      <TimeFacts report={report} />
      <Practised report={report} />
      <Pace report={report} />
      <Removing report={report} link={one.link} />
      <MarksBehind reports={reports} />
      <div class="buttons last">
        <a class="button" href="#/class">
          All reports
        </a>
        <button type="button" class="button main" onClick={() => void makeNext([one], Date.now())}>
          Make the next lesson
        </button>
      </div>
    </main>
  );
}

/** Whose report it is, on what, of when, and whether it is kept. */
function Whose({ one: { report, lesson }, keeping }: { one: KnownReport; keeping: VNode }) {
  return (
    <header>
      <p class="label">
        <Written text={lesson.deck.title} /> · report of {reportDay(report, true)}
      </p>
      <h1>
        <Written text={studentName(report.name, report.sender)} />
      </h1>
      {keeping}
    </header>
  );
}

function AsksAbout({ items }: { items: readonly Item[] }) {
  if (items.length === 0) return null;
  return (
    <section>
      <h2>Asks about</h2>
      <ul class="plain">
        {items.map((item) => (
          <li key={item.id}>
            <Unbroken text={itemPlace(item)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Readiness({ one, picture }: { one: KnownReport; picture: Picture }) {
  const { lesson, ahead } = one;
  const { key, lessonDay } = lesson.deck;
  const { naming } = settings.value;
  const steps = degreeSteps(key, 'triad', { naming, chordNames: false }).map((step, i) => ({
    ...step,
    filled: picture.byDegree[i]?.recall ?? 0,
  }));
  const numeral = (degree: number) => chordOn(parentKey(key), degree, 'triad').numeral;
  const when =
    lessonDay && ahead !== 7 ? `on ${dayName(lessonDay, Date.now())}` : 'a week after the report';
  return (
    <section class="sheet ready">
      <h2 class="label">Ready for the lesson</h2>
      <p class="figure">
        <strong>{percent(picture.all.recall)}</strong>
        <span class="soft">
          known {when}, without more practice; {picture.all.seen} of {picture.all.of} asked so far
          {picture.firstRight !== null &&
            `; ${percent(picture.firstRight)} right when asked first on a day`}
        </span>
      </p>
      <Stair steps={steps} label="How much of each degree is known on lesson day" />
      {picture.littleStays && (
        <p>Little of it stays so far: fewer items, shown once more in the lesson, would help.</p>
      )}
      {picture.weak.length > 0 && (
        <p>
          Weakest: <span class="music">{listed(picture.weak.map(numeral))}</span>.
        </p>
      )}
      {picture.untried.length > 0 && (
        <p>
          Not asked yet: <span class="music">{listed(picture.untried.map(numeral))}</span>.
        </p>
      )}
    </section>
  );
}

/** So many of the pairs are worth a teacher's time. */
const PAIRS = 6;

function Taken({ one, picture }: { one: KnownReport; picture: Picture }) {
  return (
    <section>
      <h2>Taken for another</h2>
      {picture.confusions.length === 0 ? (
        <p class="soft">Nothing lately.</p>
      ) : (
        <ul class="plain">
          {picture.confusions.slice(0, PAIRS).map((pair) => (
            <li key={`${pair.kind} ${pair.size} ${pair.degree} ${pair.takenFor}`}>
              {confusionWords(pair, one.lesson.deck.key)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Pace({ report }: { report: Report }) {
  const { asked, seconds } = report;
  const paces = KIND_NAMES.flatMap((kind) =>
    seconds[kind] === undefined
      ? []
      : [`${seconds[kind].toFixed(1)} s to ${KINDS[kind].words.card}`],
  );
  return (
    <p class="soft">
      {counted(asked, 'answer')} on this lesson.
      {paces.length > 0 && ` Usually ${listed(paces)}.`}
    </p>
  );
}
