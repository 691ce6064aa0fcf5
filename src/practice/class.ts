/** Several students side by side: who is how ready, what each needs, and how it went over the weeks. */
import type { Report } from '../decks/report.ts';
import type { Confusion } from './confusions.ts';
import type { Item } from './item.ts';
import { pictureOf, recalls, type Picture } from './picture.ts';

/** A report on a lesson, with the lesson's items and the days from the report to the lesson. */
export interface LessonReport {
  readonly report: Report;
  readonly items: readonly Item[];
  readonly ahead: number;
}

/** A report that is kept: whose it is, on what, of when. It is read when it is needed: a class's reports are many. */
export interface Filed<P extends LessonReport = LessonReport> extends Pick<
  Report,
  'sender' | 'deck' | 'day' | 'minute'
> {
  /** Null where it cannot be read, or is not on the lesson it names. */
  open(): P | null;
}

/** One student: the report on the lesson that is looked at, and the ones on other lessons. */
export interface Student<P extends LessonReport = LessonReport> {
  readonly sender: number;
  /** The name typed on this report, or empty. */
  readonly name: string;
  /** Why other reports on this lesson may be meant to be this student's: they tell otherwise, or bear the same name. */
  readonly doubt: Doubt | null;
  readonly latest: P;
  readonly picture: Picture;
  /** How many reports `weeks` tells of. */
  readonly reports: number;
  /** The name typed last on any of the last reports, or empty. Reads those, as `weeks` does. */
  lastName(): string;
  /** Their last reports, on any lesson, the oldest first: when each was, days since 1970, and the readiness it tells. */
  weeks(): { readonly day: number; readonly recall: number }[];
}

/** Other reports on a lesson: of the same phone and kept beside this one; of another phone under the same name. */
export type Doubt = 'same phone' | 'same name';

/** So many reports show how it went. */
const WEEKS = 5;

/** Which report is newer: above 0 where `a` is. */
export function newer(
  a: Pick<Report, 'day' | 'minute'>,
  b: Pick<Report, 'day' | 'minute'>,
): number {
  return a.day - b.day || a.minute - b.minute;
}

/**
 * The students who reported on a lesson, those who need most first: by readiness on lesson day, or by that on one degree.
 *
 * @param deck the lesson's mark
 */
export function classOf<P extends LessonReport>(
  all: readonly Filed<P>[],
  deck: number,
  degree: number | null = null,
): Student<P>[] {
  const bySender = new Map<number, Filed<P>[]>();
  for (const filed of all) {
    const some = bySender.get(filed.sender);
    if (some) some.push(filed);
    else bySender.set(filed.sender, [filed]);
  }
  const need = ({ picture }: Student) =>
    (degree === null ? picture.all : picture.byDegree[degree - 1])?.recall ?? 1;
  const students = [...bySender.values()].flatMap((theirs) =>
    studentsOf(theirs.toSorted(newer), deck),
  );
  return withDoubts(students).toSorted((a, b) => need(a) - need(b));
}

/** One for each report of one phone, the oldest first, on the lesson: where there are several they do not agree. */
function studentsOf<P extends LessonReport>(
  inTime: readonly Filed<P>[],
  deck: number,
): Student<P>[] {
  const last = inTime.slice(-WEEKS);
  const onLesson = inTime.flatMap((filed) => (filed.deck === deck && filed.open()) || []);
  return onLesson.map((latest) => ({
    sender: latest.report.sender,
    name: latest.report.name,
    doubt: onLesson.length > 1 ? 'same phone' : null,
    latest,
    picture: pictureOf(latest.report, latest.items),
    reports: last.length,
    lastName: () => last.findLast((filed) => filed.open()?.report.name)?.open()?.report.name ?? '',
    weeks: () =>
      last
        .flatMap((filed) => filed.open() ?? [])
        .map(({ report }) => ({ day: report.day, recall: mean(recalls(report)) })),
  }));
}

function withDoubts<P extends LessonReport>(students: readonly Student<P>[]): Student<P>[] {
  const senders = new Map<string, Set<number>>();
  for (const { name, sender } of students) {
    const key = nameKey(name);
    senders.set(key, (senders.get(key) ?? new Set()).add(sender));
  }
  return students.map((student) => {
    const key = nameKey(student.name);
    const isShared = key !== '' && senders.get(key)!.size > 1;
    return isShared && !student.doubt ? { ...student, doubt: 'same name' as const } : student;
  });
}

/** What makes two names the same to whoever reads them. */
export function nameKey(name: string): string {
  return name.normalize('NFKC').trim().toLowerCase();
}

/** What is taken for what by how many students: most students first, and of those with as many the most misses. */
export function classConfusions(
  students: readonly Student[],
): { readonly pair: Confusion; readonly students: readonly number[] }[] {
  const found = new Map<string, { pair: Confusion; students: number[] }>();
  for (const { sender, picture } of students) {
    for (const pair of picture.confusions) {
      const key = pairId(pair);
      const before = found.get(key);
      const times = (before?.pair.times ?? 0) + pair.times;
      found.set(key, {
        pair: { ...pair, times },
        students: [...new Set(before?.students).add(sender)],
      });
    }
  }
  return [...found.values()].toSorted(
    (a, b) => b.students.length - a.students.length || b.pair.times - a.pair.times,
  );
}

/** What tells a confusion from others, however often it was. */
export function pairId({ kind, size, degree, takenFor }: Confusion): string {
  return `${kind} ${size} ${degree} ${takenFor}`;
}

/** The class over the last weeks, the oldest first: when each began, days since 1970, and the mean of its reports. */
export function classWeeks(students: readonly Student[]): { day: number; recall: number }[] {
  const byWeek = new Map<number, number[]>();
  // Two reports side by side tell of the same weeks.
  const each = new Map(students.map((student) => [student.sender, student])).values();
  for (const student of each) {
    for (const { day, recall } of student.weeks()) {
      // 1 January 1970 was a Thursday.
      const monday = day - ((day + 3) % 7);
      byWeek.set(monday, [...(byWeek.get(monday) ?? []), recall]);
    }
  }
  return [...byWeek]
    .toSorted(([a], [b]) => a - b)
    .slice(-WEEKS)
    .map(([day, some]) => ({ day, recall: mean(some) }));
}

/** The class as one: mean readiness by degree, null where nobody's lesson has the degree. */
export function meanByDegree(students: readonly Student[]): (number | null)[] {
  return [0, 1, 2, 3, 4, 5, 6].map((i) => {
    const some = students.flatMap(({ picture }) => picture.byDegree[i] ?? []);
    return some.length === 0 ? null : mean(some.map(({ recall }) => recall));
  });
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
