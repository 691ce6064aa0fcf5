import { learn, type Memory, emptyMemory } from '../../../src/memory/memory.ts';
import type { Item } from '../../../src/practice/item.ts';
import type { Review } from '../../../src/store/review.ts';
import { type Random, seedAt, seeded } from '../../../src/theory/random.ts';
import type { MakePolicy } from './policies.ts';
import type { Hidden, MakeHidden } from './students.ts';
import { DAY, GUESS, KINDS, lessonAfter, normal, START, WEEKS } from './world.ts';

/** One student under one policy for eight weeks. */
export interface Outcome {
  /** Mean share known at the eight lessons, in percent: of the items of each kind, and the mean of these. */
  readonly byKind: readonly number[];
  readonly known: number;
  /** What the app then remembers of the student, and what was hidden from it. */
  readonly memory: Memory;
  readonly hidden: Hidden;
  /** Minutes spent. */
  readonly minutes: number;
  /** Of the first week: answers, how many were right; misses, and how many of those came back in their own round. */
  readonly firstWeek: {
    readonly asked: number;
    readonly right: number;
    readonly missed: number;
    readonly back: number;
  };
}

export interface Course {
  readonly make: MakeHidden;
  readonly policy: MakePolicy;
  readonly items: readonly Item[];
  readonly minutes: number;
  readonly seed: number;
  readonly spread: number;
  readonly weeks?: number;
  /** The share of days without practice; a third where left out. */
  readonly missing?: number;
  /** Looks on when a day has ended, whether it was practised on or not. */
  readonly watch?: (day: number, hidden: Hidden, memory: Memory) => void;
}

/** Plays the eight weeks: practice on two days of three unless told otherwise, about six in the evening; a lesson every seventh day. */
export function play(course: Course): Outcome {
  const {
    make,
    policy,
    items,
    minutes,
    seed,
    spread,
    weeks = WEEKS,
    missing = 1 / 3,
    watch,
  } = course;
  const hidden = make(items, seeded(seedAt(seed, 1)), spread);
  const days = seeded(seedAt(seed, 2));
  const student = answering(items, hidden, seeded(seedAt(seed, 3)));
  const memory = emptyMemory();
  const choosing = policy({
    items,
    memory,
    hidden,
    random: seeded(seedAt(seed, 4)),
    lessonAfter: (now) => lessonAfter(Math.floor((now - START - 17 * 3_600_000) / DAY / 7 + 1 / 7)),
  });
  const known: number[][] = [];
  const firstWeek = { asked: 0, right: 0, missed: 0, back: 0 };
  let spent = 0;
  for (let day = 0; day < 7 * weeks; day++) {
    const begin = START + day * DAY + Math.round((18 + normal(days, 0, 1)) * 3_600_000);
    const missed = days.next() < missing;
    if (day % 7 === 6) known.push(knownByKind(items, hidden, lessonAfter((day - 6) / 7)));
    if (!missed) {
      const sitting: Review[] = [];
      choosing.begin(begin, minutes);
      let now = begin;
      while (now < begin + minutes * 60_000) {
        const next = choosing.next(now);
        if (next === null) break;
        const { item: k, meet } = next;
        if (meet) {
          now += student.looks(k) * 1000;
          hidden.practise(k, now, false);
          choosing.met(k, now);
          continue;
        }
        const { review, seconds, knew } = student.answers(k, now, memory.asked + 1);
        learn(memory, review);
        hidden.practise(k, review.at, knew);
        choosing.answered(k, review);
        sitting.push(review);
        now += seconds * 1000;
      }
      spent += (now - begin) / 60_000;
      if (day < 7) count(firstWeek, sitting);
    }
    watch?.(day, hidden, memory);
  }
  const byKind = KINDS.map((_, kind) => 100 * mean(known.map((one) => one[kind]!)));
  return { byKind, known: mean(byKind), memory, hidden, minutes: spent, firstWeek };
}

function count(
  week: { asked: number; right: number; missed: number; back: number },
  sitting: readonly Review[],
): void {
  sitting.forEach(({ item, right }, k) => {
    week.asked++;
    if (right) week.right++;
    else {
      week.missed++;
      if (sitting.slice(k + 1).some((later) => later.item === item)) week.back++;
    }
  });
}

function knownByKind(items: readonly Item[], hidden: Hidden, at: number): number[] {
  return KINDS.map((kind) =>
    mean(items.flatMap((item, k) => (item.kind === kind ? [hidden.chance(k, at)] : []))),
  );
}

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

/** How a student answers: known or guessed, taken for what, how fast; and how long they look at what is only shown. */
function answering(items: readonly Item[], hidden: Hidden, random: Random) {
  const speed = Math.exp(normal(random, 0, 0.2));
  const thinking: Record<string, number> = { spot: 3, place: 4, trace: 4 };
  const looking: Record<string, number> = { spot: 4, place: 5, trace: 7 };
  const rival: Record<number, number> = { 1: 6, 6: 1, 2: 4, 4: 2, 3: 5, 5: 3, 7: 5 };
  const looks = (k: number) => speed * looking[items[k]!.kind]!;
  const answers = (k: number, now: number, n: number) => {
    const { id, kind, degree } = items[k]!;
    const chance = hidden.chance(k, now);
    const knew = random.next() < chance;
    const right = knew || random.next() < GUESS[kind]!;
    const taken = random.next() < 0.6 ? rival[degree]! : 1 + ((degree + random.below(6)) % 7);
    const pace = speed * Math.exp(normal(random, 0, 0.35)) * (knew ? 1.5 - 0.6 * chance : 1.7);
    const taps = kind === 'place' ? 3 : 1;
    const sounded = kind === 'trace' ? 4000 : 0;
    const ms = Math.round(1000 * (thinking[kind]! * pace + 0.8 * (taps - 1)) + sounded);
    const timing = { right, ms, sounded, taps, hidden: false };
    const review: Review = {
      ...timing,
      device: 'phone',
      n,
      item: id,
      seed: 0,
      at: now + ms,
      offset: 0,
      takenFor: right || kind !== 'spot' ? null : String(taken),
      // Nothing that is simulated goes by it.
      grade: right ? 3 : 1,
    };
    return { review, knew, seconds: ms / 1000 + (right ? 2 : 5) };
  };
  return { answers, looks };
}
