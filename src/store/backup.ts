import * as v from 'valibot';
import { parse, type Quarantined } from './chunk.ts';
import type { StoredDeck } from './decks.ts';
import type { StoredDraft } from './drafts.ts';
import { isReview } from './logLine.ts';
import type { StoredMinute } from './minutes.ts';
import {
  deckRecord,
  draftRecord,
  minuteRecord,
  quarantinedRecord,
  reportRecord,
  timingRecord,
} from './records.ts';
import type { StoredReport } from './reports.ts';
import type { Review } from './review.ts';
import type { StoredTiming } from './timings.ts';

/** All that is worth keeping, as it goes to a file and comes back. */
export interface Backup {
  readonly reviews: readonly Review[];
  readonly decks: readonly StoredDeck[];
  /** The free minutes that were played. */
  readonly minutes: readonly StoredMinute[];
  /** What was sure of the last card of each figure kept in time. */
  readonly timings: readonly StoredTiming[];
  /** What a teacher has: the lessons made here, and the students' reports. */
  readonly drafts: readonly StoredDraft[];
  readonly reports: readonly StoredReport[];
  /** Records that could not be read travel too: a later version may know them. */
  readonly quarantined: readonly Quarantined[];
}

/**
 * The form of the file: lines of seven sorts. One with fewer has a form from before, which older pages read too; the first,
 * with nothing of a teacher's, is read and no longer written.
 */
const FORMS = { first: 1, plain: 2, minutes: 3, timings: 4 } as const;

/** What the first line calls how many of a sort there are, and what a line of it begins with. */
const WORDS = {
  decks: ['decks', 'deck'],
  drafts: ['drafts', 'draft'],
  reports: ['reports', 'report'],
  minutes: ['minutes', 'minute'],
  timings: ['timings', 'timing'],
  reviews: ['reviews', 'review'],
  quarantined: ['aside', 'aside'],
} as const satisfies Record<keyof Backup, readonly [string, string]>;

const SORTS = Object.keys(WORDS) as (keyof Backup)[];

/** The file is none of ours, or damaged. The message is a sentence for the student that names the line, from 1. */
export class BackupFault extends Error {
  override readonly name = 'BackupFault';
}

/**
 * A backup as text: a JSON object a line, its fields named in full. First what the file is and how much is in it, then
 * the decks, the drafts, the reports, the free minutes, the timings, the reviews in their order, and what was quarantined.
 */
export function writeBackup(backup: Backup, now: number): string {
  const head = {
    skipwise: 'backup',
    version: formOf(backup),
    written: new Date(now).toISOString(),
    ...Object.fromEntries(SORTS.map((sort) => [WORDS[sort][0], backup[sort].length])),
  };
  const lines = SORTS.flatMap((sort) => backup[sort].map((one) => ({ [WORDS[sort][1]]: one })));
  return [head, ...lines].map((line) => `${JSON.stringify(line)}\n`).join('');
}

function formOf({ minutes, timings }: Backup): number {
  if (timings.length > 0) return FORMS.timings;
  return minutes.length > 0 ? FORMS.minutes : FORMS.plain;
}

/** Whether a document can be read, or could be by a newer version of Skipwise. */
export type Readable = boolean | 'newer';

/** What the documents in a backup hold is for other rooms to say: whether they can be read. */
export interface Checks {
  decks(deck: StoredDeck): Readable;
  minutes(minute: StoredMinute): Readable;
  timings(timing: StoredTiming): Readable;
  drafts(draft: StoredDraft): Readable;
  reports(report: StoredReport): Readable;
}

/** Awaited between slices of long work, with the share of it that is done, 0 to 1; it ends the work by throwing. */
export type BetweenSlices = (done: number) => Promise<void>;

/** So many lines are read at a stretch: a few ms on a phone. */
const SLICE = 250;

/**
 * Reads what `writeBackup` wrote.
 *
 * @throws BackupFault where the file is of another kind, of a newer version, cut short or wrong in a line
 */
export async function readBackup(
  text: string,
  checks: Checks,
  pace?: BetweenSlices,
): Promise<Backup> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  const head = readHead(lines[0] ?? '');
  const found: Found = {
    reviews: [],
    decks: [],
    minutes: [],
    timings: [],
    drafts: [],
    reports: [],
    quarantined: [],
  };
  for (let k = 1; k < lines.length; k++) {
    // What a document holds takes longer to check than a review.
    if (k % SLICE === 0 || !lines[k]!.startsWith('{"review"')) await pace?.(k / lines.length);
    const fault = takeLine(parse(lines[k]!), found, checks);
    if (fault !== null) throw new BackupFault(`Line ${k + 1} of this backup ${fault}`);
  }
  for (const sort of SORTS) {
    const told = head.get(WORDS[sort][0]) ?? 0;
    if (told === found[sort].length) continue;
    throw new BackupFault(
      `This backup is cut short after line ${lines.length}: of ${String(told)} ${WORDS[sort][0]} it has ${found[sort].length}. Nothing was changed.`,
    );
  }
  return found;
}

function readHead(line: string): ReadonlyMap<string, unknown> {
  const head = new Map(Object.entries(parse(line) ?? {}));
  if (head.get('skipwise') !== 'backup') {
    throw new BackupFault('This is not a backup of Skipwise. Choose the file that you saved here.');
  }
  if (!Object.values<unknown>(FORMS).includes(head.get('version'))) {
    throw new BackupFault(
      'This backup was saved by a newer version of Skipwise. Update this page, then read it again.',
    );
  }
  return head;
}

type Found = { [Sort in keyof Backup]: Backup[Sort][number][] };

const DAMAGED = 'is damaged. Nothing was changed.';

/** Adds what a line holds, or says what is wrong with it. */
function takeLine(value: unknown, found: Found, checks: Checks): string | null {
  const line = new Map(Object.entries(value ?? {}));
  const review = line.get('review');
  // By hand, as in the log: the schema library takes eleven times as long.
  if (isReview(review)) return taken(found.reviews, review);
  const quarantined = line.get('aside');
  if (v.is(quarantinedRecord, quarantined)) return taken(found.quarantined, quarantined);
  const deck = line.get('deck');
  if (v.is(deckRecord, deck)) return taken(found.decks, deck, checks.decks, 'lesson');
  const minute = line.get('minute');
  if (v.is(minuteRecord, minute)) return taken(found.minutes, minute, checks.minutes, 'minute');
  const timing = line.get('timing');
  if (v.is(timingRecord, timing)) return taken(found.timings, timing, checks.timings, 'timing');
  const draft = line.get('draft');
  if (v.is(draftRecord, draft)) return taken(found.drafts, draft, checks.drafts, 'lesson');
  const report = line.get('report');
  if (v.is(reportRecord, report)) return taken(found.reports, report, checks.reports, 'report');
  return DAMAGED;
}

function taken<T>(
  all: T[],
  one: T,
  check: (one: T) => Readable = () => true,
  word = '',
): string | null {
  const readable = check(one);
  if (readable === 'newer')
    return `holds a ${word} made with a newer version of Skipwise. Nothing was changed: update this page, then read the file again.`;
  if (!readable) return `holds no ${word} that can be read. Nothing was changed.`;
  all.push(one);
  return null;
}
