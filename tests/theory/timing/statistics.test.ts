import { describe, expect, it } from 'vitest';
import { medianDeviation } from '../../../src/theory/timing/median.ts';
import {
  normalQuantile,
  outliers,
  studentQuantile,
  varianceQuantile,
} from '../../../src/theory/timing/quantiles.ts';

describe('quantiles, against printed tables (from memory)', () => {
  it('of the normal distribution', () => {
    expect(Math.abs(normalQuantile(0.975) - 1.96)).toBeLessThan(5e-4);
    expect(Math.abs(normalQuantile(0.005) + 2.5758)).toBeLessThan(5e-4);
  });

  it('of Student’s t', () => {
    expect(Math.abs(studentQuantile(0.975, 10) - 2.228)).toBeLessThan(0.003);
    expect(Math.abs(studentQuantile(0.995, 30) - 2.75)).toBeLessThan(0.003);
  });

  it('of χ² over its degrees of freedom', () => {
    for (const [p, freedom, chi] of [
      [0.025, 7, 1.69],
      [0.975, 7, 16.013],
      [0.025, 30, 16.791],
      [0.975, 30, 46.979],
    ] as const)
      expect(Math.abs((varianceQuantile(p, freedom) * freedom) / chi - 1)).toBeLessThan(0.02);
  });

  it('give the zone that the judge names: .80 to 1.20 from 47 steps, .57 to 1.43 from 11', () => {
    const zone = (steps: number) =>
      [0.025, 0.975].map((p) => Math.sqrt(varianceQuantile(p, steps - 1)));
    expect(zone(47).map((x) => x.toFixed(2))).toEqual(['0.80', '1.20']);
    expect(zone(11).map((x) => x.toFixed(2))).toEqual(['0.57', '1.43']);
  });
});

describe('outliers', () => {
  const sample = Array.from({ length: 40 }, (_, i) => normalQuantile((i + 0.5) / 40));

  it('are found although two of them widen the spread, and none in a normal sample', () => {
    expect(outliers(sample, 4)).toEqual([]);
    expect(outliers([...sample, 6, -6], 4).toSorted()).toEqual([40, 41]);
  });

  it('leave a median deviation that is the standard deviation of a normal sample', () => {
    // The median distance from the middle, 1, times 1.4826.
    expect(medianDeviation([1, 2, 3, 4, 100])).toBeCloseTo(1.4826, 4);
    expect(medianDeviation(sample)).toBeGreaterThan(0.95);
    expect(medianDeviation(sample)).toBeLessThan(1.05);
  });

  it('hardly move the median deviation', () => {
    expect(medianDeviation([...sample, 60]) / medianDeviation(sample)).toBeLessThan(1.1);
  });
});
