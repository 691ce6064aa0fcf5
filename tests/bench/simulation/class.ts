/** What the reports of a class say of how hard items are, for a student who is new to them. */
import { seeded, seedAt } from '../../../src/theory/random.ts';
import { readReport, type Report, reportLink } from '../../../src/decks/report.ts';
import { reportOf } from '../../../src/practice/report.ts';
import { marksOf } from '../../../src/practice/lesson.ts';
import type { Item } from '../../../src/practice/item.ts';
import { type Figure, meanAndError } from './figures.ts';
import { ours } from './policies.ts';
import { play } from './run.ts';
import { difficulties, type MakeHidden } from './students.ts';
import { DAY, START } from './world.ts';

const CLASS = 20;

interface Drawn {
  readonly seed: number;
  readonly spread: number;
  readonly count: number;
}

/** What a class's marks bring. */
export interface ClassGain {
  readonly marks: number;
  readonly answers: number;
  /** The marks' correlation with a new student's difficulties, and the points that student gains. */
  readonly alike: Figure;
  readonly more: Figure;
}

/** A class whose items are hard in part for all alike: a report of each after a week, marks, and new students with them. */
export function marksFromAClass(
  make: MakeHidden,
  items: readonly Item[],
  { seed, spread, count }: Drawn,
): ClassGain {
  const common = difficulties(items, seeded(seedAt(seed, 9)), 1);
  const of: MakeHidden = (some, random, wide) => make(some, random, wide, common);
  const reports = Array.from({ length: CLASS }, (_, k) => {
    const course = { make: of, policy: ours, items, minutes: 10, seed: seed + 500 + k, spread };
    const { memory } = play({ ...course, weeks: 1 });
    const told = {
      items,
      memory,
      reviews: [],
      questions: [],
      timings: {},
      minutes: [],
      lesson: null,
    };
    const sent = { deck: 0, sender: k, question: '', name: '' };
    return sentAsALink(reportOf(told, sent, START + 7 * DAY, 0));
  });
  const { marks, answers } = marksOf(reports, items);
  const marked = items.map((item) => ({ ...item, mark: marks[item.id] ?? 3 }));
  const pairs = Array.from({ length: count }, (_, k) => {
    const course = { make: of, policy: ours, minutes: 4, seed: seed + 900 + k, spread };
    const [without, withMarks] = [items, marked].map((some) => play({ ...course, items: some }));
    return {
      more: withMarks!.known - without!.known,
      alike: correlation(
        marked.map(({ mark }) => mark),
        without!.hidden.hard,
      ),
    };
  });
  return {
    marks: Object.keys(marks).length,
    answers,
    alike: meanAndError(pairs.map((pair) => pair.alike)),
    more: meanAndError(pairs.map((pair) => pair.more)),
  };
}

/** What the teacher's page reads of a report: rounded to the link's few bits. */
function sentAsALink(report: Report): Report {
  const read = readReport(reportLink(report, 'https://quay.example/'));
  if ('fault' in read) throw new Error(read.fault);
  return read.report;
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (row: readonly number[]) => row.reduce((sum, x) => sum + x, 0) / row.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  const cross = (f: (i: number) => number) => a.reduce((sum, _, i) => sum + f(i), 0);
  const [da, db] = [(i: number) => a[i]! - meanA, (i: number) => b[i]! - meanB];
  const spread = cross((i) => da(i) ** 2) * cross((i) => db(i) ** 2);
  return spread === 0 ? 0 : cross((i) => da(i) * db(i)) / Math.sqrt(spread);
}
