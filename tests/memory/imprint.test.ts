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

describe('what is one imprint too many', () => {
  // Days, a decay and a depth for each; a thirteenth is laid on day 110.
  const before = (days: readonly number[]) =>
    days.flatMap((day, k) => [day * DAY, 0.2 + 0.2 * (k % 2), k % 2 === 0 ? 1.15 : 0.85]);

  // By how far two lie apart for how long ago that is: days 0 and 4, not 97 and 100; in the other row 35 and 36.
  it.each([
    [[0, 4, 20, 35, 50, 60, 70, 80, 90, 97, 100, 103], 0, [1.7, 0.285, 2]],
    [[0, 16, 25, 35, 36, 60, 70, 80, 90, 97, 100, 103], 3, [35.575, 0.285, 2]],
  ])(
    'makes one of the two that lie closest: of days %o the one at %i',
    (days, at, [day, decay, depth]) => {
      const imprints = before(days);
      imprint(imprints, 110 * DAY, 0.5, true);
      const rest = before(days).toSpliced(3 * at, 6);
      const both = [day! * DAY, decay!, depth!];
      const all13 = [...rest, 110 * DAY, 0.365, 1.15].toSpliced(3 * at, 0, ...both);
      expect(imprints).toEqual(all13.map((value) => expect.closeTo(value, 6) as number));
    },
  );
});

/** Both estimates after an answer to an item that is new to someone. */
function surer(active: number, right: boolean, guess: number) {
  const [general, own] = [{ ...GENERAL }, { ...OWN }];
  updateEstimates(general, own, active, right, guess);
  return { general, own };
}

/** A mean and its variance. */
type Pair = [number, number];

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

  // Worked out apart from the code, as a Kalman filter's gain: K = variance · slope / (noise + slope² · both variances).
  it.each<[number, boolean, number, Pair, Pair, Pair]>([
    [0.3, true, 0.25, [0.5, 1.44], [4.455681, 0.893026], [0.72418, 1.218179]],
    [0.3, true, 0.25, [-0.8, 0.6], [4.576187, 0.896586], [-0.634288, 0.562771]],
    [0.3, false, 0.25, [0.5, 1.44], [3.792218, 0.893026], [-0.231206, 1.218179]],
    [0.3, false, 0.25, [-0.8, 0.6], [3.987521, 0.896586], [-0.987487, 0.562771]],
    [0.2, true, 0, [0.5, 1.44], [4.707692, 0.852236], [1.087077, 1.133597]],
    [0.2, true, 0, [-0.8, 0.6], [5.030161, 0.902052], [-0.361903, 0.564739]],
    [0.5, false, 0.125, [0.5, 1.44], [3.496662, 0.946711], [-0.656806, 1.3295]],
    [0.5, false, 0.125, [-0.8, 0.6], [3.682366, 0.878515], [-1.17058, 0.556265]],
  ])(
    'at %f, right: %s, guessed one time in %f, with a doubt of its own of %o, is %o and %o',
    (present, right, guess, own, general, after) => {
      const [whole, part] = [{ ...GENERAL }, { mean: own[0], variance: own[1] }];
      updateEstimates(whole, part, present, right, guess);
      expect([whole.mean, whole.variance]).toEqual(general.map((one) => expect.closeTo(one, 5)));
      expect([part.mean, part.variance]).toEqual(after.map((one) => expect.closeTo(one, 5)));
    },
  );

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
