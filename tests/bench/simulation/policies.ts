import {
  answerCard,
  isEnough,
  nextCard,
  type Round,
  startRound,
} from '../../../src/practice/round.ts';
import type { Item } from '../../../src/practice/item.ts';
import { daysSince, type Memory } from '../../../src/memory/memory.ts';
import type { Review } from '../../../src/store/review.ts';
import type { Random } from '../../../src/theory/random.ts';
import type { Hidden } from './students.ts';
import { clamp, DAY, normal } from './world.ts';

/** Who decides what is asked. */
export interface Policy {
  /** A sitting begins. */
  begin(now: number): void;
  /** The item to ask, by its position; null ends the sitting. */
  next(now: number): number | null;
  /** It was answered so. */
  answered(item: number, review: Review): void;
}

export interface Setting {
  readonly items: readonly Item[];
  /** The app's own memory of the student, from the log so far. */
  readonly memory: Memory;
  readonly random: Random;
  readonly hidden: Hidden;
  /** When the lesson after a moment is. */
  lessonAfter(now: number): number;
}

export type MakePolicy = (setting: Setting) => Policy;

/** What the app does: its own rounds. */
export const ours: MakePolicy = ({ items, memory, random }) => {
  const place = new Map(items.map(({ id }, k) => [id, k]));
  let round: Round;
  return {
    begin(now) {
      round = startRound({ deck: '', goal: { minutes: 600 }, seed: random.below(2 ** 31), now });
    },
    next(now) {
      const next = nextCard(round, items, memory, now);
      if (!next) return null;
      round = next.round;
      return place.get(next.item.id)!;
    },
    answered(_, { right, takenFor, at }) {
      round = answerCard(round, items, { right, takenFor }, at);
    },
  };
};

/** The same, but a sitting ends when the app says that it is enough for today. */
export const enough: MakePolicy = (setting) => {
  const policy = ours(setting);
  const { items, memory } = setting;
  return {
    ...policy,
    next: (now) => (isEnough(items, memory, now) ? null : policy.next(now)),
  };
};

/**
 * The same with a deck that says how hard each item is, from 1 to 5, in so close a correlation with the truth; 0 is a
 * useless mark.
 */
export const marked =
  (correlation: number): MakePolicy =>
  (setting) => {
    const { hidden, items, random } = setting;
    const deviation = Math.sqrt(
      hidden.hard.reduce((sum, hard) => sum + hard * hard, 0) / items.length,
    );
    const withMarks = items.map((item, k) => {
      const truth = (correlation * hidden.hard[k]!) / deviation;
      const seen = truth + Math.sqrt(1 - correlation ** 2) * normal(random, 0, 1);
      return { ...item, mark: clamp(Math.round(seen / 0.75) + 3, 1, 5) };
    });
    return ours({ ...setting, items: withMarks });
  };

/** Asks the item that comes first, each at most once a sitting until all were asked. */
function byScore(setting: Setting, score: (item: number, now: number) => number): Policy {
  const asked = new Set<number>();
  return {
    begin: () => asked.clear(),
    next(now) {
      if (asked.size === setting.items.length) asked.clear();
      let [best, highest] = [0, -Infinity];
      setting.items.forEach((_, k) => {
        if (asked.has(k)) return;
        const value = score(k, now);
        if (value > highest) [best, highest] = [k, value];
      });
      return best;
    },
    answered: (item) => void asked.add(item),
  };
}

/** Any item. */
export const atRandom: MakePolicy = (setting) => byScore(setting, () => setting.random.next());

/** One after the other, and from the beginning again. */
export const roundRobin: MakePolicy = (setting) => {
  let turn = -1;
  return {
    begin: () => {},
    next: () => (turn = (turn + 1) % setting.items.length),
    answered: () => {},
  };
};

/** Five boxes, asked after 1, 2, 4, 8 and 16 days: a right answer moves on by one, a wrong one back to the first. */
export const boxes: MakePolicy = (setting) => {
  const box = setting.items.map(() => 0);
  const due = setting.items.map(() => Infinity);
  const policy = byScore(setting, (k, now) =>
    due[k]! <= now ? 2e15 - due[k]! : box[k] === 0 ? 1e15 - k : -due[k]!,
  );
  return {
    ...policy,
    answered(k, review) {
      policy.answered(k, review);
      box[k] = review.right ? Math.min(5, box[k]! + 1) : 1;
      // Half a day early, so that practising a little earlier than yesterday does not cost a day.
      due[k] = review.at + (2 ** (box[k]! - 1) - 0.5) * DAY;
    },
  };
};

/** What has been due longest, due when the app's model says .9; then new items; then what will be due soonest. */
export const dueOrder: MakePolicy = (setting) =>
  byScore(setting, (k, now) => {
    const known = setting.memory.items.get(setting.items[k]!.id);
    if (!known) return 1e6 - k;
    const over = daysSince(setting.memory, known, now) - known.strength.stability;
    return over >= 0 ? 2e6 + over : over;
  });

/**
 * Knows the hidden memory, and asks what gains most a second at the next lesson and the one after, as reckoned when
 * the sitting begins.
 */
export const oracle: MakePolicy = (setting) => {
  const { hidden, items, lessonAfter } = setting;
  const cost: Record<string, number> = { spot: 6, place: 12, trace: 11 };
  const gainOf = (k: number, now: number) => {
    const p = hidden.chance(k, now);
    const first = lessonAfter(now);
    let gain = 0;
    for (const then of [first, first + 7 * DAY]) {
      gain += p * hidden.after(k, now, true, then) + (1 - p) * hidden.after(k, now, false, then);
      gain -= hidden.chance(k, then);
    }
    return gain / (cost[items[k]!.kind]! * (1.6 - 0.6 * p));
  };
  let gains: number[] = [];
  const policy = byScore(setting, (k) => gains[k]!);
  return {
    ...policy,
    begin(now) {
      policy.begin(now);
      gains = items.map((_, k) => gainOf(k, now));
    },
  };
};
