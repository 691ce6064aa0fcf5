import { afterEach, describe, expect, it, vi } from 'vitest';
import { inSlices } from '../../src/app/slices.ts';
import type { Incremental } from '../../src/theory/incremental.ts';

/** A clock on which every look takes a millisecond. */
function slowClock() {
  let now = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => now++);
}

function* counting(steps: number): Incremental<number> {
  for (let step = 0; step < steps; step++) yield;
  return steps;
}

afterEach(() => vi.restoreAllMocks());

describe('work in slices', () => {
  it('gives what it gives without', async () => {
    expect(await inSlices(counting(1000))).toBe(1000);
    expect(await inSlices(counting(0))).toBe(0);
  });

  it('lets the page have its turn again and again, so that what came meanwhile is done', async () => {
    slowClock();
    let turns = 0;
    let isDone = false;
    const page = () => {
      turns++;
      if (!isDone) setImmediate(page);
    };
    setImmediate(page);
    await inSlices(counting(200));
    isDone = true;
    expect(turns).toBeGreaterThanOrEqual(10);
  });

  it('tells whoever waits what went wrong', async () => {
    function* failing(): Incremental<never> {
      yield;
      throw new RangeError('no');
    }
    await expect(inSlices(failing())).rejects.toThrow('no');
  });
});
