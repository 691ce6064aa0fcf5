import { useEffect, useMemo, useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { listed } from '../../parts/words.ts';
import { Stair } from '../../parts/Stair.tsx';
import {
  classConfusions,
  classOf,
  classWeeks,
  meanByDegree,
  pairId,
  type Student,
} from '../../practice/class.ts';
import { chordOn } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { parentKey } from '../../theory/scale.ts';
import { PasteReport } from './PasteReport.tsx';
import { lessons, opened, settings, type Lesson } from '../state.ts';
import { makeNext } from './next.ts';
import {
  filedReports,
  openReports,
  reportedLessons,
  reports,
  type FiledReport,
  type PlacedReport,
} from './reports.ts';
import { confusionWords, percent, reportDay, studentName, takenWords } from './words.ts';
import './Report.css';

/** All students side by side, those who need most first. */
export default function ClassScreen() {
  useEffect(() => {
    if (opened.value) void openReports();
  }, [opened.value]);
  const all = reports.value;
  const { known, unknown } = useMemo(() => filedReports(all ?? []), [all, lessons.value]);
  const [lessonId, choose] = useState<string | null>(null);
  if (!all) return <main class="screen" aria-busy="true" />;
  const reported = reportedLessons(known);
  const lesson = reported.find(({ id }) => id === lessonId) ?? reported[0];
  return (
    <main class="screen class">
      <header>
        <h1>Reports</h1>
        {all.length === 0 && (
          <p class="soft">
            None yet. Your students send one from Today; tap its link on this device, or paste it
            here. It stays on this device.
          </p>
        )}
      </header>
      <PasteReport />
      {reported.length > 1 && (
        <label class="field">
          <span class="label">Lesson</span>
          <select value={lesson!.id} onChange={(event) => choose(event.currentTarget.value)}>
            {reported.map(({ id, deck }) => (
              <option key={id} value={id}>
                {deck.title}
              </option>
            ))}
          </select>
        </label>
      )}
      {unknown > 0 && (
        <p class="notice">
          {unknown} {unknown === 1 ? 'report waits' : 'reports wait'} for a lesson that this device
          does not have: open that lesson’s link here.
        </p>
      )}
      {lesson && <OfLesson key={lesson.id} lesson={lesson} known={known} />}
    </main>
  );
}

/** So many rows are in the first picture: more than any screen shows. The others follow. */
const FIRST = 30;

/** So many of the pairs are worth a teacher's time. */
const PAIRS = 4;

function OfLesson({ lesson, known }: { lesson: Lesson; known: readonly FiledReport[] }) {
  const [degree, setDegree] = useState<number | null>(null);
  const [out, setOut] = useState<readonly number[]>([]);
  const late = useLate();
  const mark = known.find((one) => one.lesson === lesson)!.deck;
  const students = useMemo(() => classOf(known, mark, degree), [known, mark, degree]);
  const broken = known.filter((one) => one.lesson === lesson && one.open() === null).length;
  const { key, title } = lesson.deck;
  const means = meanByDegree(students);
  const { naming } = settings.value;
  const steps = degreeSteps(key, 'triad', { naming, chordNames: false }).map((step, i) => ({
    ...step,
    filled: means[i] ?? 0,
  }));
  const chosen = students.filter(({ sender }) => !out.includes(sender));
  const pairs = useMemo(() => classConfusions(students).slice(0, PAIRS), [students]);
  const [pair, setPair] = useState<string | null>(null);
  const who = pairs.find((one) => pairId(one.pair) === pair)?.students;
  // Those who take one for the other come first, each group in its order.
  const sorted = who
    ? [
        ...students.filter(({ sender }) => who.includes(sender)),
        ...students.filter(({ sender }) => !who.includes(sender)),
      ]
    : students;
  return (
    <>
      <section class="ready">
        <h2>{title}</h2>
        <Stair
          steps={steps}
          label="The class on lesson day: choose a degree to sort by it"
          choose={(step) => setDegree(step === degree ? null : step)}
          pressed={degree}
        />
        <p class="soft" role="status">
          {who
            ? `Those ${who.length} come first.`
            : degree === null
              ? 'Who is least ready for the lesson comes first. Tap a step to sort by it.'
              : `Who knows ${chordOn(parentKey(key), degree, 'triad').numeral} least comes first. Tap it again for all.`}
        </p>
        <ClassWeeks students={students} late={late} />
      </section>
      {pairs.length > 0 && (
        <section class="class-pairs">
          <h2 class="label">Taken for another, by how many</h2>
          {pairs.map((one) => (
            <button
              key={pairId(one.pair)}
              type="button"
              class="button small"
              aria-pressed={pairId(one.pair) === pair}
              onClick={() => setPair(pairId(one.pair) === pair ? null : pairId(one.pair))}
            >
              {takenWords(one.pair, key)} · {one.students.length}
            </button>
          ))}
        </section>
      )}
      {broken > 0 && (
        <p class="notice">
          {broken} kept {broken === 1 ? 'report' : 'reports'} could not be read and{' '}
          {broken === 1 ? 'was' : 'were'} left alone: update the app, or ask for{' '}
          {broken === 1 ? 'it' : 'them'} once more.
        </p>
      )}
      <ul class="students">
        {(late ? sorted : sorted.slice(0, FIRST)).map((student) => (
          <Row
            key={student.sender}
            student={student}
            musicKey={key}
            late={late}
            degree={degree}
            taken={!out.includes(student.sender)}
            take={(on) =>
              setOut(on ? out.filter((one) => one !== student.sender) : [...out, student.sender])
            }
          />
        ))}
      </ul>
      <div class="last in-reach">
        <button
          type="button"
          class="button main wide"
          disabled={chosen.length === 0}
          onClick={() =>
            void makeNext(
              chosen.map(({ latest }) => latest),
              Date.now(),
            )
          }
        >
          Next lesson from {chosen.length} {chosen.length === 1 ? 'report' : 'reports'}
        </button>
      </div>
    </>
  );
}

interface RowProps {
  student: Student<PlacedReport>;
  musicKey: Key;
  /** Whether the first picture is out: what takes longer comes then. */
  late: boolean;
  degree: number | null;
  taken: boolean;
  take(on: boolean): void;
}

function Row({ student, musicKey, late, degree, taken, take }: RowProps) {
  const { picture, latest, reports: count, sender } = student;
  const name = studentName(student.name || (late ? student.lastName() : ''), sender);
  const numeral = (of: number) => chordOn(parentKey(musicKey), of, 'triad').numeral;
  const shown = degree === null ? picture.all : picture.byDegree[degree - 1];
  const [pair] = picture.confusions;
  const needs = [
    picture.weak.length > 0 ? listed(picture.weak.map(numeral)) : '',
    pair ? confusionWords(pair, musicKey) : '',
  ].filter(Boolean);
  return (
    <li class="student">
      <label class="take">
        <input
          type="checkbox"
          checked={taken}
          aria-label={`Use ${name}’s report for the next lesson`}
          onChange={(event) => take(event.currentTarget.checked)}
        />
      </label>
      <a href={latest.link}>
        <span class="head">
          <strong>{name}</strong>
          <Bars picture={picture} />
          <span class="music">{shown ? percent(shown.recall) : '–'}</span>
        </span>
        <span class="soft">
          {needs.length > 0 ? `Needs ${needs.join(' · ')}` : 'Ready'}
          {' · '}
          {reportDay(latest.report)}
        </span>
        {count > 1 && <span class="soft">Over the weeks: {late ? weeksText(student) : '…'}</span>}
        {latest.report.question && <q>{latest.report.question}</q>}
      </a>
    </li>
  );
}

/** How the class stood from week to week. */
function ClassWeeks({ students, late }: { students: readonly Student[]; late: boolean }) {
  const weeks = useMemo(() => (late ? classWeeks(students) : []), [students, late]);
  if (weeks.length < 2) return null;
  return (
    <p class="soft">
      The class over the weeks: {weeks.map(({ recall }) => percent(recall)).join(' → ')}
    </p>
  );
}

const weeksText = (student: Student) =>
  student
    .weeks()
    .map(({ recall }) => percent(recall))
    .join(' → ');

/** False for the first picture, true from the next one on. */
function useLate(): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 50);
    return () => clearTimeout(timer);
  }, []);
  return late;
}

/** Seven steps, each as full as it is told: one path, since a class has hundreds of them. */
function stepsPath(shares: readonly number[]): string {
  return shares
    .map((share, i) => {
      const filled = (10 + i * 2) * share;
      return `M${i * 8 + 0.5} ${(23.5 - filled).toFixed(1)}h6v${filled.toFixed(1)}h-6z`;
    })
    .join('');
}

const EDGES = stepsPath([1, 1, 1, 1, 1, 1, 1]);

/** The staircase once more, small: how full each step is. What it says is said in words too. */
function Bars({ picture }: Pick<Student, 'picture'>) {
  return (
    <svg class="bars" viewBox="0 0 56 24" width="56" height="24" aria-hidden="true">
      <path class="step-edge" d={EDGES} />
      <path class="step-full" d={stepsPath(picture.byDegree.map((one) => one?.recall ?? 0))} />
    </svg>
  );
}
