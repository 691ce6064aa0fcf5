/** One sitting, as plain data: it can be stored as JSON and gone on with after a reload. */
import { localDay } from '../memory/day.ts';
import type { Item } from './item.ts';

/** How long a round goes on: so many cards, so many minutes, or until enough is known for today. */
export type Goal = { readonly cards: number } | { readonly minutes: number } | 'enough';

export interface Round {
  readonly deck: string;
  readonly seed: number;
  readonly goal: Goal;
  /** When it was started, and when the next lesson is, ms; null where its day is not known. */
  readonly started: number;
  readonly lesson: number | null;
  /** Whether something new is shown before it is asked. */
  readonly meets: boolean;
  /** The cards answered, and those shown without being asked, each in their order. */
  readonly asked: readonly Asked[];
  readonly met: readonly Met[];
  /** The card on the screen: not answered yet, or being shown. */
  readonly open: Open | null;
  /** Items that come again in this round. */
  readonly owed: readonly Owed[];
  /** How many pairs came because one was taken for the other. */
  readonly pairs: number;
}

/** A card that was drawn. */
interface Open {
  readonly item: string;
  readonly seed: number;
  readonly isNew: boolean;
  /** The chance of its being known when it was drawn; null: never asked before. */
  readonly recall: number | null;
  /** Whether a miss need not return: it had been right more than once, or the deck's first week is over. */
  readonly proven: boolean;
  /** Whether it is only shown, to be asked a little later. */
  readonly meet: boolean;
}

/** A card that was answered. */
export interface Asked extends Open {
  readonly right: boolean;
  /** Whether the answer was shown because it was asked for. */
  readonly shown: boolean;
  readonly takenFor: string | null;
  /** What was answered, in the words of `data-answer`; null where it was shown, or is not known any more. */
  readonly given: string | null;
  readonly at: number;
  /** Seconds of the round that it took; a pause is not thinking time and counts as 45 at most. */
  readonly seconds: number;
}

/** A card that was shown: that is no answer, and nothing of it enters the log. */
interface Met {
  readonly item: string;
  /** After how many answers of the round: the order of cards is not told by a clock, which may be set back. */
  readonly after: number;
  readonly at: number;
  readonly seconds: number;
}

/** An item that comes again as soon as so many cards, shown and asked, lie behind. */
export interface Owed {
  readonly item: string;
  readonly from: number;
}

/**
 * A new round on a deck. The goal is a number of cards or of minutes, or `'enough'`.
 *
 * @throws RangeError where the number is not above 0
 */
export function startRound(options: {
  readonly deck: string;
  readonly goal: Goal;
  readonly seed: number;
  readonly now: number;
  readonly lesson?: number | null;
  readonly meets?: boolean;
}): Round {
  const { deck, goal, seed, now, lesson = null, meets = true } = options;
  const size = goal === 'enough' ? 1 : 'cards' in goal ? goal.cards : goal.minutes;
  if (!(size > 0)) throw new RangeError(`A round cannot be ${size} long.`);
  const nothing = { asked: [], met: [], open: null, owed: [], pairs: 0 };
  return { deck, goal, seed, started: now, lesson, meets, ...nothing };
}

/** How many cards lie behind, shown and asked. */
export function cardsBehind({ asked, met }: Round): number {
  return asked.length + met.length;
}

/** The last card, shown or asked. */
export function lastCard({ asked, met }: Round): Asked | Met | undefined {
  const shown = met.at(-1);
  return shown?.after === asked.length ? shown : asked.at(-1);
}

/** The cards behind, shown and asked, in their order. */
export function cardsInOrder({ asked, met }: Round): (Asked | Met)[] {
  return [
    ...met.map((card) => ({ card, place: card.after })),
    ...asked.map((card, k) => ({ card, place: k + 0.5 })),
  ]
    .toSorted((a, b) => a.place - b.place)
    .map(({ card }) => card);
}

/** The item of the last card, shown or asked. */
export function lastItem(round: Round, items: readonly Item[]): Item | undefined {
  const last = lastCard(round);
  return last && items.find(({ id }) => id === last.item);
}

/** Seconds of practice in the round so far, pauses left out. */
function secondsSpent({ asked, met }: Round): number {
  return [...asked, ...met].reduce((sum, { seconds }) => sum + seconds, 0);
}

/** Seconds of practice that are left; null where the round is not measured in minutes. */
export function secondsLeft(round: Round): number | null {
  if (round.goal === 'enough' || 'cards' in round.goal) return null;
  return Math.max(0, round.goal.minutes * 60 - secondsSpent(round));
}

/** How far the round is, 0 to 1: in minutes, or in cards; until enough is known, half way. */
export function progress(round: Round): number {
  if (round.goal === 'enough') return 0.5;
  if ('cards' in round.goal) return Math.min(1, round.asked.length / round.goal.cards);
  return Math.min(1, secondsSpent(round) / (60 * round.goal.minutes));
}

/** Whether a stored round can be gone on with: only on the local day it was started. `offset` as in a review. */
export function canGoOn(round: Round, now: number, offset: number): boolean {
  return localDay(round.started, offset) === localDay(now, offset);
}
