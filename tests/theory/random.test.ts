import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { seedAt, seeded } from '../../src/theory/random.ts';

describe('chance from a seed', () => {
  it('gives the numbers of the published algorithm', () => {
    // Mulberry32 with seed 1, computed by hand from the published six lines in 32-bit arithmetic with Python.
    const random = seeded(1);
    expect([random.next(), random.next(), random.next()].map((x) => x * 2 ** 32)).toEqual([
      2693262067, 11749833, 2265367787,
    ]);
  });

  it('stays within its bounds and shuffles without losing anything', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 50 }), (seed, n) => {
        const random = seeded(seed);
        const drawn = random.below(n);
        const list = Array.from({ length: n }, (_, i) => i);
        const shuffled = random.shuffle(list);
        return drawn >= 0 && drawn < n && shuffled.toSorted((a, b) => a - b).join() === list.join();
      }),
    );
  });

  it('spreads evenly', () => {
    const random = seeded(20261201);
    const counts = Array.from({ length: 7 }, () => 0);
    for (let i = 0; i < 70_000; i++) counts[random.below(7)]!++;
    for (const count of counts) expect(Math.abs(count - 10_000)).toBeLessThan(400);
  });

  it('shuffles a few into every order as often', () => {
    for (const n of [2, 3]) {
      const list = Array.from({ length: n }, (_, i) => i);
      const orders = new Map<string, number>();
      for (let seed = 0; seed < 1200; seed++) {
        const order = seeded(seed).shuffle(list).join('');
        orders.set(order, (orders.get(order) ?? 0) + 1);
      }
      const even = 1200 / (n * (n - 1));
      expect(orders.size).toBe(n * (n - 1));
      for (const count of orders.values()) expect(Math.abs(count - even)).toBeLessThan(60);
    }
  });

  it('derives seeds that differ from one another', () => {
    const seeds = new Set(Array.from({ length: 10_000 }, (_, n) => seedAt(5, n)));
    expect(seeds.size).toBeGreaterThan(9_990);
  });
});
