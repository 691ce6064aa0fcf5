import { itemsOf } from '../../cards/index.ts';
import { readDeck, writeDeck } from '../../decks/document.ts';
import type { Fault } from '../../decks/envelope.ts';
import { readReport } from '../../decks/report.ts';
import { readDraft, writeDraft } from '../../making/draftDocument.ts';
import { replay } from '../../memory/memory.ts';
import { goesOn } from '../../practice/goesOn.ts';
import {
  readBackup,
  writeBackup,
  type Backup,
  type Checks,
  type BetweenSlices,
  type Readable,
} from '../../store/backup.ts';
import { listDecks } from '../../store/decks.ts';
import { takeDecks } from '../../store/decksAway.ts';
import { listDrafts, takeDrafts } from '../../store/drafts.ts';
import { listMinutes, takeMinutes } from '../../store/minutes.ts';
import { listReports, takeReports, type StoredReport } from '../../store/reports.ts';
import { listTimings, takeTimings } from '../../store/timings.ts';
import { StoreTrouble } from '../../store/trouble.ts';
import { minutes as keptMinutes, readMinute, writeMinute } from '../minute/minutes.ts';
import { reports as kept } from '../report/reports.ts';
import { readTiming } from '../report/timings.ts';
import { haveLog, lessons, memory, readLessons } from '../state.ts';
import { kept as keptDrafts, readKept } from '../teach/kept/kept.ts';

/** A file's text, and how many lessons and reports are not in it because they cannot be read. */
interface Saved {
  readonly text: string;
  readonly left: number;
  /** Whether the device gave all of it; else it is what this page has in memory. */
  readonly isWhole: boolean;
}

/**
 * The whole log, the lessons and what a teacher has, as a file's text.
 *
 * Where the device does not give them, what this page has in memory.
 */
export async function backupText(now: number): Promise<Saved> {
  const { reviews, quarantined } = await haveLog();
  const stored = await onDevice();
  const { decks, minutes, timings, drafts, reports } = stored ?? inMemory(now);
  const backup = {
    reviews: [...reviews],
    quarantined,
    // What cannot be read here is not read from the file either, and would take the rest with it.
    decks: decks.filter((one) => checks.decks(one) === true),
    minutes: minutes.filter((one) => checks.minutes(one) === true),
    timings: timings.filter((one) => checks.timings(one) === true),
    drafts: drafts.filter((one) => checks.drafts(one) === true),
    reports: reports.filter((one) => checks.reports(one) === true),
  };
  const given = [decks, minutes, timings, drafts, reports];
  const written = [backup.decks, backup.minutes, backup.timings, backup.drafts, backup.reports];
  const count = (of: readonly (readonly unknown[])[]) => of.flat().length;
  const left = count(given) - count(written);
  return { text: writeBackup(backup, now), left, isWhole: stored !== null };
}

/** What lies on the device beside the log; null where it gives nothing. */
type BesideTheLog = Pick<Backup, 'decks' | 'minutes' | 'timings' | 'drafts' | 'reports'>;
async function onDevice(): Promise<BesideTheLog | null> {
  try {
    const [decks, minutes, timings, drafts, reports] = await Promise.all([
      listDecks(),
      listMinutes(),
      listTimings(),
      listDrafts(),
      listReports(),
    ]);
    return { decks, minutes, timings, drafts, reports };
  } catch (error) {
    if (error instanceof StoreTrouble) return null;
    throw error;
  }
}

/** The same as this page has it, which is all there is where the browser keeps nothing. */
function inMemory(now: number): BesideTheLog {
  return {
    decks: lessons.value.map(({ id, deck, away }) => ({
      id,
      document: writeDeck(deck),
      added: now,
      away,
    })),
    minutes: (keptMinutes.value ?? []).map(writeMinute),
    timings: [],
    drafts: (keptDrafts.value ?? []).map(({ draft, ...rest }) => ({
      ...rest,
      document: writeDraft(draft),
    })),
    reports: kept.value ?? [],
  };
}

/** How much of a file was new here. */
export interface TakenIn {
  readonly reviews: number;
  readonly decks: number;
  readonly minutes: number;
  readonly timings: number;
  readonly drafts: number;
  readonly reports: number;
}

/**
 * Takes in a file: reviews as a union with those that are here, lessons, free minutes and figures in time that are not
 * here yet, of a teacher's lessons those that are newer than what is here, and of students' reports those that go on from it or disagree
 * with it. Tells how much was new.
 *
 * @throws BackupFault, and then nothing has changed
 * @throws StoreTrouble where the device does not take all of it; reading the file again takes in the rest
 */
export async function takeBackup(text: string, pace: BetweenSlices): Promise<TakenIn> {
  const backup = await readBackup(text, checks, pace);
  const log = await haveLog();
  const added = await log.merge(backup);
  memory.value = { of: replay(log.reviews) };
  const decks = await takeDecks(backup.decks);
  await readLessons();
  const minutes = await takeMinutes(backup.minutes);
  if (minutes > 0) keptMinutes.value = null;
  const timings = await takeTimings(backup.timings);
  const made = await takeDrafts(backup.drafts);
  if (made > 0) await readKept();
  const taken = await takeReports(backup.reports, goesOnFrom);
  if (taken > 0) kept.value = null;
  return { reviews: added, decks, minutes, timings, drafts: made, reports: taken };
}

const checks: Checks = {
  decks: ({ document }) => canBeTaken(document),
  minutes: (minute) => readMinute(minute) !== null,
  timings: ({ timing }) => readTiming(timing) !== null,
  drafts: ({ document }) => readable(readDraft(document)),
  reports: isSound,
};

/** Whether what was read is no fault. */
function readable(read: object | Fault): Readable {
  if (!('fault' in read)) return true;
  return read.newer ? 'newer' : false;
}

/** Whether a document is a lesson that a link would be taken of: one that can be read, and asks something if it has drills. */
function canBeTaken(document: unknown): Readable {
  const read = readDeck(document);
  if ('fault' in read) return readable(read);
  return read.deck.drills.length === 0 || itemsOf(read.deck).length > 0;
}

/** Whether what a report's link holds goes on from what another's does. */
function goesOnFrom(later: StoredReport, earlier: StoredReport): boolean {
  const [one, before] = [readReport(later.link), readReport(earlier.link)];
  return 'report' in one && 'report' in before && goesOn(one.report, before.report);
}

/** Whether a stored report says of itself what its link says. */
function isSound({ link, sender, deck, day, minute }: StoredReport): Readable {
  const read = readReport(link);
  if ('fault' in read) return readable(read);
  if (link !== `#/report/${read.payload}`) return false;
  const { report } = read;
  return (
    report.sender === sender &&
    report.deck === deck &&
    report.day === day &&
    report.minute === minute
  );
}

/**
 * Erases everything on this device and begins anew. The student has been asked twice.
 *
 * @throws StoreTrouble, and then nothing was erased
 */
export async function eraseAll(): Promise<void> {
  await (await haveLog()).erase();
  location.hash = '';
  location.reload();
}
