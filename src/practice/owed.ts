/** What comes again in a round: what was shown is asked, what was missed returns, what was taken for another meets it. */
import { withDegree } from '../decks/id.ts';
import { degreeAnswered } from './confusion.ts';
import type { Item, Verdict } from './item.ts';
import { cardsBehind, type Owed, type Round } from './round.ts';

/**
 * After so many cards: what was shown, two cards later; what was missed, with two between, then with nine; what was
 * near, with two between.
 */
const AFTER = { shown: 1, missed: 2, missedAgain: 9, near: 2 };

/** A pair for one that was taken for another: the other with one card between, then the first with two. */
const PAIR = { most: 1, other: 1, own: 4 };

/** What comes again once a card was shown. */
export function owedAfterMeeting(round: Round, item: string): readonly Owed[] {
  return [...round.owed, { item, from: cardsBehind(round) + 1 + AFTER.shown }];
}

/**
 * What comes again after an answer, and how many pairs there were. In the deck's first week an item not yet
 * answered right twice comes until it is right; others are left to their expected gain, but for one pair a round.
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
  const isFirst = round.asked.every(({ item }) => item !== open.item);
  const other = isFirst && pairs < PAIR.most ? takenForItem(items, open.item, takenFor) : null;
  if (other) owed.push({ item: other, from: behind + PAIR.other });
  if (!open.proven) {
    owed.push({ item: open.item, from: behind + (isFirst ? AFTER.missed : AFTER.missedAgain) });
  } else if (other) {
    owed.push({ item: open.item, from: behind + PAIR.own });
  }
  return { owed, pairs: pairs + (other ? 1 : 0) };
}

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

/** The item that was answered instead: the same but for the degree. Null where the lesson has none. */
function takenForItem(items: readonly Item[], id: string, takenFor: string | null): string | null {
  if (takenFor === null) return null;
  const asked = items.find((item) => item.id === id);
  const degree = asked ? degreeAnswered(takenFor, asked.size) : null;
  if (degree === null) return null;
  const other = withDegree(id, degree);
  return other !== id && items.some((item) => item.id === other) ? other : null;
}
