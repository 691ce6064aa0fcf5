import { expect, it, vi } from 'vitest';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
const { readTiming } = await import('../../src/app/report/timings.ts');

const timing = { spread: 0.1, drift: -0.02, limps: { place: 3, late: -0.03 } };

it.each([
  [timing, true],
  [{ spread: null, drift: null, limps: null }, true],
  [{ ...timing, spread: 0 }, true],
  [{ ...timing, spread: -0.01 }, false],
  [{ ...timing, spread: 5.1 }, false],
  [{ ...timing, drift: -1 }, true],
  [{ ...timing, drift: 1.1 }, false],
  [{ ...timing, limps: { place: 2, late: -5 } }, true],
  [{ ...timing, limps: { place: 1, late: 0.02 } }, false],
  [{ ...timing, limps: { place: 4, late: NaN } }, false],
  [{ spread: 0.1, drift: null }, false],
  [null, false],
])('of what is kept of a figure %o is read: %s', (stored, isRead) => {
  expect(readTiming(stored)).toEqual(isRead ? stored : null);
});
