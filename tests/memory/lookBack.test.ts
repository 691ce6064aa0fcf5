import { describe, expect, it } from 'vitest';
import { lookBack } from '../../src/memory/lookBack.ts';
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
    const good = lookBack({ trials: trials(600, 0) })!;
    expect(good.ours).toBeLessThan(good.constant);
    expect(lookBack({ trials: trials(600, 0.9) })!.ours).toBeGreaterThan(good.constant);
    expect(good.answers).toBe(600);
    expect(good.fifths.reduce((sum, { answers }) => sum + answers, 0)).toBe(600);
    for (const { foretold, happened } of good.fifths)
      expect(Math.abs(foretold - happened)).toBeLessThan(0.12);
  });

  it('is not judged by a few answers', () => {
    expect(lookBack({ trials: trials(49, 0) })).toBeNull();
  });

  it('goes by the last two to three thousand', () => {
    const kept: Trial[] = [];
    for (const trial of trials(7000, 0)) keepTrial(kept, trial);
    expect(kept.length).toBeLessThan(3000);
    expect(kept.length).toBeGreaterThanOrEqual(2000);
  });
});
