/** What a student’s report tells: from what is remembered to the facts of a report. */
import { isConfusing, isKindOf, type KindName } from '../decks/kinds.ts';
import { MOST_TOLD, type ItemFacts, type Report } from '../decks/report.ts';
import { DAY, localDay } from '../memory/day.ts';
import { type Memory, recallOf } from '../memory/memory.ts';
import type { Review, Reviews } from '../store/review.ts';
import { degreeAnswered } from './degreeAnswered.ts';
import type { Item } from './item.ts';
import { usualSeconds } from './shares.ts';
import { timeTold, type PlayedMinute, type Timings } from './timeTold.ts';

/** Of the last so many answers to an item its misses are told. */
const LATELY = 3;

/** Days with or without practice that a report tells of. */
const DAYS = 28;

/** What the student's device knows of a lesson. */
export interface LessonKnowledge {
  readonly items: readonly Item[];
  readonly memory: Memory;
  /** The whole log in its order. */
  readonly reviews: Reviews;
  /** Items that the student wants to ask about, by id. */
  readonly questions: readonly string[];
  /** What the phone keeps of figures and of free minutes on this lesson, the oldest first. */
  readonly timings: Timings;
  readonly minutes: readonly PlayedMinute[];
  /** When the lesson is, ms; null where its day is not known or past: then a week from now is told of. */
  readonly lesson: number | null;
}

/** What the student adds, and whose report it is on what. */
type Sent = Pick<Report, 'deck' | 'sender' | 'question' | 'name'>;

/**
 * The report of a lesson at a moment.
 *
 * @param now ms since 1970; `offset` the local clock's offset from UTC, minutes
 */
export function reportOf(told: LessonKnowledge, sent: Sent, now: number, offset: number): Report {
  const { memory, questions } = told;
  const items = told.items.slice(0, MOST_TOLD.items);
  const day = localDay(now, offset);
  const minutes = Math.floor((now + offset * 60_000) / 60_000) - 240;
  const known = items.flatMap(({ id }) => memory.items.get(id) ?? []);
  const total = (of: 'asked' | 'firsts' | 'firstsRight') =>
    Math.min(
      MOST_TOLD.count,
      known.reduce((sum, one) => sum + one[of], 0),
    );
  const last = lastAnswers(items, told.reviews);
  const lesson = told.lesson ?? now + 7 * DAY;
  return {
    ...sent,
    day,
    minute: minutes - day * 1440,
    practised: Array.from({ length: DAYS }, (_, i) => memory.days.has(day - DAYS + 1 + i)),
    asked: total('asked'),
    firstAsked: total('firsts'),
    firstRight: total('firstsRight'),
    seconds: secondsByKind(items, memory),
    time: timeTold(items, told.reviews, told, now),
    items: items.map((item) => factsOf(item, last.get(item.id) ?? [], memory, lesson)),
    askedAbout: items
      .flatMap(({ id }, place) => (questions.includes(id) ? [place] : []))
      .slice(0, MOST_TOLD.askedAbout),
  };
}

function factsOf(
  item: Item,
  last: readonly Review[],
  memory: Memory,
  lesson: number,
): ItemFacts | null {
  const known = memory.items.get(item.id);
  if (!known) return null;
  const wrong = last.filter(({ right }) => !right);
  return {
    recall: recallOf(memory, known, lesson, item.mark),
    ease: known.ease.mean,
    answers: known.asked,
    slow: wrong.length === 0 && last.at(-1)?.grade === 2,
    misses: wrong.length,
    takenFor: isConfusing(item.kind) ? mostTakenFor(item, wrong) : null,
  };
}

/** The last few answers to each item, in their order. */
function lastAnswers(items: readonly Item[], reviews: Reviews): Map<string, Review[]> {
  const last = new Map<string, Review[]>(items.map(({ id }) => [id, []]));
  for (const review of reviews) {
    const some = last.get(review.item);
    if (!some) continue;
    some.push(review);
    if (some.length > LATELY) some.shift();
  }
  return last;
}

/** The degree that an item was taken for more often than for any other; null where there is none. */
function mostTakenFor(item: Item, wrong: readonly Review[]): number | null {
  const times = new Map<number, number>();
  for (const { takenFor } of wrong) {
    const degree = takenFor === null ? null : degreeAnswered(takenFor, item.size);
    if (degree === null || degree === item.degree || !(degree >= 1 && degree <= 7)) continue;
    times.set(degree, (times.get(degree) ?? 0) + 1);
  }
  const [first, second] = [...times].toSorted((a, b) => b[1] - a[1]);
  return first && first[1] > (second?.[1] ?? 0) ? first[0] : null;
}

function secondsByKind(items: readonly Item[], memory: Memory): Report['seconds'] {
  // How soon someone begins to tap is no pace.
  const kinds = [...new Set(items.map(({ kind }) => kind))].filter(
    (kind) => !isKindOf('time', kind),
  );
  return Object.fromEntries(
    kinds.flatMap((kind): [KindName, number][] => {
      const pace = memory.paces.get(kind);
      const seconds = pace ? usualSeconds(pace) : null;
      return seconds === null ? [] : [[kind, seconds]];
    }),
  );
}
