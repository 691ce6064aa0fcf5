import { isolated } from '../../decks/plain.ts';
import { listed } from '../../parts/english.ts';
import type { Student } from '../../practice/class.ts';
import { chordOn } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { parentKey } from '../../theory/scale.ts';
import { percent } from '../figures.ts';
import type { KnownReport } from './reports.ts';
import { confusionWords, reportDay, studentName } from './reportWords.ts';
import { needsInTime } from './timeWords.ts';

export type ClassStudent = Student<KnownReport>;

interface StudentRowProps {
  student: ClassStudent;
  musicKey: Key;
  /** Whether the first picture is out: what takes longer comes then. */
  late: boolean;
  degree: number | null;
  taken: boolean;
  take(on: boolean): void;
}

/** So many degrees are named of what a student needs. */
const NAMED = 3;

/** A student: how ready, what they need, and whether their report counts for the next lesson. */
export function StudentRow({ student, musicKey, late, degree, taken, take }: StudentRowProps) {
  const { picture, latest, reports: count, sender, doubt } = student;
  const name = studentName(student.name || (late ? student.lastName() : ''), sender);
  const numeral = (of: number) => chordOn(parentKey(musicKey), of, 'triad').numeral;
  const shown = degree === null ? picture.all : picture.byDegree[degree - 1];
  const [pair] = picture.confusions;
  const degrees = [...picture.weak, ...picture.untried].slice(0, NAMED);
  const needs = [
    degrees.length > 0 ? listed(degrees.map(numeral)) : '',
    pair ? confusionWords(pair, musicKey) : '',
    ...needsInTime(latest.report),
  ].filter(Boolean);
  return (
    <li class="student">
      <label class="take">
        <input
          type="checkbox"
          checked={taken}
          aria-label={`Use ${isolated(name)}’s report for the next lesson`}
          onChange={(event) => take(event.currentTarget.checked)}
        />
      </label>
      <a href={latest.link}>
        <span class="head">
          <strong>
            <bdi>{name}</bdi>
          </strong>
          <SmallStair picture={picture} />
          <span class="music">{shown ? percent(shown.recall) : '–'}</span>
        </span>
        <span class="soft">
          {needs.length > 0 ? `Needs ${needs.join(' · ')}` : 'Ready'}
          {' · '}
          {picture.firstRight !== null && `${percent(picture.firstRight)} right at first · `}
          {reportDay(latest.report)}
        </span>
        {doubt && <span class="soft">{DOUBTS[doubt]}</span>}
        {count > 1 && <span class="soft">Over the weeks: {late ? weeksText(student) : '…'}</span>}
        {latest.report.question && <q dir="auto">{latest.report.question}</q>}
      </a>
    </li>
  );
}

const DOUBTS = {
  'same phone':
    'Two reports of this phone do not agree: open both and remove the one that is not true.',
  'same name': 'Another phone’s report bears the same name.',
};

const weeksText = (student: Student) =>
  student
    .weeks()
    .map(({ recall }) => percent(recall))
    .join(' → ');

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
function SmallStair({ picture }: Pick<Student, 'picture'>) {
  return (
    <svg class="bars" viewBox="0 0 56 24" width="56" height="24" aria-hidden="true">
      <path class="step-edge" d={EDGES} />
      <path class="step-full" d={stepsPath(picture.byDegree.map((one) => one?.recall ?? 0))} />
    </svg>
  );
}
