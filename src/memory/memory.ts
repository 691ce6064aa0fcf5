import { kindOf } from '../decks/id.ts';
import { guessOf } from '../decks/kinds.ts';
import type { Review, Reviews } from '../store/review.ts';
import { DAY, localDay } from './day.ts';
import {
  APART,
  type ItemMoment,
  foretold,
  lean,
  type Leanings,
  type LearningLeanings,
  noLeanings,
} from './forgetting.ts';
import {
  activation,
  easeOf,
  type Estimate,
  GENERAL,
  imprint,
  type Imprints,
  laidBy,
  type LearningEstimate,
  levelAt,
  OWN,
  NEVER_SHOWN,
  updateEstimates,
} from './imprint.ts';
import { keepTrial, type Trial } from './trials.ts';
import { learnPace, type LearningPace, newPace, type Pace } from './pace.ts';

/** What is known of one item, from its reviews alone. */
export interface Known {
  /** The kind of card. */
  readonly kind: string;
  readonly asked: number;
  readonly right: number;
  /** Answers that were the first on a day, half a day or more after the one before, and how many of those were right. */
  readonly firsts: number;
  readonly firstsRight: number;
  /** When it was first and last answered, ms, on the memory's own clock (see `Memory.clock`). */
  readonly first: number;
  readonly last: number;
  readonly lastRight: boolean;
  /** Right answers in a row, each on another day than the one before; of more on one day one counts. */
  readonly row: number;
  /** What its askings have left, and how easily it comes (see imprint.ts). */
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
  /** The last answers given half a day or more after the one before, and what had been foretold. */
  readonly trials: readonly Trial[];
  /** How easily things come to this student. */
  readonly ease: Estimate;
  /** How this student forgets. */
  readonly leanings: Leanings;
  /** Local days practised, from 04:00 to 04:00, numbered from 1 January 1970. */
  readonly days: ReadonlySet<number>;
  /** When the last answer was given: ms since 1970, as `readClock` says. */
  readonly clock: number;
  /** Ms to add to the device's time, and how far the device's clock was last set back. */
  readonly shift: number;
  readonly owed: number;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
interface Learning extends Mutable<
  Omit<Memory, 'items' | 'paces' | 'trials' | 'days' | 'ease' | 'leanings'>
> {
  readonly ease: LearningEstimate;
  readonly leanings: LearningLeanings;
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
    leanings: noLeanings(),
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
  const before = learning.clock;
  const now = readClock(learning, review.at);
  let known = learning.items.get(review.item);
  learning.asked++;
  learning.days.add(localDay(review.at, review.offset));
  if (known) {
    again(learning, known, review, before);
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
    firsts: 1,
    firstsRight: review.right ? 1 : 0,
    first: now,
    last: now,
    lastRight: review.right,
    row: review.right ? 1 : 0,
    imprints: [],
    ease: { ...OWN },
    takenFor: withConfusion(noConfusion, review),
  };
  imprint(known.imprints, now, NEVER_SHOWN, review.right);
  return known;
}

/** One more answer to an item that is known already; `before`, the clock at the student's last answer. */
function again(learning: Learning, known: LearningKnown, review: Review, before: number): void {
  const now = learning.clock;
  const days = Math.max(0, (now - known.last) / DAY);
  const active = activation(known.imprints, now);
  const guess = guessOf(known.kind);
  const facts = factsOf(learning, known, active, now, before);
  if (days >= APART) {
    const chance = foretold(learning.leanings, facts);
    keepTrial(learning.trials, { foretold: guess + (1 - guess) * chance, right: review.right });
    known.firsts++;
    if (review.right) known.firstsRight++;
    if (review.right) known.row++;
  }
  if (!review.right) known.row = 0;
  lean(learning.leanings, facts, review.right, guess);
  updateEstimates(learning.ease, known.ease, active, review.right, guess);
  imprint(known.imprints, now, active, review.right);
  known.asked++;
  if (review.right) known.right++;
  known.last = now;
  known.lastRight = review.right;
  known.takenFor = withConfusion(known.takenFor, review);
}

/**
 * The chance, 0 to 1, that an item is known at a time of the device's clock, no guess counted, if it is not asked until
 * then; null for one never asked. One never answered right is no likelier to be known than to be guessed.
 *
 * @param mark how hard the deck says the item is, 1 (easiest) to 5
 */
export function recall(memory: Memory, item: string, at: number, mark?: number): number | null {
  const known = memory.items.get(item);
  return known ? recallOf(memory, known, at, mark) : null;
}

/** The same of what was asked already. */
export function recallOf(memory: Memory, known: Known, at: number, mark?: number): number {
  const chance = chanceOf(memory, known, at, mark);
  return known.right > 0 ? chance : Math.min(chance, guessOf(known.kind));
}

/** The chance that the model alone gives it, which rises by every showing though it was never answered right. */
export function chanceOf(memory: Memory, known: Known, at: number, mark?: number): number {
  const now = at + memory.shift;
  const active = activation(known.imprints, now);
  const facts = factsOf(memory, known, active, now, memory.clock, mark);
  return foretold(memory.leanings, facts);
}

/** What is to be foretold from, at a time of the memory's clock; `idleFrom`, when anything was last answered. */
function factsOf(
  { ease }: Pick<Memory, 'ease'>,
  known: Known,
  active: number,
  now: number,
  idleFrom: number,
  mark?: number,
): ItemMoment {
  const { lastRight, row, firsts, firstsRight } = known;
  const level = levelAt(active, easeOf(ease, known.ease, mark), ease, known.ease);
  const days = Math.max(0, (now - known.last) / DAY);
  const idle = Math.max(0, (now - idleFrom) / DAY);
  return { level, days, idle, lastRight, row, firsts, firstsRight };
}

function paceOf({ paces }: Learning, kind: string): LearningPace {
  let pace = paces.get(kind);
  if (!pace) paces.set(kind, (pace = newPace()));
  return pace;
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
