import { withDegree } from '../decks/id.ts';
import { localDay, type Memory, recall } from '../memory/memory.ts';
import type { Reviews } from '../store/review.ts';
import { seedAt } from '../theory/random.ts';
import { choose } from './choose.ts';
import { degreeAnswered } from './confusion.ts';
import type { Item, Verdict } from './item.ts';
import { type ExpectedGain, expectedGains, secondsACard } from './expectedGain.ts';

/** How long a round goes on: so many cards, so many minutes, or until enough is known for today. */
export type Goal = { readonly cards: number } | { readonly minutes: number } | 'enough';

/** One sitting. Plain data: it can be stored as JSON and gone on with after a reload. */
export interface Round {
  readonly deck: string;
  readonly seed: number;
  readonly goal: Goal;
  /** When it was started, ms. */
  readonly started: number;
  /** The cards answered, in their order. */
  readonly asked: readonly Asked[];
  /** The card shown and not yet answered. */
  readonly open: Open | null;
  /** Items to be asked next, because one was taken for the other. */
  readonly contrast: readonly string[];
  /** How many such pairs there were. */
  readonly pairs: number;
}

/** A card that was drawn. */
export interface Open {
  readonly item: string;
  readonly seed: number;
  readonly isNew: boolean;
  /** The chance of a right answer when it was drawn; null: never asked before. */
  readonly recall: number | null;
}

/** A card that was answered. */
export interface Asked extends Open {
  readonly right: boolean;
  readonly takenFor: string | null;
  readonly at: number;
  /** Seconds of the round that it took; a pause is not thinking time and counts as 45 at most. */
  readonly seconds: number;
}

/** The next card to show, and the round that has drawn it. */
export interface Next {
  readonly round: Round;
  readonly item: Item;
  readonly seed: number;
}

const LONGEST = 45;

/** From this recall on a card is asked with near wrong answers: they help near the ceiling and hurt below it. */
const STRONG = 0.7;

const PAIRS = 2;

/**
 * Below so much expected gain a second nothing is worth asking today: at both aims together a minute would not buy half
 * an item. In simulation, of ten minutes a day this saves a student who holds well a fifth, for half a point less known.
 */
const WORTH = 1 / 120;

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
}): Round {
  const { deck, goal, seed, now } = options;
  const size = goal === 'enough' ? 1 : 'cards' in goal ? goal.cards : goal.minutes;
  if (!(size > 0)) throw new RangeError(`A round cannot be ${size} long.`);
  return { deck, goal, seed, started: now, asked: [], open: null, contrast: [], pairs: 0 };
}

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
  if (open && shown) return { round, item: shown, seed: open.seed };
  if (isFull(round)) return null;
  const ranked = expectedGains(items, memory, now);
  if (round.goal === 'enough' && isEnoughOf(ranked)) return null;
  const asking = withoutLostContrast(round, items);
  const chosen = choose(asking, ranked);
  return chosen && draw(asking, chosen.item, recall(memory, chosen.item.id, now));
}

/** A pair of which one can no longer be asked, as where sound was lost, is none: it must not bar the pairs after it. */
function withoutLostContrast(round: Round, items: readonly Item[]): Round {
  const isWhole = round.contrast.every((wanted) => items.some(({ id }) => id === wanted));
  return isWhole ? round : { ...round, contrast: [] };
}

function draw(round: Round, item: Item, chance: number | null): Next {
  const near = chance !== null && chance >= STRONG ? 1 : 0;
  const seed = ((seedAt(round.seed, round.asked.length) & ~1) | near) >>> 0;
  const open = { item: item.id, seed, isNew: chance === null, recall: chance };
  const contrast = round.contrast.filter((id, k) => k > 0 || id !== item.id);
  return { round: { ...round, open, contrast }, item, seed };
}

/**
 * The round after the open card was answered at `now`.
 *
 * @throws Error where no card is open
 */
export function answerCard(
  round: Round,
  items: readonly Item[],
  { right, takenFor }: Verdict,
  now: number,
): Round {
  const { open } = round;
  if (!open) throw new Error('There is no open card to answer.');
  const before = round.asked.at(-1)?.at ?? round.started;
  const seconds = Math.min(LONGEST, Math.max(0, (now - before) / 1000));
  const asked = [...round.asked, { ...open, right, takenFor, at: now, seconds }];
  const other = right ? null : contrastOf(round, items, open.item, takenFor);
  return {
    ...round,
    asked,
    open: null,
    contrast: other ? [other, open.item] : round.contrast,
    pairs: round.pairs + (other ? 1 : 0),
  };
}

/**
 * A stored round as the log knows it: a page that was closed between storing an answer and storing the round has left
 * the card open, but it is answered.
 */
export function caughtUp(round: Round, items: readonly Item[], reviews: Reviews): Round {
  const last = reviews.at(-1);
  const isAnswered =
    last &&
    last.item === round.open?.item &&
    last.seed === round.open.seed &&
    last.at >= round.started;
  return isAnswered ? answerCard(round, items, last, last.at) : round;
}

/** The item that was answered instead: the same but for the degree. Null where there is none or it was enough of it. */
function contrastOf(
  round: Round,
  items: readonly Item[],
  id: string,
  takenFor: string | null,
): string | null {
  if (takenFor === null || round.pairs >= PAIRS || round.contrast.length > 0) return null;
  if (round.asked.some(({ item }) => item === id)) return null;
  const asked = items.find((item) => item.id === id);
  const degree = asked ? degreeAnswered(takenFor, asked.size) : null;
  if (degree === null) return null;
  const other = withDegree(id, degree);
  return other !== id && items.some((item) => item.id === other) ? other : null;
}

/** A round by minutes trusts what cards usually take as much as so many that it has seen. */
const USUAL = 5;

/**
 * How far the round is: `5 of 18`. By minutes, and until enough, `of` is an estimate that settles as it goes; no round
 * asks many more cards than there are items.
 */
export function progress(
  round: Round,
  items: readonly Item[],
  memory: Memory,
): { readonly done: number; readonly of: number } {
  const done = round.asked.length;
  const asking = done + (round.open ? 1 : 0);
  if (round.goal === 'enough') return { done, of: Math.max(asking, Math.min(items.length, 20)) };
  if ('cards' in round.goal) return { done, of: Math.max(done, round.goal.cards) };
  const spent = secondsSpent(round);
  const each = (spent + USUAL * secondsACard(items, memory)) / (done + USUAL);
  const left = Math.max(0, Math.ceil((round.goal.minutes * 60 - spent) / Math.max(1, each)));
  return { done, of: Math.max(asking, Math.min(items.length, done + left)) };
}

/** Seconds of practice in the round so far, pauses left out. */
export function secondsSpent(round: Round): number {
  return round.asked.reduce((sum, { seconds }) => sum + seconds, 0);
}

function isFull(round: Round): boolean {
  if (round.goal === 'enough') return false;
  if ('cards' in round.goal) return round.asked.length >= round.goal.cards;
  return secondsSpent(round) >= round.goal.minutes * 60;
}

/** Whether nothing is worth its seconds today. Show it; the student may go on. */
export function isEnough(items: readonly Item[], memory: Memory, now: number): boolean {
  return isEnoughOf(expectedGains(items, memory, now));
}

function isEnoughOf(ranked: readonly ExpectedGain[]): boolean {
  return ranked.every(({ gain }) => gain < WORTH);
}

/** Whether a stored round can be gone on with: only on the local day it was started. `offset` as in a review. */
export function canGoOn(round: Round, now: number, offset: number): boolean {
  return localDay(round.started, offset) === localDay(now, offset);
}
