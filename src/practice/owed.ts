/** What comes again in a round: what was shown is asked, what was missed returns, what was taken for another meets it. */
import { withDegree } from '../decks/id.ts';
import { degreeAnswered } from './degreeAnswered.ts';
import type { Item, Verdict } from './item.ts';
import { type Asked, cardsBehind, cardsInOrder, type Owed, type Round } from './round.ts';

/**
 * After so many cards: what was shown, two cards later; what was missed, with two between, then with nine; what was
 * near, with two between.
 */
const AFTER = { shown: 1, missed: 2, missedAgain: 9, near: 2 };

/** Missed so often in one round, an item is left for another day. */
const MOST = 8;

/** A pair for one that was taken for another: the other with one card between, then the first with two. */
const PAIR = { most: 1, other: 1, own: 4 };

/** What comes again once a card was shown. */
export function owedAfterMeeting(round: Round, item: string): readonly Owed[] {
  return [...round.owed, { item, from: cardsBehind(round) + 1 + AFTER.shown }];
}

/**
 * What comes again after an answer, and how many pairs there were. In the deck's first week an item not yet
 * answered right twice comes until it is right, or was missed eight times; others are left to their expected gain, but
 * for one pair a round.
 */
export function owedAfterAnswer(
  round: Round,
  items: readonly Item[],
  { right, takenFor }: Verdict,
): Pick<Round, 'owed' | 'pairs'> {
  const { open, pairs } = round;
  if (right || !open) return { owed: round.owed, pairs };
  const owed = [...round.owed];
  const behind = cardsBehind(round) + 1;
  const before = round.asked.filter(({ item }) => item === open.item);
  const isFirst = before.length === 0;
  const leaves = missesOf(round, open.item) + 1 >= MOST;
  const other = isFirst && pairs < PAIR.most ? takenForItem(items, open.item, takenFor) : null;
  if (other) owed.push({ item: other, from: behind + PAIR.other });
  if (!open.proven && !leaves) {
    owed.push({ item: open.item, from: behind + (isFirst ? AFTER.missed : AFTER.missedAgain) });
  } else if (other) {
    owed.push({ item: open.item, from: behind + PAIR.own });
  }
  return { owed, pairs: pairs + (other ? 1 : 0) };
}

/** Whether an item was missed so often in the round that it is left for another day. */
export function isLeft(round: Round, item: string): boolean {
  return missesOf(round, item) >= MOST;
}

const missesOf = ({ asked }: Round, id: string) =>
  asked.filter(({ item, right }) => item === id && !right).length;

/** What comes again after an answer that was near: the card is no card of the round. */
export function owedAfterNear(round: Round, item: string): readonly Owed[] {
  return [...round.owed, { item, from: cardsBehind(round) + AFTER.near }];
}

/**
 * The item whose turn it is to come again; null where there is none. What can no longer be asked, as where sound was
 * lost, keeps nothing waiting.
 *
 * @param early take one before its turn too, where nothing else is left to ask
 */
export function nextOwed(round: Round, items: readonly Item[], early = false): Item | null {
  const behind = cardsBehind(round);
  const inTurn = round.owed.toSorted((a, b) => a.from - b.from);
  for (const { item, from } of inTurn) {
    if (!early && from > behind) return null;
    const found = items.find(({ id }) => id === item);
    if (found) return found;
  }
  return null;
}

/**
 * What may come between where nothing is left to ask but what comes again, and that was there within the last two cards:
 * of what was right in this round that which was longest ago. Null where none is needed, or there is none.
 */
export function spacer(round: Round, items: readonly Item[]): Item | null {
  const next = nextOwed(round, items, true);
  const cards = cardsInOrder(round);
  if (!next || cards.slice(-AFTER.missed).every(({ item }) => item !== next.id)) return null;
  const last = new Map<string, Asked>();
  for (const asked of round.asked) {
    last.delete(asked.item);
    last.set(asked.item, asked);
  }
  const owed = new Set(round.owed.map(({ item }) => item));
  const recent = new Set(cards.slice(-AFTER.missed).map(({ item }) => item));
  const known = [...last.values()].filter(
    ({ item, right }) => right && !owed.has(item) && !recent.has(item),
  );
  return items.find(({ id }) => id === known[0]?.item) ?? null;
}

/** The item that was answered instead: the same but for the degree. Null where the lesson has none. */
function takenForItem(items: readonly Item[], id: string, takenFor: string | null): string | null {
  if (takenFor === null) return null;
  const asked = items.find((item) => item.id === id);
  const degree = asked ? degreeAnswered(takenFor, asked.size) : null;
  if (degree === null) return null;
  const other = withDegree(id, degree);
  return other !== id && items.some((item) => item.id === other) ? other : null;
}
