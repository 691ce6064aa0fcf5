import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import type { Drill, NeckDrill } from '../../src/decks/deck.ts';
import { learn, emptyMemory, type Memory } from '../../src/memory/memory.ts';
import { DAY } from '../../src/memory/day.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import type { Item } from '../../src/practice/item.ts';
import { secondsACard } from '../../src/practice/expectedGain.ts';
import { answerCard, metCard, nextCard } from '../../src/practice/next.ts';
import { startRound } from '../../src/practice/round.ts';
import { minutesADay } from '../../src/practice/untilReady.ts';
import { daysUntilKnown } from '../../src/practice/daysUntilKnown.ts';
import { seeded } from '../../src/theory/random.ts';
import { type Hidden, powerLaw } from '../bench/simulation/students.ts';
import { reviewOf } from '../memory/reviews.ts';

const chords = { degrees: [1, 2, 3, 4, 5, 6, 7], sizes: ['triad'] } as const;

function on(kind: NeckDrill['kind'], sets: string, some: Partial<NeckDrill> = {}): Drill {
  const strings = sets.split(' ').map((set) => set.split('-').map(Number));
  return { kind, ...chords, strings, frets: [1, 8], ...some };
}

function items(...drills: Drill[]): Item[] {
  const key = { tonic: 'Bb', scale: 'major' } as const;
  const rest = { title: '', note: '', lessonDay: null, phrases: [] };
  return itemsOf({ ...rest, instrument: GUITAR, key, drills });
}

const SMALL = items(on('spot', '5-4 4-3'));
const PLAIN = items(on('spot', '5-4 4-3'), on('place', '5-4 4-3'), {
  kind: 'trace',
  ...chords,
  contours: ['up', 'down', 'turn', 'skip'],
  tempo: 72,
});
const LARGE = items(
  on('spot', '6-5 5-4 4-3 3-2 2-1', { sizes: ['triad', 'seventh'], frets: [1, 12] }),
  on('place', '6-5 5-4 4-3', { frets: [1, 12] }),
);

/** One round at six in the evening, by a student who forgets by a power law. */
function practise(
  some: readonly Item[],
  memory: Memory,
  hidden: Hidden,
  day: number,
  minutes: number,
) {
  const chance = seeded(day);
  const seconds = secondsACard(some, emptyMemory());
  let now = day * DAY + 18 * 3_600_000;
  let round = startRound({ deck: 'd', goal: { minutes }, seed: day, now });
  for (let next; (next = nextCard(round, some, memory, now));) {
    const place = some.indexOf(next.item);
    now += seconds * 1000;
    if (next.meet) {
      round = metCard(next.round, now);
      hidden.practise(place, now, false);
      continue;
    }
    const right = chance.next() < hidden.chance(place, now);
    round = answerCard(next.round, some, { right, takenFor: null }, now);
    const answered = { item: next.item.id, seed: next.seed, right, grade: right ? 3 : 1 } as const;
    learn(memory, reviewOf({ ...answered, at: now, ms: (seconds - 3) * 1000 }));
    hidden.practise(place, now, right);
  }
}

/** On which day of practice so much would be known a week ahead, on the mean of three students. */
function dayKnown(some: readonly Item[], minutes: number): number {
  const days = [1, 2, 3].map((seed) => {
    const memory = emptyMemory();
    const hidden = powerLaw(some, seeded(seed), 0.5);
    for (let day = 1; day < 60; day++) {
      practise(some, memory, hidden, day, minutes);
      const then = (day + 7.75) * DAY;
      const sum = some.reduce((total, _, k) => total + hidden.chance(k, then), 0);
      if (sum / some.length >= 0.85) return day;
    }
    return Infinity;
  });
  return days.reduce((sum, day) => sum + day, 0) / days.length;
}

describe('days until a deck is known', () => {
  it.each([
    ['small', SMALL],
    ['plain', PLAIN],
    ['large', LARGE],
  ])('are near those that a %s one takes in rounds of eight minutes', (_name, some) => {
    const told = daysUntilKnown(some, emptyMemory(), 0, 8);

    const taken = dayKnown(some, 8);
    expect(told / taken).toBeGreaterThan(2 / 3);
    expect(told / taken).toBeLessThan(4 / 3);
  });

  it('are fewer with more minutes a day, but never fewer than five for what is new', () => {
    const days = [4, 8, 16, 600].map((minutes) => daysUntilKnown(LARGE, emptyMemory(), 0, minutes));
    expect(days).toEqual(days.toSorted((a, b) => b - a));
    expect(new Set(days).size).toBe(4);
    expect(days.at(-1)).toBe(5);
  });

  it('are none where nothing is to do', () => {
    expect(daysUntilKnown([], emptyMemory(), 0, 8)).toBe(0);
    const memory = emptyMemory();
    for (const { id } of SMALL)
      for (const day of [0, 1, 3, 7, 14, 28, 56])
        learn(memory, reviewOf({ item: id, at: day * DAY }));
    expect(daysUntilKnown(SMALL, memory, 56 * DAY, 8)).toBe(0);
    expect(minutesADay(SMALL, memory, 56 * DAY, null)).toBe(0);
  });
});

describe('minutes a day', () => {
  it('grow with the items and fall with the days that are left', () => {
    const week = minutesADay(PLAIN, emptyMemory(), 0, null);
    expect(minutesADay(SMALL, emptyMemory(), 0, null)).toBeLessThan(week);
    expect(minutesADay(PLAIN, emptyMemory(), 0, 14 * DAY)).toBeLessThan(week);
    expect(minutesADay(PLAIN, emptyMemory(), 0, 2 * DAY)).toBeGreaterThan(week);
  });
});
