import { Written } from '../../parts/Written.tsx';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
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
import { parentKey } from '../../theory/scale.ts';
import { counted, percent } from '../figures.ts';
import { settings, type Lesson } from '../state.ts';
import { ClassInTime } from './ClassInTime.tsx';
import { MarksBehind } from './MarksBehind.tsx';
import { makeNext } from './next.ts';
import type { FiledReport } from './reports.ts';
import { StudentRow, type ClassStudent } from './StudentRow.tsx';
import { AskedTwice } from '../AskedTwice.tsx';
import { remove } from './reports.ts';
import { takenWords } from './reportWords.ts';

/** So many rows are drawn at once: more than any screen shows. As many more come when the last one comes into sight. */
const ROWS = 30;

/** So many of the pairs are worth a teacher's time. */
const PAIRS = 4;

interface ClassOnLessonProps {
  lesson: Lesson;
  known: readonly FiledReport[];
}

/** The class on one lesson: who is how ready for it, who takes what for what. */
export function ClassOnLesson({ lesson, known }: ClassOnLessonProps) {
  const [degree, setDegree] = useState<number | null>(null);
  const [pair, setPair] = useState<string | null>(null);
  const late = useLate();
  const mine = known.filter((one) => one.lesson === lesson);
  const mark = mine[0]!.deck;
  const students = useMemo(() => classOf(known, mark, degree), [known, mark, degree]);
  const pairs = useMemo(() => classConfusions(students).slice(0, PAIRS), [students]);
  const who = pairs.find((one) => pairId(one.pair) === pair)?.students ?? null;
  return (
    <>
      <section class="ready">
        <h2>
          <Written text={lesson.deck.title} />
        </h2>
        <ClassStair {...{ lesson, students, degree }} choose={setDegree} />
        <p class="soft" role="status">
          {orderWords(lesson, degree, who)}
        </p>
        <ClassWeeks students={students} late={late} />
      </section>
      <Pairs {...{ pairs, lesson }} pressed={pair} choose={setPair} />
      <ClassInTime students={students} />
      <Broken count={mine.filter((one) => one.open() === null).length} />
      {/* Above the rows, which would push it away as they come. */}
      <AskedTwice
        name="Remove all reports on this lesson"
        first="This takes every report on this lesson off this device; the lesson stays."
        second="Sure? Only their links, sent once more, bring them back."
        keep="Keep them"
        doIt={['Remove', 'Yes, remove them']}
        done={() => void remove({ deck: mark })}
      />
      <Students students={firstOf(students, who)} {...{ lesson, late, degree }} />
    </>
  );
}

/** Those who take one for the other come first, each group in its order. */
function firstOf(students: readonly ClassStudent[], who: readonly number[] | null) {
  if (!who) return students;
  const comes = ({ sender }: ClassStudent) => who.includes(sender);
  return [...students.filter(comes), ...students.filter((student) => !comes(student))];
}

/** By what the students are sorted. */
function orderWords(
  { deck }: Lesson,
  degree: number | null,
  who: readonly number[] | null,
): string {
  if (who) return `Those ${who.length} come first.`;
  if (degree === null)
    return 'Who is least ready for the lesson comes first. Tap a step to sort by it.';
  const { numeral } = chordOn(parentKey(deck.key), degree, 'triad');
  return `Who knows ${numeral} least comes first. Tap it again for all.`;
}

interface ClassStairProps extends Pick<ClassOnLessonProps, 'lesson'> {
  students: readonly ClassStudent[];
  degree: number | null;
  choose(degree: number | null): void;
}

function ClassStair({ lesson, students, degree, choose }: ClassStairProps) {
  const means = meanByDegree(students);
  const { naming } = settings.value;
  const steps = degreeSteps(lesson.deck.key, 'triad', { naming, chordNames: false });
  return (
    <Stair
      steps={steps.map((step, i) => ({ ...step, filled: means[i] ?? 0 }))}
      label="The class on lesson day: choose a degree to sort by it"
      choose={(step) => choose(step === degree ? null : step)}
      pressed={degree}
    />
  );
}

interface PairsProps extends Pick<ClassOnLessonProps, 'lesson'> {
  pairs: ReturnType<typeof classConfusions>;
  pressed: string | null;
  choose(pair: string | null): void;
}

/** What several students take for another. */
function Pairs({ pairs, lesson, pressed, choose }: PairsProps) {
  if (pairs.length === 0) return null;
  return (
    <section class="class-pairs">
      <h2 class="label">Taken for another, by how many</h2>
      {pairs.map(({ pair, students }) => {
        const id = pairId(pair);
        return (
          <button
            key={id}
            type="button"
            class="button small"
            aria-pressed={id === pressed}
            onClick={() => choose(id === pressed ? null : id)}
          >
            {takenWords(pair, lesson.deck.key)} · {students.length}
          </button>
        );
      })}
    </section>
  );
}

/** How many of the kept reports could not be read. */
function Broken({ count }: { count: number }) {
  if (count === 0) return null;
  return (
    <p class="notice">
      {count} kept {count === 1 ? 'report' : 'reports'} could not be read and{' '}
      {count === 1 ? 'was' : 'were'} left alone: update the app, or ask for{' '}
      {count === 1 ? 'it' : 'them'} once more.
    </p>
  );
}

interface StudentsProps extends Pick<ClassOnLessonProps, 'lesson'> {
  students: readonly ClassStudent[];
  late: boolean;
  degree: number | null;
}

/** The students, and the next lesson from the reports of those who are not left out. */
function Students({ students, lesson, late, degree }: StudentsProps) {
  const [out, setOut] = useState<readonly string[]>([]);
  const chosen = useMemo(
    () => students.map(({ latest }) => latest).filter(({ link }) => !out.includes(link)),
    [students, out],
  );
  const take = (link: string, on: boolean) =>
    setOut(on ? out.filter((one) => one !== link) : [...out, link]);
  const [rows, setRows] = useState(ROWS);
  return (
    <>
      <ul class="students">
        {students.slice(0, rows).map((student) => (
          <StudentRow
            key={student.latest.link}
            student={student}
            musicKey={lesson.deck.key}
            late={late}
            degree={degree}
            taken={!out.includes(student.latest.link)}
            take={(on) => take(student.latest.link, on)}
          />
        ))}
      </ul>
      {rows < students.length && (
        <MoreRows left={students.length - rows} come={() => setRows(rows + ROWS)} />
      )}
      {late && <MarksBehind reports={chosen} />}
      <div class="last in-reach">
        <button
          type="button"
          class="button main wide"
          disabled={chosen.length === 0}
          onClick={() => void makeNext(chosen, Date.now())}
        >
          Next lesson from {counted(chosen.length, 'report')}
        </button>
      </div>
    </>
  );
}

/** Has more rows drawn as soon as it comes into sight, or by a tap. */
function MoreRows({ left, come }: { left: number; come(): void }) {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const watch = new IntersectionObserver((seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting)) come();
    });
    watch.observe(button.current!);
    return () => watch.disconnect();
  }, [left]);
  return (
    <button ref={button} type="button" class="button wide" onClick={come}>
      {counted(left, 'more student')}
    </button>
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

/** False for the first picture, true from the next one on. */
function useLate(): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 50);
    return () => clearTimeout(timer);
  }, []);
  return late;
}
