import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, learn, type Memory } from '../../src/memory/memory.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { knownAfter } from '../../src/practice/ahead.ts';
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
