import { type Aside, parse } from './chunk.ts';
import type { StoredDeck } from './decks.ts';
import { isReview } from './line.ts';
import type { Review } from './review.ts';

/** All that is worth keeping, as it goes to a file and comes back. */
export interface Backup {
  readonly reviews: readonly Review[];
  readonly decks: readonly StoredDeck[];
  /** Records that could not be read travel too: a later version may know them. */
  readonly aside: readonly Aside[];
}

const VERSION = 1;

/** The file is none of ours, or damaged. The message is a sentence for the student that names the line, from 1. */
export class BackupFault extends Error {
  override readonly name = 'BackupFault';
}

/**
 * A backup as text: a JSON object a line, its fields named in full. First what the file is and how much is in it, then
 * the decks, the reviews in their order, and what was set aside.
 */
export function writeBackup({ reviews, decks, aside }: Backup, now: number): string {
  const head = {
    skipwise: 'backup',
    version: VERSION,
    written: new Date(now).toISOString(),
    decks: decks.length,
    reviews: reviews.length,
    aside: aside.length,
  };
  const lines = [
    head,
    ...decks.map((deck) => ({ deck })),
    ...reviews.map((review) => ({ review })),
    ...aside.map((one) => ({ aside: one })),
  ];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}

/**
 * Reads what `writeBackup` wrote.
 *
 * @throws BackupFault where the file is of another kind, of a later version, cut short or wrong in a line
 */
export function readBackup(text: string): Backup {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  const head = parse(lines[0] ?? '') as Record<string, unknown> | undefined;
  if (head?.skipwise !== 'backup') {
    throw new BackupFault('This is not a backup of Skipwise. Choose the file that you saved here.');
  }
  if (head.version !== VERSION) {
    throw new BackupFault(
      'This backup is from a later version. Update this page, then read it again.',
    );
  }
  const found = { reviews: [] as Review[], decks: [] as StoredDeck[], aside: [] as Aside[] };
  lines.slice(1).forEach((line, k) => {
    if (!takeLine(parse(line), found)) {
      throw new BackupFault(`Line ${k + 2} of this backup is damaged. Nothing was changed.`);
    }
  });
  for (const kind of ['decks', 'reviews', 'aside'] as const) {
    if (head[kind] !== found[kind].length) {
      throw new BackupFault(
        `This backup is cut short after line ${lines.length}: of ${String(head[kind])} ${kind} it has ${found[kind].length}. Nothing was changed.`,
      );
    }
  }
  return found;
}

function takeLine(
  value: unknown,
  found: { reviews: Review[]; decks: StoredDeck[]; aside: Aside[] },
): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const { review, deck, aside } = value as Record<string, unknown>;
  if (isReview(review)) found.reviews.push(review);
  else if (isDeck(deck)) found.decks.push(deck);
  else if (isAside(aside)) found.aside.push(aside);
  else return false;
  return true;
}

function isDeck(value: unknown): value is StoredDeck {
  const deck = value as StoredDeck;
  return (
    typeof value === 'object' &&
    value !== null &&
    typeof deck.id === 'string' &&
    deck.id !== '' &&
    Number.isFinite(deck.added) &&
    typeof deck.away === 'boolean' &&
    'document' in deck
  );
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
