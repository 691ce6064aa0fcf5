import { signal } from '@preact/signals';
import { deckMark, readReport, type Report } from '../../decks/report.ts';
import { DAY } from '../../memory/model.ts';
import { newer, type Placed } from '../../practice/class.ts';
import { daysAhead, fits } from '../../practice/report.ts';
import { keepReport, listReports, type Kept } from '../../store/reports.ts';
import { itemsOfLesson, lessons, tell, type Lesson } from '../state.ts';

/** A report on this device. */
export interface Filed {
  readonly report: Report;
  /** From `#` on. */
  readonly link: string;
}

/** A report on a lesson that this device has. */
export interface PlacedReport extends Placed, Filed {
  readonly lesson: Lesson;
}

/** The reports on this device; null until they were read. */
export const reports = signal<readonly Filed[] | null>(null);

/** How many records on the device could not be read: they stay where they are. */
export const unreadable = signal(0);

/** Reads what is kept, once. */
export async function openReports(): Promise<void> {
  if (reports.value) return;
  const stored = (await tell(listReports())) ?? [];
  const read = stored.flatMap(({ link }) => {
    const opened = readReport(link);
    return 'report' in opened ? [{ report: opened.report, link }] : [];
  });
  unreadable.value = stored.length - read.length;
  reports.value = read;
}

/** Clocks differ, and so do time zones; beyond that a report from the future would shut out all that follow. */
const DAYS_AHEAD = 2;

/** What of a report is wrong beyond its letters, as a sentence; null where nothing is. */
export function reportFault(report: Report, now: number): string | null {
  if (report.day > now / DAY + DAYS_AHEAD) {
    return 'This report is dated in the future. Check the date of the phone it came from, and of this one, and ask for it once more.';
  }
  const lesson = lessonOf(report);
  if (lesson && !fits(report, itemsOfLesson(lesson.id))) {
    return 'This report does not fit the lesson it names, so it was not kept. Ask for it once more.';
  }
  return null;
}

/** Keeps a report on the device and says what became of it; undefined where the device refused, and said why. */
export async function file(filed: Filed): Promise<Kept | undefined> {
  await openReports();
  const { sender, deck, day, minute } = filed.report;
  const kept = await tell(keepReport({ sender, deck, day, minute, link: filed.link }));
  if (kept === 'new' || kept === 'replaced') {
    const others = reports.value!.filter(
      ({ report }) => report.sender !== sender || report.deck !== deck,
    );
    reports.value = [...others, filed];
  }
  return kept;
}

const marks = new Map<string, number>();

function markOf({ id }: Lesson): number {
  const mark = marks.get(id) ?? deckMark(id);
  marks.set(id, mark);
  return mark;
}

/** The lesson that a report is on, where this device has it. */
export function lessonOf({ deck }: Pick<Report, 'deck'>): Lesson | null {
  return lessons.value.find((lesson) => markOf(lesson) === deck) ?? null;
}

/** The report with its lesson's items, where this device has the lesson and the report fits it. */
export function placed(filed: Filed, lesson: Lesson): PlacedReport[] {
  const items = itemsOfLesson(lesson.id);
  if (!fits(filed.report, items)) return [];
  return [{ ...filed, lesson, items, ahead: daysAhead(filed.report, lesson.deck.lessonDay) }];
}

/** Every report on a lesson that this device has, and how many are on others. */
export function allPlaced(all: readonly Filed[]): { known: PlacedReport[]; unknown: number } {
  const byMark = new Map(lessons.value.map((lesson) => [markOf(lesson), lesson]));
  const known = all.flatMap((filed) => {
    const lesson = byMark.get(filed.report.deck);
    return lesson ? placed(filed, lesson) : [];
  });
  return { known, unknown: all.filter(({ report }) => !byMark.has(report.deck)).length };
}

/** The lessons that there are reports on, the one of the newest report first. */
export function reportedLessons(known: readonly PlacedReport[]): Lesson[] {
  const newest = known.toSorted((a, b) => newer(b.report, a.report));
  return [...new Set(newest.map(({ lesson }) => lesson))];
}
