import { learn, type Memory, emptyMemory } from '../../../src/memory/memory.ts';
import { gradeOf } from '../../../src/practice/grade.ts';
import type { Item } from '../../../src/practice/item.ts';
import type { Review } from '../../../src/store/review.ts';
import { type Random, seedAt, seeded } from '../../../src/theory/random.ts';
import type { MakePolicy } from './policies.ts';
import type { Hidden, MakeHidden } from './students.ts';
import { DAY, GUESS, lessonAfter, normal, START, WEEKS } from './world.ts';

/** One student under one policy for eight weeks. */
export interface Outcome {
  /** Mean share of items known at the eight lessons, in percent. */
  readonly known: number;
  /** What the app then remembers of the student. */
  readonly memory: Memory;
  /** Minutes spent. */
  readonly minutes: number;
}

export interface Course {
  readonly make: MakeHidden;
  readonly policy: MakePolicy;
  readonly items: readonly Item[];
  readonly minutes: number;
  readonly seed: number;
  readonly spread: number;
}

/** Plays the eight weeks: practice on two days of three, about six in the evening; a lesson every seventh day. */
export function play({ make, policy, items, minutes, seed, spread }: Course): Outcome {
  const hidden = make(items, seeded(seedAt(seed, 1)), spread);
  const days = seeded(seedAt(seed, 2));
  const answers = answering(items, hidden, seeded(seedAt(seed, 3)));
  const memory = emptyMemory();
  const choosing = policy({
    items,
    memory,
    hidden,
    random: seeded(seedAt(seed, 4)),
    lessonAfter: (now) => lessonAfter(Math.floor((now - START - 17 * 3_600_000) / DAY / 7 + 1 / 7)),
  });
  const known: number[] = [];
  let spent = 0;
  for (let day = 0; day < 7 * WEEKS; day++) {
    const begin = START + day * DAY + Math.round((18 + normal(days, 0, 1)) * 3_600_000);
    const missed = days.next() < 1 / 3;
    if (day % 7 === 6) {
      const at = lessonAfter((day - 6) / 7);
      known.push(items.reduce((sum, _, k) => sum + hidden.chance(k, at), 0) / items.length);
    }
    if (missed) continue;
    choosing.begin(begin);
    let now = begin;
    while (now < begin + minutes * 60_000) {
      const k = choosing.next(now);
      if (k === null) break;
      const { review, seconds, knew } = answers(k, now, memory, memory.asked + 1);
      learn(memory, review);
      hidden.practise(k, review.at, knew);
      choosing.answered(k, review);
      now += seconds * 1000;
    }
    spent += (now - begin) / 60_000;
  }
  return { known: (100 * known.reduce((a, b) => a + b)) / known.length, memory, minutes: spent };
}

/** How a student answers: known or guessed, taken for what, how fast. */
function answering(items: readonly Item[], hidden: Hidden, random: Random) {
  const speed = Math.exp(normal(random, 0, 0.2));
  const thinking: Record<string, number> = { spot: 3, place: 4, trace: 4 };
  const rival: Record<number, number> = { 1: 6, 6: 1, 2: 4, 4: 2, 3: 5, 5: 3, 7: 5 };
  return (k: number, now: number, memory: Memory, n: number) => {
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
      grade: gradeOf(timing, memory.paces.get(kind)),
    };
    return { review, knew, seconds: ms / 1000 + (right ? 2 : 5) };
  };
}
