import { promisifyRequest } from 'idb-keyval';
import { store, stored, under } from './device.ts';

/** A student's report on the teacher's device: one for each student and lesson, the newest. */
export interface StoredReport {
  /** Which student and which lesson, as the report has them. */
  readonly sender: number;
  readonly deck: number;
  /** When the student made it: days since 1970, and the minute of the day. */
  readonly day: number;
  readonly minute: number;
  /** Its link, from `#` on. What is in it is not this room's business. */
  readonly link: string;
}

/** What became of a report: kept; or the same or a newer one was there already; or there are as many as are kept. */
export type Kept = 'new' | 'replaced' | 'same' | 'older' | 'full';

/** So many reports a device keeps: of forty students on fifty lessons. */
export const MOST_REPORTS = 2000;

/**
 * Keeps a report unless a newer one of the same student and lesson is there: a newer one replaces an older, never the
 * other way. Of one minute, as when a question was added at once, the one that comes last is kept.
 *
 * @throws StoreTrouble
 */
export function keepReport(report: StoredReport): Promise<Kept> {
  const key = keyOf(report);
  return store('readwrite', async (all) => {
    const before = await promisifyRequest<StoredReport | undefined>(all.get(key));
    if (before && later(report, before) < 0) return 'older';
    if (before?.link === report.link) return 'same';
    if (!before && (await countIn(all)) >= MOST_REPORTS) return 'full';
    all.put(report, key);
    await stored(all);
    return before ? 'replaced' : 'new';
  });
}

/**
 * Takes in reports of a backup, each unless the same or a newer one of that student and lesson is here; of one minute
 * the one that is here stays, so that reading a file twice changes nothing. Gives how many were taken.
 *
 * @throws StoreTrouble
 */
export function takeReports(reports: readonly StoredReport[]): Promise<number> {
  return store('readwrite', async (all) => {
    let taken = 0;
    let count = await countIn(all);
    for (const report of reports) {
      const key = keyOf(report);
      const before = await promisifyRequest<StoredReport | undefined>(all.get(key));
      if (before ? later(report, before) <= 0 : count >= MOST_REPORTS) continue;
      all.put(report, key);
      taken++;
      if (!before) count++;
    }
    await stored(all);
    return taken;
  });
}

/**
 * Removes the reports of a student, on a lesson, or of one student on one lesson: of all that are as is said. The caller
 * has asked twice.
 *
 * @throws StoreTrouble
 */
export function removeReports(
  which: Partial<Pick<StoredReport, 'sender' | 'deck'>>,
): Promise<void> {
  return store('readwrite', async (all) => {
    for (const report of await promisifyRequest<StoredReport[]>(all.getAll(under('report')))) {
      if (isAmong(report, which)) all.delete(keyOf(report));
    }
    await stored(all);
  });
}

/** Whether a report is of that student and on that lesson, as far as either is said. */
export function isAmong(
  { sender, deck }: StoredReport,
  which: Partial<Pick<StoredReport, 'sender' | 'deck'>>,
): boolean {
  return (which.sender ?? sender) === sender && (which.deck ?? deck) === deck;
}

function countIn(all: IDBObjectStore): Promise<number> {
  return promisifyRequest(all.count(under('report')));
}

function keyOf({ sender, deck }: StoredReport): IDBValidKey {
  return ['report', sender, deck];
}

/** Above 0 where `a` was made after `b`. */
function later(a: StoredReport, b: StoredReport): number {
  return a.day - b.day || a.minute - b.minute;
}

/** All reports on the device. @throws StoreTrouble */
export function listReports(): Promise<StoredReport[]> {
  return store('readonly', (all) => promisifyRequest<StoredReport[]>(all.getAll(under('report'))));
}
