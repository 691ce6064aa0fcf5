import { kindOf } from '../decks/id.ts';
import { guessOf } from '../decks/kinds.ts';
import type { Review, Reviews } from '../store/review.ts';
import { APART, KEPT, type Trial } from './forecast.ts';
import {
  activation,
  type Estimate,
  GENERAL,
  imprint,
  type Imprints,
  laidBy,
  type LearningEstimate,
  updateEstimates,
  OWN,
  SILENCE,
} from './imprint.ts';
import { DAY, recallAfter, strengthAfter, type Strength } from './model.ts';
import { learnPace, type LearningPace, newPace, type Pace } from './pace.ts';

/** What is known of one item, from its reviews alone. */
export interface Known {
  /** The kind of card. */
  readonly kind: string;
  readonly asked: number;
  readonly right: number;
  /** When it was first and last answered, ms, on the memory's own clock (see `Memory.clock`). */
  readonly first: number;
  readonly last: number;
  readonly lastRight: boolean;
  readonly strength: Strength;
  /** What its askings have left, and how easily it comes: for the choice of the next item (see imprint.ts). */
  readonly imprints: Imprints;
  readonly ease: Estimate;
  /** What it was taken for, and how often, in the words of `data-answer`. */
  readonly takenFor: ReadonlyMap<string, number>;
}

