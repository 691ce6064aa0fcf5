import { describe, expect, it } from 'vitest';
import { evennessOf } from '../../../src/theory/timing/evenness.ts';
import { matched } from '../../../src/theory/timing/match.ts';
import { panelStep, roundingError } from '../../../src/theory/timing/panel.ts';
import { stepsOf, type TimedOnset, type TimeStep } from '../../../src/theory/timing/steps.ts';
import { worstTaps } from '../../../src/theory/timing/worst.ts';

/** Taps for notes half a second apart, each so many milliseconds late. */
const late = (ms: readonly number[], slots = ms.map((_, i) => i)): TimedOnset[] =>
  ms.map((by, i) => ({
    slot: slots[i]!,
    tap: i,
    expected: slots[i]! / 2,
    time: slots[i]! / 2 + by / 1000,
  }));

describe('steps', () => {
  it('are between notes that follow one another: none over a note that was not tapped', () => {
    const steps = stepsOf(late([0, 10, -10, 0], [0, 1, 3, 4]));
    expect(steps.map(({ from, to }) => [from.slot, to.slot])).toEqual([
      [0, 1],
      [3, 4],
    ]);
    expect(steps.map(({ expected }) => expected)).toEqual([0.5, 0.5]);
    expect(steps[0]!.ratio).toBeCloseTo(1.02, 9);
    expect(steps[1]!.ratio).toBeCloseTo(1.02, 9);
  });
});

describe('the steps that are set aside as slips', () => {
  const steps = (ratios: readonly number[]): TimeStep[] => {
    const onsets = late(ratios.map(() => 0).concat(0));
    return ratios.map((ratio, i) => ({
      from: onsets[i]!,
      to: onsets[i + 1]!,
      expected: 0.5,
      ratio,
    }));
  };
  const even = (count: number) => Array.from({ length: count }, (_, i) => 1 + 0.02 * (-1) ** i);
  const aside = (ratios: readonly number[]) =>
    evennessOf(steps(ratios), 0)!.setAside.map(({ ratio }) => ratio);

  it('are two at most of each fifteen', () => {
    expect(aside([...even(13), 2])).toEqual([]);
    expect(aside([...even(14), 2])).toEqual([2]);
    expect(aside([...even(13), 2, 0.1])).toEqual([2, 0.1]);
    // Of 29 still two: the farthest.
    expect(aside([...even(26), 2, 0.1, 3])).toEqual([2, 3]);
    expect(aside(even(30))).toEqual([]);
  });

  it('are in none of the figures: what is told is the spread of the others', () => {
    // 14 steps, 2 % off their mean each: √(14/13) of that.
    const { fraction, spread, steps: count, range } = evennessOf(steps([...even(14), 2]), 0)!;
    expect(count).toBe(14);
    expect(fraction).toBeCloseTo(0.02 * Math.sqrt(14 / 13), 9);
    expect(spread).toBeCloseTo(0.01 * Math.sqrt(14 / 13), 9);
    expect(range[0]).toBeLessThan(fraction!);
    expect(range[1]).toBeGreaterThan(fraction!);
  });
});

describe('the step of a panel', () => {
  it('is found to a thousandth of itself where all steps are whole ones of it', () => {
    for (const hertz of [60, 90, 120]) {
      const steps = Array.from({ length: 24 }, (_, i) => (30 + ((i * 7) % 5) - 2) / hertz);
      expect(panelStep(steps)! * hertz).toBeCloseTo(1, 3);
    }
  });

  it('is none where steps lie anywhere, or are fewer than twelve', () => {
    const anywhere = Array.from({ length: 24 }, (_, i) => 0.5 + 0.03 * Math.sin(i * 2.3));
    expect(panelStep(anywhere)).toBeNull();
    expect(panelStep(Array.from({ length: 11 }, (_, i) => (30 + (i % 3)) / 60))).toBeNull();
  });

  it('puts an even error into each time: of 12 ms a standard deviation of 12 ms/√12', () => {
    expect(roundingError(0.012)).toBeCloseTo(0.003464, 6);
  });
});

describe('the worst taps', () => {
  it('are late by their place between their neighbours, at most three, the farthest first', () => {
    const ms = Array.from({ length: 20 }, () => 0);
    expect(worstTaps(late(ms))).toEqual([]);
    const one = worstTaps(late(ms.with(8, 60)));
    expect(one).toEqual([{ tap: 8, slot: 8, late: expect.closeTo(0.06, 9) as number }]);
    const two = worstTaps(late(ms.with(5, -40).with(12, 90)));
    expect(two.map(({ slot, late: by }) => [slot, Math.round(1000 * by)])).toEqual([
      [12, 90],
      [5, -40],
    ]);
    const many = Array.from({ length: 120 }, () => 0);
    const four = worstTaps(late(many.with(9, 90).with(38, 80).with(63, 75).with(97, 70)));
    expect(four.map(({ slot }) => slot)).toEqual([9, 38, 63]);
  });

  it('are the first or the last as well, and one beside a gap, not those next to them', () => {
    const slots = (ms: readonly number[], ...gone: number[]) =>
      worstTaps(late(ms).filter(({ slot }) => !gone.includes(slot))).map(({ slot }) => slot);
    const ms = Array.from({ length: 24 }, (_, i): number => (i % 2 ? 4 : -4));
    expect(slots(ms)).toEqual([]);
    expect(slots(ms.with(0, 80))).toEqual([0]);
    expect(slots(ms.with(23, -80))).toEqual([23]);
    expect(slots(ms.with(8, 80), 9, 10, 11)).toEqual([8]);
    expect(worstTaps(late(ms.with(23, 80)))[0]!.late).toBeCloseTo(0.08, 1);
  });

  it('are none between notes that lie more than four apart, where nobody knows where they should lie', () => {
    const ms = Array.from({ length: 24 }, (_, i) => (i === 8 ? 80 : 0));
    const gone = (...slots: number[]) =>
      worstTaps(late(ms).filter(({ slot }) => !slots.includes(slot))).map(({ slot }) => slot);
    expect(gone()).toEqual([8]);
    expect(gone(9)).toEqual([8]);
    expect(gone(9, 10)).toEqual([8]);
    expect(gone(5, 6, 7, 9, 10, 11)).toEqual([]);
  });

  it('are none within a fiftieth of a second', () => {
    const ms = Array.from({ length: 20 }, () => 0);
    expect(worstTaps(late(ms.with(8, 19)))).toEqual([]);
    expect(worstTaps(late(ms.with(8, 21)))).toHaveLength(1);
  });
});

describe('which tap was meant for which note', () => {
  const slots = [0, 0.5, 1, 1.5, 2, 2.5, 3];
  const pairs = (taps: readonly number[]) =>
    matched(taps, slots).pairs.map(({ slot, tap }) => [slot, tap]);

  it('is told over a note left out, a stray tap, and taps along with the count-in', () => {
    expect(matched([0, 0.5, 1.5, 2, 2.5, 3], slots)).toEqual({
      pairs: [0, 1, 3, 4, 5, 6].map((slot, tap) => ({ slot, tap })),
      missing: [2],
      extra: [],
      outside: [],
    });
    expect(matched([0, 0.5, 0.62, 1, 1.5, 2, 2.5, 3], slots)).toMatchObject({
      missing: [],
      extra: [2],
      outside: [],
    });
    expect(matched([-1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5], slots)).toMatchObject({
      missing: [],
      extra: [],
      outside: [0, 1, 9],
    });
    expect(pairs([0, 0.5, 1, 1.5, 2, 2.5, 3])).toEqual(slots.map((_, i) => [i, i]));
  });
});
