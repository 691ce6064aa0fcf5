import { answerCard, metCard, nextCard } from '../../../src/practice/next.ts';
import { type Round, startRound } from '../../../src/practice/round.ts';
import type { Item } from '../../../src/practice/item.ts';
import { type Memory, recall } from '../../../src/memory/memory.ts';
import type { Review } from '../../../src/store/review.ts';
import type { Random } from '../../../src/theory/random.ts';
import type { Hidden } from './students.ts';
import { DAY, KINDS } from './world.ts';

/** Who decides what is asked. */
export interface Policy {
  /** A sitting of so many minutes begins. */
  begin(now: number, minutes: number): void;
  /** The item to ask, or to show without asking, by its position; null ends the sitting. */
  next(now: number): { readonly item: number; readonly meet: boolean } | null;
  /** It was answered so, or was shown. */
  answered(item: number, review: Review): void;
  met(item: number, at: number): void;
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

/** What the app does: its own rounds. Where one ends before its time, another is begun for the minutes left. */
export const ours: MakePolicy = ({ items, memory, random, lessonAfter }) => {
  const place = new Map(items.map(({ id }, k) => [id, k]));
  let [round, end]: [Round | undefined, number] = [undefined, 0];
  const start = (now: number, minutes: number) => {
    const seed = random.below(2 ** 31);
    return startRound({ deck: '', goal: { minutes }, seed, now, lesson: lessonAfter(now) });
  };
  return {
    begin(now, minutes) {
      end = now + minutes * 60_000;
      round = start(now, minutes);
    },
    next(now) {
      let next = nextCard(round!, items, memory, now);
      if (!next && end - now > 60_000) {
        round = start(now, (end - now) / 60_000);
        next = nextCard(round, items, memory, now);
      }
      if (!next) return null;
      round = next.round;
      return { item: place.get(next.item.id)!, meet: next.meet };
    },
    answered(_, { right, takenFor, at }) {
      round = answerCard(round!, items, { right, takenFor }, at);
    },
    met(_, at) {
      round = metCard(round!, at);
    },
  };
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
      return { item: best, meet: false };
    },
    answered: (item) => void asked.add(item),
    met: () => {},
  };
}

/** Any item. */
export const atRandom: MakePolicy = (setting) => byScore(setting, () => setting.random.next());

/** One after the other, and from the beginning again. */
export const roundRobin: MakePolicy = (setting) => {
  let turn = -1;
  return {
    begin: () => {},
    next: () => ({ item: (turn = (turn + 1) % setting.items.length), meet: false }),
    answered: () => {},
    met: () => {},
  };
};

/** The same, but what is new is shown, and asked two cards later: as ours does it. */
export const roundRobinShown: MakePolicy = (setting) => {
  const seen = new Set<number>();
  let [turn, step] = [-1, 0];
  const owed: { item: number; from: number }[] = [];
  return {
    begin: () => {},
    next() {
      step++;
      if (owed[0] && owed[0].from <= step) return { item: owed.shift()!.item, meet: false };
      const item = (turn = (turn + 1) % setting.items.length);
      const meet = !seen.has(item);
      return { item, meet };
    },
    answered: () => {},
    met(item) {
      seen.add(item);
      owed.push({ item, from: step + 2 });
    },
  };
};

/** The kinds by turns, and of each one item after the other: what balanced asking brings each kind. */
export const roundRobinOverKinds: MakePolicy = ({ items }) => {
  const kinds = KINDS.map((kind) => items.flatMap((item, k) => (item.kind === kind ? [k] : [])));
  let turn = -1;
  return {
    begin: () => {},
    next() {
      turn++;
      const kind = kinds[turn % kinds.length]!;
      return { item: kind[Math.floor(turn / kinds.length) % kind.length]!, meet: false };
    },
    answered: () => {},
    met: () => {},
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

/** What is least known of what has fallen below .9, as the app reckons; then new items; then what is least known. */
export const dueOrder: MakePolicy = ({ memory, ...setting }) =>
  byScore({ memory, ...setting }, (k, now) => {
    const known = recall(memory, setting.items[k]!.id, now);
    if (known === null) return 1e6 - k;
    return known < 0.9 ? 2e6 - known : -known;
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
    begin(now, minutes) {
      policy.begin(now, minutes);
      gains = items.map((_, k) => gainOf(k, now));
    },
  };
};
