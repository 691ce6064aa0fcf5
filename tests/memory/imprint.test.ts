import { describe, expect, it } from 'vitest';
import {
  activation,
  depthAt,
  easeOf,
  freshly,
  GENERAL,
  imprint,
  laidBy,
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

// Worked out by hand: a depth times the seconds felt since, to the power of minus its decay.
describe('how present an item is', () => {
  it.each([
    [0.2, 1],
    [1, 1],
    [100, 0.1],
    [1199, 0.02888],
    [86_400, 0.01909],
    [604_800, 0.00798],
  ])('%f s after one imprint that fades by the root is %f', (seconds, present) => {
    expect(activation([0, 0.5, 1], 1000 * seconds)).toBeCloseTo(present, 4);
    expect(activation([0, 0.5, 1.15, 0, 0.5, 0.85], 1000 * seconds)).toBeCloseTo(2 * present, 4);
  });

  it('is all but nothing before anything was laid', () => expect(activation([], 5)).toBe(1e-6));

  // A decay of .165 and .4 of what was present, between .05 and 1.5.
  it.each([
    [0, 0.165],
    [0.5, 0.365],
    [1, 0.565],
    [9, 1.5],
  ])('%f makes the next imprint fade by %f', (active, decay) => {
    expect(freshly(active, 100_000)).toBeCloseTo(100 ** -decay, 6);
    const imprints: number[] = [];
    imprint(imprints, 7, active, true);
    imprint(imprints, 9, active, false);
    expect(imprints).toEqual([
      7,
      expect.closeTo(decay, 9),
      1.15,
      9,
      expect.closeTo(decay, 9),
      0.85,
    ]);
  });

  it('is laid the deeper the likelier the answer', () => {
    expect([0, 0.5, 1].map(depthAt)).toEqual([0.85, 1, 1.15]);
  });

  it('is laid by no clock that is ahead', () => {
    expect(laidBy([5, 0.3, 1, 9, 0.4, 2], 7)).toEqual([5, 0.3, 1, 7, 0.4, 2]);
  });

  // Of an item not yet answered a mark is .45 of the general ease's unit a step; half as much where half is known.
  it.each([
    [1, 1.44, 5.2],
    [2, 1.44, 4.75],
    [3, 1.44, 4.3],
    [4, 1.44, 3.85],
    [5, 1.44, 3.4],
    [1, 0.72, 4.75],
  ])('comes as easily, marked %i with a doubt of %f, as %f', (mark, variance, ease) => {
    expect(easeOf(GENERAL, { mean: 0, variance }, mark)).toBeCloseTo(ease, 9);
    expect(easeOf(GENERAL, { mean: 0.5, variance }, mark)).toBeCloseTo(ease + 0.5, 9);
  });

  // (ln .3 / .3 + 4.3) / √(1 + .39 · 2.44)
  it('has a level that doubt draws to the middle', () => {
    expect(levelAt(0.3, 4.3, GENERAL, OWN)).toBeCloseTo((Math.log(0.3) / 0.3 + 4.3) / 1.3971, 3);
    const sure = { mean: 0, variance: 0 };
    expect(levelAt(0.3, 4.3, sure, sure)).toBeCloseTo(Math.log(0.3) / 0.3 + 4.3, 9);
  });
});

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