/** Everything that is remembered. Derived from the log, never stored; `learn` alone changes it. */
export interface Memory {
  readonly items: ReadonlyMap<string, Known>;
  /** Pace and cost of the answers, by kind of card. */
  readonly paces: ReadonlyMap<string, Pace>;
  /** Answers altogether; first answers to an item, and how many of those were right. */
  readonly asked: number;
  readonly firsts: number;
  readonly firstsRight: number;
  /** The last answers given half a day or more after the one before: what the forecast learns from. */
  readonly trials: readonly Trial[];
  /** How easily things come to this student. */
  readonly ease: Estimate;
  /** Local days practised, from 04:00 to 04:00, numbered from 1 January 1970. */
  readonly days: ReadonlySet<number>;
  /** When the last answer was given: ms since 1970, as `readClock` says. */
  readonly clock: number;
  /** Ms to add to the device's time, and how far the device's clock was last set back. */
  readonly shift: number;
  readonly owed: number;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
interface Learning extends Mutable<Omit<Memory, 'items' | 'paces' | 'trials' | 'days' | 'ease'>> {
  readonly ease: LearningEstimate;
  readonly items: Map<string, LearningKnown>;
  readonly paces: Map<string, LearningPace>;
  readonly trials: Trial[];
  readonly days: Set<number>;
}

type LearningKnown = Mutable<Omit<Known, 'imprints' | 'ease'>> & {
  imprints: number[];
  readonly ease: LearningEstimate;
};

/** The memory of someone who was asked nothing yet. */
export function emptyMemory(): Memory {
  return {
    items: new Map(),
    paces: new Map(),
    asked: 0,
    firsts: 0,
    firstsRight: 0,
    trials: [],
    ease: { ...GENERAL },
    days: new Set(),
    clock: 0,
    shift: 0,
    owed: 0,
  };
}

/** The memory that a log leaves, its reviews in their order. In any split the same: replay some, `learn` the rest. */
export function replay(reviews: Pick<Reviews, 'forEach'>): Memory {
  const memory = emptyMemory();
  reviews.forEach((review) => learn(memory, review));
  return memory;
}

/** Takes one more review into the memory, in place. */
export function learn(memory: Memory, review: Review): void {
  const learning = memory as Learning;
  const now = readClock(learning, review.at);
  let known = learning.items.get(review.item);
  learning.asked++;
  learning.days.add(localDay(review.at, review.offset));
  if (known) {
    again(learning, known, review, now);
  } else {
    known = first(review, now);
    learning.items.set(review.item, known);
    learning.firsts++;
    if (review.right) learning.firstsRight++;
  }
  learnPace(paceOf(learning, known.kind), review);
}

/** What is known of an item after its first answer. */
function first(review: Review, now: number): LearningKnown {
  const known: LearningKnown = {
    kind: kindOf(review.item),
    asked: 1,
    right: review.right ? 1 : 0,
    first: now,
    last: now,
    lastRight: review.right,
    strength: strengthAfter(null, 0, review.grade),
    imprints: [],
    ease: { ...OWN },
    takenFor: withConfusion(noConfusion, review),
  };
  imprint(known.imprints, now, SILENCE, review.right);
  return known;
}

/** One more answer to an item that is known already. */
function again(learning: Learning, known: LearningKnown, review: Review, now: number): void {
  const days = Math.max(0, (now - known.last) / DAY);
  if (days >= APART) keepTrial(learning.trials, known, days, review.right);
  const active = activation(known.imprints, now);
  updateEstimates(learning.ease, known.ease, active, review.right, guessOf(known.kind));
  imprint(known.imprints, now, active, review.right);
  known.strength = strengthAfter(known.strength, days, review.grade);
  known.asked++;
  if (review.right) known.right++;
  known.last = now;
  known.lastRight = review.right;
  known.takenFor = withConfusion(known.takenFor, review);
}

/** The chance that the item would be answered right, 0 to 1, at a time of the device's clock; null: never asked. */
export function recall(memory: Memory, item: string, now: number): number | null {
  const known = memory.items.get(item);
  return known ? recallOf(memory, known, now) : null;
}

/** The same of what is known already. */
export function recallOf(memory: Memory, known: Known, now: number): number {
  return recallAfter(known.strength, daysSince(memory, known, now));
}

/** Days since the item was last answered, at a time of the device's clock; never less than 0. */
export function daysSince(memory: Memory, known: Known, now: number): number {
  return Math.max(0, (now + memory.shift - known.last) / DAY);
}

/** The local day a moment belongs to, numbered from 1970; it begins at 04:00, for people who play late. */
export function localDay(at: number, offset: number): number {
  return Math.floor((at + (offset - 240) * 60_000) / DAY);
}

function paceOf({ paces }: Learning, kind: string): LearningPace {
  let pace = paces.get(kind);
  if (!pace) paces.set(kind, (pace = newPace()));
  return pace;
}

/** Keeps the last trials, and at most half as many again. */
function keepTrial(trials: Trial[], known: Known, days: number, right: boolean): void {
  trials.push({ strength: known.strength, days, lastRight: known.lastRight, right });
  if (trials.length >= 1.5 * KEPT) trials.splice(0, trials.length - KEPT);
}

/**
 * Times as they can be believed. Where the clock goes back, whatever lies ahead of it was answered just now; should
 * it later leap forward by as much as it went back, it was set right again and no time has passed in the leap. So a
 * clock that was a year ahead, or a year behind, for a while leaves no year in the memory.
 */
function readClock(memory: Learning, at: number): number {
  let now = at + memory.shift;
  if (now < memory.clock) {
    memory.owed = memory.clock - now;
    for (const known of memory.items.values()) bringBack(known, now);
  } else if (memory.owed > 0 && now - memory.clock >= memory.owed) {
    now -= memory.owed;
    memory.shift -= memory.owed;
    memory.owed = 0;
  }
  memory.clock = now;
  return now;
}

function bringBack(known: LearningKnown, now: number): void {
  known.first = Math.min(known.first, now);
  known.last = Math.min(known.last, now);
  known.imprints = laidBy(known.imprints, now);
}

const noConfusion: ReadonlyMap<string, number> = new Map();

function withConfusion(
  before: ReadonlyMap<string, number>,
  { takenFor }: Review,
): ReadonlyMap<string, number> {
  if (takenFor === null) return before;
  return new Map(before).set(takenFor, (before.get(takenFor) ?? 0) + 1);
}
