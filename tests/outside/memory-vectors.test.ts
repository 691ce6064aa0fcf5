import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { createEmptyCard, fsrs, generatorParameters } from 'ts-fsrs';
import { type Grade, recallAfter, type Strength, strengthAfter } from '../../src/memory/model.ts';

/** Grades and gaps in days, one after the other. */
function after(history: readonly (readonly [Grade, number])[]): Strength {
  let strength: Strength | null = null;
  for (const [grade, days] of history) strength = strengthAfter(strength, days, grade);
  return strength!;
}

describe('the model against published figures', () => {
  // From the public tests of ts-fsrs (github.com/open-spaced-repetition/ts-fsrs).
  it('holds the reference history: stability 53.335106, difficulty 6.3574867', () => {
    const [grades, gaps] = [[1, 3, 3, 3, 3, 3] as const, [0, 0, 1, 3, 8, 21]];
    const { stability, difficulty } = after(grades.map((grade, k) => [grade, gaps[k]!]));
    expect(stability).toBeCloseTo(53.335106, 4);
    expect(difficulty).toBeCloseTo(6.3574867, 4);
  });

  it('begins with the published difficulties', () => {
    const difficulties = ([1, 2, 3] as const).map((grade) => after([[grade, 0]]).difficulty);
    [6.4133, 5.11217071, 2.11810397].forEach((figure, k) =>
      expect(difficulties[k]).toBeCloseTo(figure, 6),
    );
  });

  it('forgets along the published curve', () => {
    const figures = [1, 0.9, 0.84588465, 0.8093881];
    figures.forEach((figure, days) =>
      expect(recallAfter({ stability: 1, difficulty: 5 }, days)).toBeCloseTo(figure, 6),
    );
  });
});

describe('the model against the library, over random histories', () => {
  const histories = fc.array(
    fc.tuple(fc.constantFrom<Grade>(1, 2, 3), fc.double({ min: 0, max: 400, noNaN: true })),
    { minLength: 1, maxLength: 30 },
  );

  it("is the library's own way through the same answers", () => {
    const parameters = generatorParameters({ enable_fuzz: false, enable_short_term: false });
    const library = fsrs(parameters);
    fc.assert(
      fc.property(histories, (history) => {
        let state: { stability: number; difficulty: number } | null = null;
        for (const [grade, days] of history) state = library.next_state(state, days, grade);
        expect(after(history)).toEqual(state);
      }),
    );
  });

  it('on whole days is what its calendar of cards comes to', () => {
    const library = fsrs(generatorParameters({ enable_fuzz: false, enable_short_term: false }));
    const days = fc.array(
      fc.tuple(fc.constantFrom<Grade>(1, 2, 3), fc.integer({ min: 1, max: 90 })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(days, (history) => {
        let card = createEmptyCard(new Date(0));
        let day = 0;
        for (const [grade, gap] of history) {
          day += gap;
          card = library.next(card, new Date(day * 86_400_000), grade as never).card;
        }
        const { stability, difficulty } = after(history);
        expect(difficulty).toBeCloseTo(card.difficulty, 5);
        expect(Math.abs(Math.log(stability / card.stability))).toBeLessThan(1e-4);
      }),
    );
  });
});
