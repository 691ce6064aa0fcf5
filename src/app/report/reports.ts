import { computed, signal } from '@preact/signals';
import { deckMark, readReport, type Report } from '../../decks/report.ts';
import { DAY } from '../../memory/day.ts';
import { newer, type Filed, type LessonReport } from '../../practice/class.ts';
import { daysAhead, fits } from '../../practice/report.ts';
import {
  isAmong,
  keepReport,
  listReports,
  removeReports,
  type Kept,
  type StoredReport,
} from '../../store/reports.ts';
import { itemsOfLesson, lessons, reportingTrouble, type Lesson } from '../state.ts';

/** A report on a lesson that this device has. */
export interface KnownReport extends LessonReport {
  readonly lesson: Lesson;
  /** From `#` on. */
  readonly link: string;
}

/** The reports on this device; null until they were listed. */
export const reports = signal<readonly StoredReport[] | null>(null);

/** Lists what is kept, once. */
export async function openReports(): Promise<void> {
  reports.value ??= (await reportingTrouble(listReports())) ?? [];
}

/** Removes reports from the device; the teacher has been asked twice. */
export async function remove(which: { sender?: number; deck?: number }): Promise<void> {
  await reportingTrouble(removeReports(which));
  reports.value = (reports.value ?? []).filter((one) => !isAmong(one, which));
}

/** A day begins earlier east of here; beyond that a report from the future would shut out all that follow. */
const DAYS_AHEAD = 1;

/** What of a report is wrong beyond its letters, as a sentence; null where nothing is. */
export function reportFault(report: Report, now: number): string | null {
  if (report.day > Math.floor(now / DAY) + DAYS_AHEAD) {
    return 'This report is dated in the future. Check the date of the phone it came from, and of this one, and ask for it once more.';
  }
  const lesson = lessonOf(report);
  if (lesson && !fits(report, itemsOfLesson(lesson.id))) {
    return 'This report does not fit the lesson it names, so it was not kept. Ask for it once more.';
  }
  return null;
}

/** Keeps a report on the device and says what became of it; undefined where the device refused, and said why. */
export async function keep(report: Report, link: string): Promise<Kept | undefined> {
  await openReports();
  const { sender, deck, day, minute } = report;
  const stored = { sender, deck, day, minute, link };
  const kept = await reportingTrouble(keepReport(stored));
  if (kept === 'new' || kept === 'replaced') {
    const others = reports.value!.filter((one) => one.sender !== sender || one.deck !== deck);
    reports.value = [...others, stored];
  }
  return kept;
}

const marks = new Map<string, number>();

function markOf({ id }: Lesson): number {
  const mark = marks.get(id) ?? deckMark(id);
  marks.set(id, mark);
  return mark;
}

const lessonsByMark = computed(
  () => new Map(lessons.value.map((lesson) => [markOf(lesson), lesson])),
);

/** The lesson that a report is on, where this device has it. */
export function lessonOf({ deck }: Pick<Report, 'deck'>): Lesson | null {
  return lessonsByMark.value.get(deck) ?? null;
}

/** The report with its lesson's items; null where it does not fit the lesson. */
export function knownReport(report: Report, link: string, lesson: Lesson): KnownReport | null {
  const items = itemsOfLesson(lesson.id);
  if (!fits(report, items)) return null;
  return { report, link, lesson, items, ahead: daysAhead(report, lesson.deck.lessonDay) };
}

/** A kept report on a lesson that this device has. */
export interface FiledReport extends Filed<KnownReport> {
  readonly lesson: Lesson;
}

/** Every report on a lesson that this device has, and how many are on others. */
export function filedReports(all: readonly StoredReport[]): {
  known: FiledReport[];
  unknown: number;
} {
  const known = all.flatMap((stored): FiledReport[] => {
    const lesson = lessonOf(stored);
    return lesson ? [{ ...stored, lesson, open: opener(stored, lesson) }] : [];
  });
  return { known, unknown: all.length - known.length };
}

function opener({ link }: StoredReport, lesson: Lesson): () => KnownReport | null {
  let opened: KnownReport | null | undefined;
  return () => {
    if (opened === undefined) {
      const read = readReport(link);
      opened = 'report' in read ? knownReport(read.report, link, lesson) : null;
    }
    return opened;
  };
}

/** The lessons that there are reports on, the one of the newest report first. */
export function reportedLessons(known: readonly FiledReport[]): Lesson[] {
  const newest = known.toSorted((a, b) => newer(b, a));
  return [...new Set(newest.map(({ lesson }) => lesson))];
}
