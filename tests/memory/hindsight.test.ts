import { describe, expect, it } from 'vitest';
import { hindsight } from '../../src/memory/hindsight.ts';
import { keepTrial, type Trial } from '../../src/memory/trials.ts';
import { seeded } from '../../src/theory/random.ts';

/** Answers as they were foretold, but for a shift. */
function trials(count: number, shift: number): Trial[] {
  const random = seeded(3);
  return Array.from({ length: count }, () => {
    const foretold = random.next();
    return { foretold, right: random.next() < Math.max(0, Math.min(1, foretold + shift)) };
  });
}

describe('how the forecast did', () => {
  it('is better than the mean where it was true, and worse where it was far off', () => {
    const good = hindsight({ trials: trials(600, 0) })!;
    expect(good.ours).toBeLessThan(good.constant);
    expect(hindsight({ trials: trials(600, 0.9) })!.ours).toBeGreaterThan(good.constant);
    expect(good.answers).toBe(600);
    expect(good.fifths.reduce((sum, { answers }) => sum + answers, 0)).toBe(600);
    for (const { foretold, happened } of good.fifths)
      expect(Math.abs(foretold - happened)).toBeLessThan(0.12);
  });

  it('is held against always saying the share so far, begun as one of two', () => {
    const right = Array.from({ length: 50 }, () => ({ foretold: 0.5, right: true }));
    // ½, ⅔, ¾, … 50/51: their product is 1/51.
    expect(hindsight({ trials: right })!.constant).toBeCloseTo(Math.log(51) / 50, 9);
    expect(hindsight({ trials: right })!.ours).toBeCloseTo(Math.log(2), 9);
    const turns = right.map((trial, k) => ({ ...trial, right: k % 2 === 0 }));
    // ½, ⅓, 2/4, 2/5, 3/6, 3/7, …
    const lost = turns.map((_, k) => -Math.log((Math.floor(k / 2) + 1) / (k + 2)));
    expect(hindsight({ trials: turns })!.constant).toBeCloseTo(
      lost.reduce((sum, one) => sum + one, 0) / 50,
      9,
    );
  });

  it('puts answers into fifths by the chance that they were given', () => {
    const chances = [0, 0.19, 0.2, 0.39, 0.4, 0.79, 0.8, 1];
    const some = chances.flatMap((foretold) =>
      Array.from({ length: 10 }, (_, k) => ({ foretold, right: k < 5 })),
    );
    const { fifths } = hindsight({ trials: some })!;
    expect(fifths.map(({ answers }) => answers)).toEqual([20, 20, 10, 10, 20]);
    expect(fifths.map((one) => one.foretold)).toEqual(
      [0.095, 0.295, 0.4, 0.79, 0.9].map((chance) => expect.closeTo(chance, 9)),
    );
    expect(fifths.every(({ happened }) => happened === 0.5)).toBe(true);
  });

  it('is not judged by a few answers', () => {
    expect(hindsight({ trials: trials(49, 0) })).toBeNull();
  });

  it('goes by the last two to three thousand', () => {
    const kept: Trial[] = [];
    for (const trial of trials(7000, 0)) keepTrial(kept, trial);
    expect(kept.length).toBeLessThan(3000);
    expect(kept.length).toBeGreaterThanOrEqual(2000);
    expect(kept).toEqual(trials(7000, 0).slice(-kept.length));
  });
});
