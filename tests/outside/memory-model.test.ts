import fc from 'fast-check';
import { FSRSAlgorithm, type Grade as LibraryGrade } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { recallAfter, strengthAfter, type Grade, type Strength } from '../../src/memory/model.ts';

describe('the model of memory', () => {
  it('agrees with the library’s own public tests: grades 1 3 3 3 3 3 at gaps of 0 0 1 3 8 21 days', () => {
    const grades: Grade[] = [1, 3, 3, 3, 3, 3];
    const gaps = [0, 0, 1, 3, 8, 21];
    let strength: Strength | null = null;
    grades.forEach((grade, i) => (strength = strengthAfter(strength, gaps[i]!, grade)));
    // The published figure was computed in single precision: seven digits of it stand.
    expect(Math.abs(strength!.stability - 53.335106)).toBeLessThan(1e-4);
    expect(strength!.difficulty).toBeCloseTo(6.3574867, 6);
  });

  it('begins with the published difficulties', () => {
    const first = ([1, 2, 3] as const).map((grade) => strengthAfter(null, 0, grade).difficulty);
    expect(first[0]).toBeCloseTo(6.4133, 4);
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

  it('gives what the library gives over any history', () => {
    const library = new FSRSAlgorithm({ enable_fuzz: false, enable_short_term: false });
    const history = fc.array(
      fc.record({
        grade: fc.constantFrom<Grade>(1, 2, 3),
        days: fc.double({ min: 0, max: 400, noNaN: true }),
      }),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(history, (answers) => {
        let ours: Strength | null = null;
        let theirs: { stability: number; difficulty: number } | null = null;
        for (const { grade, days } of answers) {
          ours = strengthAfter(ours, days, grade);
          theirs = library.next_state(theirs, days, grade as LibraryGrade);
          expect(ours.stability).toBeCloseTo(theirs.stability, 8);
          expect(recallAfter(ours, days)).toBeCloseTo(
            library.forgetting_curve(days, theirs.stability),
            8,
          );
        }
      }),
    );
  });

  it('refuses what the library would take: days below 0 or no number, grades between', () => {
    const some = strengthAfter(null, 0, 3);
    expect(() => strengthAfter(some, -1, 3)).toThrow(RangeError);
    expect(() => strengthAfter(some, Number.NaN, 3)).toThrow(RangeError);
    expect(() => strengthAfter(some, 1, 2.5 as Grade)).toThrow(RangeError);
    expect(() => recallAfter(some, Number.NaN)).toThrow(RangeError);
    expect('scheduler' in Date.prototype).toBe(false);
  });
});
