import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, learn, type Memory } from '../../src/memory/memory.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { knownAfter } from '../../src/practice/ahead.ts';
import type { Item } from '../../src/practice/item.ts';
import { readiness } from '../../src/practice/readiness.ts';
import { reviewOf } from '../memory/reviews.ts';

const START = Date.UTC(2026, 10, 2, 18);
const LESSON = START + 6 * DAY;
const items = itemsOf({
  title: '',
  note: '',
  lessonDay: null,
  phrases: [],
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' },
  drills: [
    {
      kind: 'spot',
      degrees: [1, 2, 3, 4, 5, 6, 7],
      sizes: ['triad'],
      strings: [
        [5, 4],
        [4, 3],
      ],
      frets: [1, 8],
    },
  ],
});

/** What is known at the lesson after a round of so many minutes on each of so many days, the first of them tomorrow. */
function ahead(memory: Memory, minutes: number, days: number): number {
  const sittings = Array.from({ length: days }, (_, day) => START + (day + 1) * DAY);
  const round = { goal: { minutes }, lesson: LESSON };
  const playing = knownAfter(items, memory, { askable: items, sittings, round, offset: 0 }, LESSON);
  for (let rounds = 0; ; rounds++) {
    const { done, value } = playing.next();
    if (!done) continue;
    expect(rounds).toBe(days);
    return value;
  }
}

/** Someone who answered every item once today. */
function student(right: boolean): Memory {
  const memory = emptyMemory();
  items.forEach(({ id }, k) =>
    learn(memory, reviewOf({ item: id, at: START + k * 10_000, right })),
  );
  return memory;
}

/** Someone who met so many other things, of another kind, and was right so often at once. */
function beginner(firsts: number, firstsRight: number): Memory {
  const memory = emptyMemory();
  for (let k = 0; k < firsts; k++) {
    const item = `trace:Bb major:${1 + (k % 7)}:triad:guitar:up:${60 + k}`;
    learn(memory, reviewOf({ item, at: START + k * 10_000, right: k < firstsRight }));
  }
  return memory;
}

/** Of some items what is known at the lesson after a round of so many cards tomorrow. */
function afterCards(memory: Memory, some: readonly Item[], cards: number): number {
  const plan = { askable: some, sittings: [START + DAY], offset: 0 };
  const round = { goal: { cards }, lesson: LESSON };
  const playing = knownAfter(some, memory, { ...plan, round }, LESSON);
  for (let next = playing.next(); ; next = playing.next()) if (next.done) return next.value;
}

/** The same where each was answered so many seconds into that round, right or wrong. */
function afterAnswers(memory: Memory, some: readonly Item[], answers: [number, boolean][]): number {
  const copy = structuredClone(memory);
  answers.forEach(([seconds, right], k) => {
    const at = START + DAY + 1000 * seconds;
    learn(copy, reviewOf({ item: some[k]!.id, at, right }));
  });
  return readiness(some, copy, LESSON).overall;
}

describe('a round that is played through', () => {
  // What is new is looked at for 5 s and answered in 6 where that is right, in 10 where it is wrong; at first seven in
  // ten are right, and ten such count beside the student's own first answers.
  it.each([
    ['at first it is right', 0, 0, [[11, true]]],
    ['of 6 own first answers none: 7 of 16 are to be expected', 6, 0, [[15, false]]],
    ['of 4 none: 7 of 14, and a half is enough', 4, 0, [[11, true]]],
    ['of 5 one: 8 of 15', 5, 1, [[11, true]]],
    ['of 7 one: 8 of 17', 7, 1, [[15, false]]],
  ] as [string, number, number, [number, boolean][]][])(
    'asks what it has shown: %s',
    (_, firsts, firstsRight, answers) => {
      const memory = beginner(firsts, firstsRight);
      const some = items.slice(0, 1);
      expect(afterCards(memory, some, 1)).toBeCloseTo(afterAnswers(memory, some, answers), 12);
    },
  );

  it('shows two before it asks them, with a glance at the first verdict', () => {
    const memory = emptyMemory();
    const some = items.slice(0, 2);
    // Shown until 5 and 10 s; right at 16, looked at until 18; 1.4 of two are to be expected, so the other at 28 is wrong.
    const answers: [number, boolean][] = [
      [16, true],
      [28, false],
    ];
    expect(afterCards(memory, some, 2)).toBeCloseTo(afterAnswers(memory, some, answers), 12);
  });

  it('takes time to read after a wrong one', () => {
    const memory = beginner(9, 0);
    const some = items.slice(0, 2);
    // 7 of 19 are to be expected: the first, at 20 s, is wrong and read until 25; the second, at 31, is right.
    const answers: [number, boolean][] = [
      [20, false],
      [31, true],
    ];
    expect(afterCards(memory, some, 2)).toBeCloseTo(afterAnswers(memory, some, answers), 12);
  });
});

describe('what practice to come would bring', () => {
  it('is what will be known anyway where none comes', () => {
    const memory = student(true);
    expect(ahead(memory, 5, 0)).toBeCloseTo(readiness(items, memory, LESSON).overall, 10);
  });

  it('is more than without, and with more days or minutes of it more again', () => {
    const memory = student(true);
    const without = readiness(items, memory, LESSON).overall;
    expect(ahead(memory, 3, 1)).toBeGreaterThan(without);
    expect(ahead(memory, 6, 5)).toBeGreaterThan(ahead(memory, 3, 1));
  });

  it('is less for who missed everything than for who knew it', () => {
    expect(ahead(student(false), 4, 3)).toBeLessThan(ahead(student(true), 4, 3));
  });

  it('promises little to who only guesses', () => {
    const memory = emptyMemory();
    for (let k = 0; k < 120; k++) {
      const at = START + (Math.floor(k / 40) - 2) * DAY + k * 10_000;
      learn(memory, reviewOf({ item: items[(k * 3) % items.length]!.id, at, right: k % 7 === 0 }));
    }
    expect(ahead(memory, 6, 5)).toBeLessThan(0.3);
  });

  it('is the same whenever it is asked, and changes nothing of what is remembered', () => {
    const memory = student(true);
    const before = structuredClone(memory);
    expect(ahead(memory, 4, 3)).toBe(ahead(memory, 4, 3));
    expect(memory).toEqual(before);
  });
});
