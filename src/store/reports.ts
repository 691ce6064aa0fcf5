import { promisifyRequest } from 'idb-keyval';
import { store, stored, under } from './device.ts';

/** A student's report on the teacher's device. */
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

/** Which reports: all that are as is said. */
export type Which = Partial<Pick<StoredReport, 'sender' | 'deck' | 'link'>>;

/** What became of a report: kept; or it was there already; or there are as many as are kept. */
export type Kept = 'kept' | 'same' | 'full';

/** So many reports a device keeps: of forty students on fifty lessons. */
export const MOST_REPORTS = 2000;

/**
 * Keeps a report beside those that are there.
 *
 * @param instead of that student and lesson, whose place it takes
 * @throws StoreTrouble
 */
export function keepReport(
  report: StoredReport,
  instead: readonly StoredReport[] = [],
): Promise<Kept> {
  return store('readwrite', async (all) => {
    const there = await keptIn(all, report.sender, report.deck);
    const isGone = ({ link }: StoredReport) => instead.some((one) => one.link === link);
    const gone = there.filter(({ report: one }) => isGone(one));
    if (there.some(({ report: { link } }) => link === report.link)) return 'same';
    if (gone.length === 0 && (await countIn(all)) >= MOST_REPORTS) return 'full';
    replace(all, there, gone, report);
    await stored(all);
    return 'kept';
  });
}

/**
 * Takes in reports of a backup. Of reports that go on from one another the last is kept, and those that do not are kept
 * side by side: so the same are there in the end in whatever order they come, and reading a file twice changes nothing.
 * Gives how many were taken.
 *
 * @param goesOn whether the first of two of one student and lesson, which is not the older, may be all that the other was, and more
 * @throws StoreTrouble
 */
export function takeReports(
  reports: readonly StoredReport[],
  goesOn: (later: StoredReport, earlier: StoredReport) => boolean,
): Promise<number> {
  return store('readwrite', async (all) => {
    let taken = 0;
    let count = await countIn(all);
    for (const report of reports) {
      const there = await keptIn(all, report.sender, report.deck);
      const covers = ({ report: one }: KeptReport) =>
        one.link === report.link || (laterOf(one, report) >= 0 && goesOn(one, report));
      if (there.some(covers)) continue;
      const gone = there.filter(
        ({ report: one }) => laterOf(report, one) > 0 && goesOn(report, one),
      );
      if (gone.length === 0 && count >= MOST_REPORTS) continue;
      replace(all, there, gone, report);
      taken++;
      count += 1 - gone.length;
    }
    await stored(all);
    return taken;
  });
}

/**
 * Removes the reports of a student, on a lesson, or one by its link: of all that are as is said. The caller has asked
 * twice.
 *
 * @throws StoreTrouble
 */
export function removeReports(which: Which): Promise<void> {
  return store('readwrite', async (all) => {
    for (const { key, report } of await keptIn(all)) if (isAmong(report, which)) all.delete(key);
    await stored(all);
  });
}

/** Whether a report is of that student, on that lesson, by that link, as far as each is said. */
export function isAmong({ sender, deck, link }: StoredReport, which: Which): boolean {
  return (
    (which.sender ?? sender) === sender &&
    (which.deck ?? deck) === deck &&
    (which.link ?? link) === link
  );
}

/** All reports on the device, or those of one student on one lesson. @throws StoreTrouble */
export function listReports(of?: Pick<StoredReport, 'sender' | 'deck'>): Promise<StoredReport[]> {
  return store('readonly', async (all) =>
    (await keptIn(all, ...(of ? [of.sender, of.deck] : []))).map(({ report }) => report),
  );
}

/** Above 0 where `a` was made after `b`. */
export function laterOf(
  a: Pick<StoredReport, 'day' | 'minute'>,
  b: Pick<StoredReport, 'day' | 'minute'>,
): number {
  return a.day - b.day || a.minute - b.minute;
}

interface KeptReport {
  readonly key: IDBValidKey;
  readonly report: StoredReport;
}

/** The reports whose keys begin so. */
async function keptIn(all: IDBObjectStore, ...of: number[]): Promise<KeptReport[]> {
  const range = under('report', ...of);
  const keys = promisifyRequest(all.getAllKeys(range));
  const reports = await promisifyRequest<StoredReport[]>(all.getAll(range));
  return (await keys).map((key, i) => ({ key, report: reports[i]! }));
}

/** Puts a report in the place of others, or under a key of its own. */
function replace(
  all: IDBObjectStore,
  there: readonly KeptReport[],
  gone: readonly KeptReport[],
  report: StoredReport,
): void {
  for (const { key } of gone) all.delete(key);
  all.put(report, gone[0]?.key ?? freeKey(there, report));
}

/** `['report', sender, deck]`; with a number from 2 on behind it for one that lies beside another. */
function freeKey(there: readonly KeptReport[], { sender, deck }: StoredReport): IDBValidKey {
  const taken = new Set(there.map(({ key }) => String(key)));
  for (let number = 1; ; number++) {
    const key = ['report', sender, deck, ...(number === 1 ? [] : [number])];
    if (!taken.has(String(key))) return key;
  }
}

function countIn(all: IDBObjectStore): Promise<number> {
  return promisifyRequest(all.count(under('report')));
}
