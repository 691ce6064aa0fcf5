import { type Aside, parse } from './chunk.ts';
import { isDeck, type StoredDeck } from './decks.ts';
import type { Shared, StoredDraft } from './drafts.ts';
import { isReview, isWhole } from './line.ts';
import type { StoredReport } from './reports.ts';
import type { Review } from './review.ts';

/** All that is worth keeping, as it goes to a file and comes back. */
export interface Backup {
  readonly reviews: readonly Review[];
  readonly decks: readonly StoredDeck[];
  /** What a teacher has: the lessons made here, and the students' reports. */
  readonly drafts: readonly StoredDraft[];
  readonly reports: readonly StoredReport[];
  /** Records that could not be read travel too: a later version may know them. */
  readonly aside: readonly Aside[];
}

/** 1 had no drafts and no reports. */
const VERSION = 2;

const KINDS = ['decks', 'drafts', 'reports', 'reviews', 'aside'] as const;

/** The file is none of ours, or damaged. The message is a sentence for the student that names the line, from 1. */
export class BackupFault extends Error {
  override readonly name = 'BackupFault';
}

/**
 * A backup as text: a JSON object a line, its fields named in full. First what the file is and how much is in it, then
 * the decks, the drafts, the reports, the reviews in their order, and what was set aside.
 */
export function writeBackup(backup: Backup, now: number): string {
  const { reviews, decks, drafts, reports, aside } = backup;
  const head = {
    skipwise: 'backup',
    version: VERSION,
    written: new Date(now).toISOString(),
    ...Object.fromEntries(KINDS.map((kind) => [kind, backup[kind].length])),
  };
  const lines = [
    head,
    ...decks.map((deck) => ({ deck })),
    ...drafts.map((draft) => ({ draft })),
    ...reports.map((report) => ({ report })),
    ...reviews.map((review) => ({ review })),
    ...aside.map((one) => ({ aside: one })),
  ];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}

/** What the documents in a backup hold is for other rooms to say: whether a draft and a report are whole. */
export interface Checks {
  draft(draft: StoredDraft): boolean;
  report(report: StoredReport): boolean;
}

/**
 * Reads what `writeBackup` wrote, now or in an earlier version.
 *
 * @throws BackupFault where the file is of another kind, of a later version, cut short or wrong in a line
 */
export function readBackup(text: string, checks: Checks): Backup {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  const head = parse(lines[0] ?? '') as Record<string, unknown> | undefined;
  if (head?.skipwise !== 'backup') {
    throw new BackupFault('This is not a backup of Skipwise. Choose the file that you saved here.');
  }
  if (head.version !== 1 && head.version !== VERSION) {
    throw new BackupFault(
      'This backup is from a later version. Update this page, then read it again.',
    );
  }
  const found: Found = { reviews: [], decks: [], drafts: [], reports: [], aside: [] };
  lines.slice(1).forEach((line, k) => {
    if (!takeLine(parse(line), found, checks)) {
      throw new BackupFault(`Line ${k + 2} of this backup is damaged. Nothing was changed.`);
    }
  });
  for (const kind of KINDS) {
    if ((head[kind] ?? 0) !== found[kind].length) {
      throw new BackupFault(
        `This backup is cut short after line ${lines.length}: of ${String(head[kind] ?? 0)} ${kind} it has ${found[kind].length}. Nothing was changed.`,
      );
    }
  }
  return found;
}

type Found = { [Kind in keyof Backup]: Backup[Kind][number][] };

function takeLine(value: unknown, found: Found, checks: Checks): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const { review, deck, draft, report, aside } = value as Record<string, unknown>;
  if (isReview(review)) found.reviews.push(review);
  else if (isDeck(deck)) found.decks.push(deck);
  else if (isDraft(draft) && checks.draft(draft)) found.drafts.push(draft);
  else if (isReport(report) && checks.report(report)) found.reports.push(report);
  else if (isAside(aside)) found.aside.push(aside);
  else return false;
  return true;
}

function isAside(value: unknown): value is Aside {
  const aside = value as Aside;
  return (
    typeof value === 'object' &&
    value !== null &&
    typeof aside.device === 'string' &&
    aside.device !== '' &&
    typeof aside.text === 'string' &&
    ['torn', 'foreign', 'newer'].includes(aside.flaw)
  );
}

function isDraft(value: unknown): value is StoredDraft {
  const draft = value as StoredDraft;
  return (
    typeof value === 'object' &&
    value !== null &&
    typeof draft.id === 'string' &&
    draft.id !== '' &&
    isWhole(draft.changed, 0, 8.64e15) &&
    typeof draft.away === 'boolean' &&
    Array.isArray(draft.shared) &&
    draft.shared.every(isShared) &&
    'document' in draft
  );
}

function isShared(value: unknown): value is Shared {
  const shared = value as Shared;
  return (
    typeof value === 'object' &&
    value !== null &&
    typeof shared.deck === 'string' &&
    isWhole(shared.at, 0, 8.64e15)
  );
}

function isReport(value: unknown): value is StoredReport {
  const report = value as StoredReport;
  return (
    typeof value === 'object' &&
    value !== null &&
    isWhole(report.sender, 0, 0xffffffff) &&
    isWhole(report.deck, 0, 0xffffffff) &&
    isWhole(report.day, 0, 0xffff) &&
    isWhole(report.minute, 0, 1439) &&
    typeof report.link === 'string' &&
    report.link.length <= LONGEST_LINK
  );
}

/** More than any report takes, characters. */
const LONGEST_LINK = 100_000;
