import fc from 'fast-check';
import { createEmptyCard, fsrs, generatorParameters } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { type Grade, recallAfter, type Strength, strengthAfter } from '../../src/memory/model.ts';

/** The strengths after one answer after the other: grades and gaps in days. */
function along(history: readonly (readonly [Grade, number])[]): Strength[] {
  const strengths: Strength[] = [];
  for (const [grade, days] of history) {
    strengths.push(strengthAfter(strengths.at(-1) ?? null, days, grade));
  }
  return strengths;
}

describe('the model of memory against published figures', () => {
  // From the public tests of ts-fsrs (github.com/open-spaced-repetition/ts-fsrs).
  it('holds the reference history: grades 1 3 3 3 3 3 at gaps of 0 0 1 3 8 21 days', () => {
    const [grades, gaps] = [[1, 3, 3, 3, 3, 3] as const, [0, 0, 1, 3, 8, 21]];
    const { stability, difficulty } = along(grades.map((grade, k) => [grade, gaps[k]!])).at(-1)!;
    // The published figure was computed in single precision: seven digits of it stand.
    expect(Math.abs(stability - 53.335106)).toBeLessThan(1e-4);
    expect(difficulty).toBeCloseTo(6.3574867, 6);
  });

  it('begins with the published difficulties', () => {
    const first = ([1, 2, 3] as const).map((grade) => strengthAfter(null, 0, grade).difficulty);
    expect(first[0]).toBeCloseTo(6.4133, 6);
    expect(first[1]).toBeCloseTo(5.11217071, 6);
    expect(first[2]).toBeCloseTo(2.11810397, 6);
  });

  it('fades as published: recall at 0, 1, 2, 3 days of stability 1', () => {
    const recall = [0, 1, 2, 3].map((days) => recallAfter({ stability: 1, difficulty: 5 }, days));
    expect(recall[0]).toBe(1);
    expect(recall[1]).toBeCloseTo(0.9, 8);
    expect(recall[2]).toBeCloseTo(0.84588465, 6);
    expect(recall[3]).toBeCloseTo(0.8093881, 6);
  });
});

describe('the model of memory against the library ts-fsrs', () => {
  const library = fsrs(generatorParameters({ enable_fuzz: false, enable_short_term: false }));
  const anyGrade = fc.constantFrom<Grade>(1, 2, 3);

  it('goes the same way over any history', () => {
    const anyGap = fc.oneof(
      fc.double({ min: 0, max: 0.1, noNaN: true }),
      fc.double({ min: 0, max: 400, noNaN: true }),
    );
    const anyHistory = fc.array(fc.tuple(anyGrade, anyGap), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(anyHistory, (history) => {
        let theirs: { stability: number; difficulty: number } | null = null;
        along(history).forEach((ours, k) => {
          const [grade, days] = history[k]!;
          theirs = library.next_state(theirs, days, grade);
          // The library rounds to eight places at every step, of stabilities from .001 up.
          expect(Math.abs(Math.log(ours.stability / theirs.stability))).toBeLessThan(2e-5);
          expect(Math.abs(ours.difficulty - theirs.difficulty)).toBeLessThan(1e-7);
          const recall = library.forgetting_curve(days, theirs.stability);
          expect(Math.abs(recallAfter(ours, days) - recall)).toBeLessThan(2e-6);
        });
      }),
      { numRuns: 1000 },
    );
  });

  it('comes on whole days to what the library’s calendar of cards comes to', () => {
    const anyDays = fc.array(fc.tuple(anyGrade, fc.integer({ min: 1, max: 90 })), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(anyDays, (history) => {
        let card = createEmptyCard(new Date(0));
        let day = 0;
        for (const [grade, gap] of history) {
          day += gap;
          card = library.next(card, new Date(day * 86_400_000), grade as never).card;
        }
        const { stability, difficulty } = along(history).at(-1)!;
        expect(difficulty).toBeCloseTo(card.difficulty, 5);
        expect(Math.abs(Math.log(stability / card.stability))).toBeLessThan(1e-4);
      }),
    );
  });
});

describe('the model of memory', () => {
  it('refuses days below 0 or no number, grades between, and what is no strength', () => {
    const some = strengthAfter(null, 0, 3);
    expect(() => strengthAfter(some, -1, 3)).toThrow(RangeError);
    expect(() => strengthAfter(some, Number.NaN, 3)).toThrow(RangeError);
    expect(() => strengthAfter(some, 1, 2.5 as Grade)).toThrow(RangeError);
    expect(() => strengthAfter({ ...some, stability: 0 }, 1, 3)).toThrow(RangeError);
    expect(() => recallAfter(some, Number.NaN)).toThrow(RangeError);
    expect(() => recallAfter({ ...some, difficulty: 11 }, 1)).toThrow(RangeError);
  });

  it('keeps every strength within bounds, however long and badly it goes', () => {
    const wild = fc.array(
      fc.tuple(
        fc.constantFrom<Grade>(1, 2, 3),
        fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1e9, noNaN: true })),
      ),
      { minLength: 1, maxLength: 200 },
    );
    fc.assert(
      fc.property(wild, (history) => {
        for (const { stability, difficulty } of along(history)) {
          expect(stability).toBeGreaterThanOrEqual(0.001);
          expect(stability).toBeLessThanOrEqual(36_500);
          expect(difficulty).toBeGreaterThanOrEqual(1);
          expect(difficulty).toBeLessThanOrEqual(10);
        }
      }),
    );
  });
});
