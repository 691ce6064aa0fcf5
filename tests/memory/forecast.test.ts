import { describe, expect, it } from 'vitest';
import { correctionFrom, forecastOf, lookBack, type Trial } from '../../src/memory/forecast.ts';
import { recall, replay } from '../../src/memory/memory.ts';
import { DAY, recallAfter } from '../../src/memory/model.ts';
import { seeded } from '../../src/theory/random.ts';
import { reviewOf } from './reviews.ts';

/** Answers of someone whose stability is the model's times a factor, after a right answer and after a wrong one. */
function trials(count: number, right: number, wrong: number): Trial[] {
  const random = seeded(3);
  return Array.from({ length: count }, (_, k) => {
    const lastRight = k % 3 > 0;
    const strength = { stability: 1 + 8 * random.next(), difficulty: 5 };
    const days = 1 + 13 * random.next();
    const own = { ...strength, stability: strength.stability * (lastRight ? right : wrong) };
    return { strength, days, lastRight, right: random.next() < recallAfter(own, days) };
  });
}

describe('the forecast', () => {
  it("is the model's own before anything was seen", () => {
    expect(correctionFrom([]).right).toBe(1);
    const memory = replay([reviewOf({ at: 0 })]);
    const item = reviewOf({}).item;
    expect(forecastOf(memory)(item, 3 * DAY)).toBeCloseTo(recall(memory, item, 3 * DAY)!, 2);
    expect(forecastOf(memory)('spot:other', 3 * DAY)).toBeNull();
  });

  it('finds how fast this student forgets, apart for right and wrong last answers', () => {
    const { right, wrong } = correctionFrom(trials(400, 0.15, 4));
    expect(right).toBeGreaterThan(0.07);
    expect(right).toBeLessThan(0.3);
    expect(wrong).toBeGreaterThan(1.3);
  });

  it('beats the model and the constant mean for someone whom the model misjudges', () => {
    const back = lookBack({ trials: trials(400, 5, 0.1) })!;
    expect(back.answers).toBe(400);
    expect(back.ours).toBeLessThan(back.uncorrected);
    expect(back.ours).toBeLessThan(back.constant);
    expect(back.fifths.reduce((sum, { answers }) => sum + answers, 0)).toBe(400);
    for (const { answers, foretold, happened } of back.fifths) {
      if (answers > 50) expect(Math.abs(foretold - happened)).toBeLessThan(0.15);
    }
  });

  it('does not judge itself by a few answers', () => {
    expect(lookBack({ trials: trials(49, 1, 1) })).toBeNull();
  });
});
