import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY } from '../../src/memory/day.ts';
import { type ItemMoment, foretold, lean, noLeanings } from '../../src/memory/forgetting.ts';
import { recall, replay } from '../../src/memory/memory.ts';
import { reviewOf } from './reviews.ts';

const NOON = Date.UTC(2026, 2, 2, 12);
const SOON: ItemMoment = {
  level: 1.5,
  days: 1,
  idle: 0,
  lastRight: true,
  row: 3,
  firsts: 4,
  firstsRight: 3,
};
const LATER: ItemMoment = { ...SOON, level: 0.5, days: 12 };

/** Leanings after so many answers, a day and twelve days after the one before, such shares of them right. */
function after(answers: number, soon: number, later: number, leanings = noLeanings()) {
  for (let k = 0; k < answers; k++) {
    lean(leanings, SOON, k % 10 < 10 * soon, 0);
    lean(leanings, LATER, k % 10 < 10 * later, 0);
  }
  return leanings;
}

describe('how a student forgets', () => {
  it('is learned from answers: who has lost after days what is kept till tomorrow is foretold so', () => {
    const falls = after(40, 0.9, 0.3);
    const holds = after(40, 0.8, 0.8);
    expect(foretold(falls, LATER)).toBeLessThan(foretold(holds, LATER) - 0.1);
  });

  it('is learned no more from what is all but certain in every way than from what is not', () => {
    // No way gives more than 98 in 100, or less than 2: where all do, an answer speaks for none.
    for (const level of [-40, 40])
      for (const right of [true, false])
        for (const days of [0.1, 5]) {
          const leanings = noLeanings();
          lean(leanings, { ...LATER, level, days }, right, 0);
          leanings.forEach((one, way) => expect(one).toBeCloseTo(noLeanings()[way]!, 9));
        }
  });

  it('is never held for certain: who changes is followed', () => {
    const holds = foretold(after(2000, 0.8, 0.8), LATER);
    const changed = foretold(after(100, 0.9, 0.3, after(2000, 0.8, 0.8)), LATER);
    expect(changed).toBeLessThan(holds - 0.1);
  });

  it('stays a chance whatever the facts are', () => {
    const number = fc.double({ min: -30, max: 30, noNaN: true });
    const days = fc.double({ min: 0, max: 40_000, noNaN: true });
    const facts = fc
      .record({
        level: number,
        days,
        idle: days,
        lastRight: fc.boolean(),
        row: fc.nat(500),
        firstsRight: fc.nat(300),
        missed: fc.nat(300),
      })
      .map(({ missed, ...rest }) => ({ ...rest, firsts: rest.firstsRight + missed }));
    fc.assert(
      fc.property(fc.array(fc.tuple(facts, fc.boolean()), { maxLength: 30 }), facts, (some, at) => {
        const leanings = noLeanings();
        for (const [one, right] of some) lean(leanings, one, right, 0.25);
        expect(leanings.every(Number.isFinite)).toBe(true);
        expect(foretold(leanings, at)).toBeGreaterThanOrEqual(0);
        expect(foretold(leanings, at)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

/*
 * Worked out apart from the code, from the rows of weights and what they weigh: 1, level, t, level·t, last, a, last·t,
 * ln(1 + idle), ln(1 + row), that · t, ln(1 + firsts), that · t; with t = ln(max(½, days) / 3), a the log odds of first answers.
 */
describe('the three ways of forgetting', () => {
  const moment = (
    [level, days, idle, row, firsts, firstsRight]: readonly number[],
    lastRight: boolean,
  ): ItemMoment => ({
    level: level!,
    days: days!,
    idle: idle!,
    lastRight,
    row: row!,
    firsts: firsts!,
    firstsRight: firstsRight!,
  });
  const MOMENTS = [
    moment([1, 1, 1, 1, 1, 1], true),
    moment([0.5, 7, 3, 0, 4, 2], false),
    moment([-1, 0.1, 0, 3, 5, 5], true),
    moment([2, 30, 10, 2, 3, 2], true),
  ];

  it('begin with the first as the likelier by half a unit of log odds', () => {
    expect(noLeanings()).toEqual([0, -0.5, -0.5]);
  });

  it.each([
    [0, [0.76627, 0.74642, 0.87054], 0.78941],
    [1, [0.64882, 0.40101, 0.27214], 0.47767],
    [2, [0.50759, 0.54791, 0.86822], 0.61748],
    [3, [0.89569, 0.40338, 0.83301], 0.74359],
  ])('foretell of moment %i %o, and together %f', (index, each, together) => {
    const facts = MOMENTS[index]!;
    const alone = (way: number) =>
      foretold(
        [0, 1, 2].map((k) => (k === way ? 0 : -1000)),
        facts,
      );
    each.forEach((chance, way) => expect(alone(way)).toBeCloseTo(chance, 5));
    expect(foretold(noLeanings(), facts)).toBeCloseTo(together, 5);
  });

  // One of seven answers would be right by chance.
  it.each([
    [0, true, [0, -0.48546, -0.40586]],
    [0, false, [0, -0.56918, -1.09852]],
    [1, false, [-0.14081, -0.29136, 0]],
    [2, true, [0, -0.11753, -0.13549]],
    [2, false, [0, -3.25317, -2.65292]],
    [3, false, [-0.90573, 0, -0.58873]],
  ])('are by an answer to moment %i that is right: %s as likely as %o', (index, right, after_) => {
    const leanings = noLeanings();
    lean(leanings, MOMENTS[index]!, right, 1 / 7);
    after_.forEach((one, way) => expect(leanings[way]).toBeCloseTo(one, 5));
  });
});

describe('what is shown', () => {
  it('never rises while nothing is asked', () => {
    const days = fc.array(
      fc.record({ gap: fc.integer({ min: 1, max: 12 }), right: fc.boolean() }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(fc.array(days, { minLength: 1, maxLength: 6 }), (some) => {
        const log = some.flatMap((answers, k) => {
          let day = 0;
          return answers.map(({ gap, right }) => {
            day += gap;
            return reviewOf({ item: `place:${k}`, at: NOON + day * DAY, right });
          });
        });
        const memory = replay(log.toSorted((a, b) => a.at - b.at));
        for (const id of memory.items.keys()) {
          let before = 1;
          for (const ahead of [0.6, 1, 2, 3, 5, 7, 10, 14, 21, 40, 90]) {
            const chance = recall(memory, id, memory.clock + ahead * DAY)!;
            expect(chance).toBeLessThanOrEqual(before + 1e-9);
            before = chance;
          }
        }
      }),
    );
  });
});
