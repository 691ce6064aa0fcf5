/** Several students side by side: who is how ready, what each needs, and how it went over the weeks. */
import type { Report } from '../decks/report.ts';
import type { Item } from './item.ts';
import { pictureOf, recalls, type Picture } from './report.ts';

/** A report on a lesson, with the lesson's items and the days from the report to the lesson. */
export interface Placed {
  readonly report: Report;
  readonly items: readonly Item[];
  readonly ahead: number;
}

/** One student: the report on the lesson that is looked at, and the ones on other lessons. */
export interface Student<P extends Placed = Placed> {
  readonly sender: number;
  /** The name typed last, or empty. */
  readonly name: string;
  readonly placed: P;
  readonly picture: Picture;
  /** Their last reports, on any lesson, the oldest first: when each was, days since 1970, and the readiness it tells. */
  readonly weeks: readonly { readonly day: number; readonly recall: number }[];
}

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
export function classOf<P extends Placed>(
  all: readonly P[],
  deck: number,
  degree: number | null = null,
): Student<P>[] {
  const bySender = new Map<number, P[]>();
  for (const placed of all) {
    const some = bySender.get(placed.report.sender);
    if (some) some.push(placed);
    else bySender.set(placed.report.sender, [placed]);
  }
  const students = [...bySender].flatMap(([sender, theirs]) => {
    const inTime = theirs.toSorted((a, b) => newer(a.report, b.report));
    const placed = inTime.findLast(({ report }) => report.deck === deck);
    if (!placed) return [];
    return {
      sender,
      name: inTime.findLast(({ report }) => report.name !== '')?.report.name ?? '',
      placed,
      picture: pictureOf(placed.report, placed.items, placed.ahead),
      weeks: inTime.slice(-WEEKS).map(({ report, ahead }) => ({
        day: report.day,
        recall: mean(recalls(report, ahead)),
      })),
    };
  });
  const need = ({ picture }: Student) =>
    (degree === null ? picture.all : picture.byDegree[degree - 1])?.recall ?? 1;
  return students.toSorted((a, b) => need(a) - need(b));
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
