import { describe, expect, it } from 'vitest';
import {
  activation,
  easeOf,
  GENERAL,
  imprint,
  levelAt,
  logistic,
  OWN,
  updateEstimates,
} from '../../src/memory/imprint.ts';
import { DAY } from '../../src/memory/day.ts';

function laid(times: readonly number[]): number[] {
  const imprints: number[] = [];
  for (const at of times) imprint(imprints, at, activation(imprints, at), true);
  return imprints;
}

/** One of the three numbers of every imprint: 0 its time, 1 its decay, 2 its depth. */
const all = (imprints: readonly number[], which: 0 | 1 | 2) =>
  imprints.filter((_, k) => k % 3 === which);

describe('imprints', () => {
  it('fade, and later ones of a strong item faster', () => {
    const once = laid([0]);
    expect(activation(once, DAY)).toBeLessThan(activation(once, 60_000));
    const [first, , third] = all(laid([0, 1000, 2000]), 1);
    expect(third).toBeGreaterThan(first!);
  });

  it('hold longer when spaced than when massed', () => {
    const late = 30 * DAY;
    expect(activation(laid([0, 3 * DAY, 6 * DAY]), late)).toBeGreaterThan(
      activation(laid([6 * DAY - 2000, 6 * DAY - 1000, 6 * DAY]), late),
    );
  });

  it('are at most twelve, merged without loss of depth or order', () => {
    const kept = laid(Array.from({ length: 40 }, (_, k) => k * DAY));
    const times = all(kept, 0);
    expect(times).toHaveLength(12);
    expect(all(kept, 2).reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(40 * 1.15);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });
});

/** Both estimates after an answer to an item that is new to someone. */
function surer(active: number, right: boolean, guess: number) {
  const [general, own] = [{ ...GENERAL }, { ...OWN }];
  updateEstimates(general, own, active, right, guess);
  return { general, own };
}

describe('how easily an item comes', () => {
  const active = activation(laid([0]), DAY);

  it('rises with a right answer and falls with a wrong one, and is less in doubt after either', () => {
    for (const right of [true, false]) {
      const after = surer(active, right, 1 / 7);
      expect(Math.sign(after.own.mean)).toBe(right ? 1 : -1);
      expect(Math.sign(after.general.mean - GENERAL.mean)).toBe(right ? 1 : -1);
      expect(after.own.variance).toBeLessThan(OWN.variance);
    }
  });

  it('is told less by a right answer that may have been guessed', () => {
    const known = surer(active, true, 0).own.mean;
    expect(surer(active, true, 1 / 4).own.mean).toBeLessThan(known);
  });

  it('is not touched by the answer to something never shown', () => {
    const silent = activation([], 0);
    expect(surer(silent, false, 0)).toEqual({ general: GENERAL, own: OWN });
  });

  it("is less the harder the deck's mark, the more so the less its answers have told", () => {
    const chance = (variance: number, mark: number) => {
      const own = { mean: 0, variance };
      return logistic(levelAt(active, easeOf(GENERAL, own, mark), GENERAL, own));
    };
    const spread = (variance: number) => chance(variance, 1) - chance(variance, 5);
    expect(spread(OWN.variance)).toBeGreaterThan(0.05);
    expect(spread(OWN.variance / 4)).toBeLessThan(spread(OWN.variance));
  });
});
