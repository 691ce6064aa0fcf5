import { readDeck } from '../../decks/document.ts';
import { readReport } from '../../decks/report.ts';
import { readDraft } from '../../making/draftDocument.ts';
import { replay } from '../../memory/memory.ts';
import { readBackup, writeBackup, type Checks } from '../../store/backup.ts';
import { listDecks, takeDecks } from '../../store/decks.ts';
import { listDrafts, takeDrafts } from '../../store/drafts.ts';
import { listReports, takeReports, type StoredReport } from '../../store/reports.ts';
import { reports as kept } from '../report/reports.ts';
import { log, memory, readLessons } from '../state.ts';
import { readKept } from '../teach/kept/kept.ts';

/** A file's text, and how many lessons and reports are not in it because they cannot be read. */
interface Saved {
  readonly text: string;
  readonly left: number;
}

/**
 * The whole log, the lessons and what a teacher has, as a file's text.
 *
 * @throws StoreTrouble where the device does not give them: a file without them would be taken for whole
 */
export async function backupText(now: number): Promise<Saved> {
  const { reviews, quarantined } = log.value!;
  const [decks, drafts, reports] = await Promise.all([listDecks(), listDrafts(), listReports()]);
  const backup = {
    reviews: [...reviews],
    quarantined,
    // What cannot be read here is not read from the file either, and would take the rest with it.
    decks: decks.filter(checks.decks),
    drafts: drafts.filter(checks.drafts),
    reports: reports.filter(checks.reports),
  };
  const all = decks.length + drafts.length + reports.length;
  const left = all - backup.decks.length - backup.drafts.length - backup.reports.length;
  return { text: writeBackup(backup, now), left };
}

/** How much of a file was new here. */
export interface Taken {
  readonly reviews: number;
  readonly decks: number;
  readonly drafts: number;
  readonly reports: number;
}

/**
 * Takes in a file: reviews as a union with those that are here, lessons that are not here yet, of a teacher's lessons
 * and of students' reports those that are newer than what is here. Tells how much was new.
 *
 * @throws BackupFault, and then nothing has changed
 * @throws StoreTrouble where the device does not take all of it; reading the file again takes in the rest
 */
export async function takeBackup(text: string): Promise<Taken> {
  const backup = await readBackup(text, checks);
  const added = await log.value!.merge(backup);
  memory.value = { of: replay(log.value!.reviews) };
  const decks = await takeDecks(backup.decks);
  await readLessons();
  const drafts = await takeDrafts(backup.drafts);
  if (drafts > 0) await readKept();
  const taken = await takeReports(backup.reports);
  if (taken > 0) kept.value = null;
  return { reviews: added, decks, drafts, reports: taken };
}

const checks: Checks = {
  decks: ({ document }) => 'deck' in readDeck(document),
  drafts: ({ document }) => 'draft' in readDraft(document),
  reports: isSound,
};

/** Whether a stored report says of itself what its link says. */
function isSound({ link, sender, deck, day, minute }: StoredReport): boolean {
  const read = readReport(link);
  if ('fault' in read || link !== `#/report/${read.payload}`) return false;
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
  await log.value!.erase();
  location.hash = '';
  location.reload();
}
