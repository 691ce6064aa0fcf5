/** A round as a pure state machine: the next card, what an answer makes of it, what was only shown. */
import { DAY } from '../memory/day.ts';
import { type Memory, recall } from '../memory/memory.ts';
import type { Reviews } from '../store/review.ts';
import { seedAt } from '../theory/random.ts';
import { choose } from './choose.ts';
import { isEnough } from './enough.ts';
import type { Item, Verdict } from './item.ts';
import { nextOwed, owedAfterAnswer, owedAfterMeeting, owedAfterNear, spacer } from './owed.ts';
import { cardsBehind, lastCard, type Round, secondsLeft } from './round.ts';

/** The next card, and the round that has drawn it. */
interface Next {
  readonly round: Round;
  readonly item: Item;
  readonly seed: number;
  /** Whether it is to be shown with its answer and not asked: `metCard` then goes on. */
  readonly meet: boolean;
}

const LONGEST = 45;

/** From this recall on a card is asked with near wrong answers: they help near the ceiling and hurt below it. */
const STRONG = 0.7;

/** Right so often, an item is known for more than an echo of having been shown. */
const PROOF = 2;

/** In the deck's first week a miss comes back until it is right; later that costs more than it gains. */
const SETTLED = 7 * DAY;

/** So many answers without a right one, over the weeks or in this round, and an item is shown again before it is asked. */
const LOST = 3;

/**
 * The card to show now: the one that is open, else a new one; null at the round's end. An odd seed asks the card for
 * near wrong answers, an even one for far ones.
 */
export function nextCard(
  round: Round,
  items: readonly Item[],
  memory: Memory,
  now: number,
): Next | null {
  const { open } = round;
  const shown = open && items.find(({ id }) => id === open.item);
  if (open && shown) return { round, item: shown, seed: open.seed, meet: open.meet };
  if (isFull(round)) return null;
  const owed = nextOwed(round, items);
  if (owed) return draw(round, owed, items, memory, now);
  if (round.goal === 'enough' && isEnough(items, memory, now, round.lesson)) return null;
  const item =
    choose(round, items, memory, now) ?? spacer(round, items) ?? nextOwed(round, items, true);
  return item && draw(round, item, items, memory, now);
}

function isFull(round: Round): boolean {
  if (round.goal === 'enough') return false;
  if ('cards' in round.goal) return round.asked.length >= round.goal.cards;
  return secondsLeft(round) === 0;
}

function draw(round: Round, item: Item, items: readonly Item[], memory: Memory, now: number): Next {
  const known = memory.items.get(item.id);
  const chance = recall(memory, item.id, now, item.mark);
  const near = chance !== null && chance >= STRONG ? 1 : 0;
  const seed = ((seedAt(round.seed, cardsBehind(round)) & ~1) | near) >>> 0;
  const isUnknown = !known || (known.right === 0 && known.asked >= LOST);
  const meet = round.meets && (comesLost(round, item.id) ?? isUnknown);
  const isProven = known !== undefined && known.right >= PROOF;
  const returns = !isProven && isYoung(items, memory, now);
  const open = { item: item.id, seed, isNew: !known, recall: chance, proven: !returns, meet };
  const owed = round.owed.filter((one) => one.item !== item.id);
  return { round: { ...round, open, owed }, item, seed, meet };
}

/** Whether it was missed just now as often as calls for being shown; null where it has not come in this round. */
function comesLost({ met, asked }: Round, id: string): boolean | null {
  const shown = met.findLast(({ item }) => item === id);
  if (!shown && asked.every(({ item }) => item !== id)) return null;
  const since = asked.slice(shown?.after ?? 0);
  return since.filter(({ item, right }) => item === id && !right).length >= LOST;
}

/** Whether these items were first asked within the week before. */
function isYoung(items: readonly Item[], memory: Memory, now: number): boolean {
  const week = now + memory.shift - SETTLED;
  return items.every(({ id }) => (memory.items.get(id)?.first ?? now + memory.shift) > week);
}

/**
 * The round after the open card was shown: it is asked two cards later.
 *
 * @throws Error where no card is being shown
 */
export function metCard(round: Round, now: number): Round {
  const { open } = round;
  if (!open?.meet) throw new Error('There is no card being shown.');
  const seconds = secondsSince(round, now);
  const shown = { item: open.item, after: round.asked.length, at: now, seconds };
  const met = [...round.met, shown];
  return { ...round, met, owed: owedAfterMeeting(round, open.item), open: null };
}

/**
 * The round after the open card was answered at `now`; `shown`, where its answer was asked for instead of one `given`.
 *
 * @throws Error where no card is open
 */
export function answerCard(
  round: Round,
  items: readonly Item[],
  verdict: Verdict & { readonly shown?: boolean; readonly given?: string | null },
  now: number,
): Round {
  const { open } = round;
  if (!open || open.meet) throw new Error('There is no open card to answer.');
  const { right, takenFor, shown = false, given = null } = verdict;
  const seconds = secondsSince(round, now);
  const asked = [...round.asked, { ...open, right, shown, takenFor, given, at: now, seconds }];
  return { ...round, asked, ...owedAfterAnswer(round, items, verdict), open: null };
}

/**
 * The round after an answer to the open card that was near: as if it had not been asked, and it is asked again.
 *
 * @throws Error where no card is open
 */
export function undecidedCard(round: Round): Round {
  const { open } = round;
  if (!open || open.meet) throw new Error('There is no open card to answer.');
  return { ...round, owed: owedAfterNear(round, open.item), open: null };
}

function secondsSince(round: Round, now: number): number {
  const before = lastCard(round)?.at ?? round.started;
  return Math.min(LONGEST, Math.max(0, (now - before) / 1000));
}

/**
 * A stored round as the log knows it: a page that was closed between storing an answer and storing the round has left
 * the card open, but it is answered. It is known by item and seed alone: the clock may have been set back.
 */
export function caughtUp(round: Round, items: readonly Item[], reviews: Reviews): Round {
  const { open } = round;
  if (!open || open.meet) return round;
  let answered: (Verdict & { readonly at: number }) | null = null;
  reviews.forEach((review) => {
    if (review.item === open.item && review.seed === open.seed) answered = review;
  });
  const { at, ...verdict } = (answered ?? {}) as Verdict & { at?: number };
  return at === undefined ? round : answerCard(round, items, verdict, at);
}
