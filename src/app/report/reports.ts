import { signal } from '../../signals/signal.ts';
import { deckMark, readReport, type Report } from '../../decks/report.ts';
import { DAY } from '../../memory/day.ts';
import { nameKey, newer, type Filed, type LessonReport } from '../../practice/class.ts';
import { goesOn } from '../../practice/goesOn.ts';
import { daysAhead, fits } from '../../practice/picture.ts';
import {
  isAmong,
  keepReport,
  laterOf,
  listReports,
  removeReports,
  type StoredReport,
  type Which,
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
export async function remove(which: Which): Promise<void> {
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

/** What became of a report that was opened, or is to be said before anything does. */
export type Fate =
  | { readonly is: 'kept' | 'same' | 'full' }
  /** It could take the place of these, which it goes on from: nothing is kept yet. The newest of them. */
  | { readonly is: 'newer'; readonly than: Report }
  /** A kept one goes on from it: nothing is kept. */
  | { readonly is: 'older'; readonly than: Report }
  /** It is kept beside one of the same phone that tells otherwise. */
  | { readonly is: 'beside'; readonly other: Report };

/**
 * Keeps a report, unless that would take the place of another or add nothing to it: whether it does is asked first. What
 * disagrees with what is there is kept beside it. Undefined where the device refused, and said why.
 */
export async function arrive(report: Report, link: string): Promise<Fate | undefined> {
  const there = await reportingTrouble(listReports(report));
  if (!there) return undefined;
  if (there.some((one) => one.link === link)) return { is: 'same' };
  const others = readable(there);
  const covering = others.find((one) => laterOf(one, report) > 0 && goesOn(one, report));
  if (covering) return { is: 'older', than: covering };
  const before = others.findLast((one) => goesOnFrom(report, one));
  if (before) return { is: 'newer', than: before };
  const is = await keep(report, link);
  const [other] = others;
  return is === 'kept' && other ? { is: 'beside', other } : is && { is };
}

/** Keeps a report in the place of those that it goes on from, or beside them. */
export async function keepAs(
  how: 'instead' | 'beside',
  report: Report,
  link: string,
): Promise<Fate | undefined> {
  const there = (await reportingTrouble(listReports(report))) ?? [];
  const instead = there.filter((stored) => {
    const [one] = readable([stored]);
    return how === 'instead' && one && goesOnFrom(report, one);
  });
  const is = await keep(report, link, instead);
  return is && { is };
}

const goesOnFrom = (report: Report, before: Report) =>
  laterOf(report, before) >= 0 && goesOn(report, before);

/** What stored reports hold, the oldest first, without those that cannot be read. */
function readable(some: readonly StoredReport[]): Report[] {
  return some.toSorted(laterOf).flatMap(({ link }) => {
    const result = readReport(link);
    return 'report' in result ? [result.report] : [];
  });
}

async function keep(report: Report, link: string, instead: readonly StoredReport[] = []) {
  await openReports();
  const { sender, deck, day, minute } = report;
  const stored = { sender, deck, day, minute, link };
  const kept = await reportingTrouble(keepReport(stored, instead));
  if (kept === 'kept') {
    const isGone = (one: StoredReport) => instead.some((gone) => gone.link === one.link);
    reports.value = [...reports.value!.filter((one) => !isGone(one)), stored];
  }
  return kept;
}

/** Whether a report of another phone on the same lesson bears the same name. */
export function hasNamesake({ sender, deck, name }: Report): boolean {
  const same = nameKey(name);
  const others = (reports.value ?? []).filter((one) => one.deck === deck && one.sender !== sender);
  return same !== '' && readable(others).some((one) => nameKey(one.name) === same);
}

const marks = new Map<string, number>();

function markOf({ id }: Lesson): number {
  const mark = marks.get(id) ?? deckMark(id);
  marks.set(id, mark);
  return mark;
}

const byMark = new WeakMap<readonly Lesson[], ReadonlyMap<number, Lesson>>();

/** The lessons on this device by what reports call them. */
function lessonsByMark(): ReadonlyMap<number, Lesson> {
  const all = lessons.value;
  let known = byMark.get(all);
  if (!known) byMark.set(all, (known = new Map(all.map((lesson) => [markOf(lesson), lesson]))));
  return known;
}

/** The lesson that a report is on, where this device has it. */
export function lessonOf({ deck }: Pick<Report, 'deck'>): Lesson | null {
  return lessonsByMark().get(deck) ?? null;
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
