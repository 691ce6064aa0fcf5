import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';

let store: typeof import('../../src/store/timings.ts');
beforeEach(async () => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  store = await import('../../src/store/timings.ts');
});

it('of a backup only figures are taken that are not known here', async () => {
  expect(await store.listTimings()).toEqual([]);
  await store.saveTiming('triplets', { spread: 0.1 });
  const timings = [
    { figure: 'triplets', timing: { spread: 0.3 } },
    { figure: 'eighths', timing: { spread: 0.2 } },
    { figure: '__proto__', timing: { spread: 0.4 } },
  ];
  expect(await store.takeTimings(timings)).toBe(2);
  expect(await store.takeTimings(timings)).toBe(0);
  expect(await store.takeTimings([])).toBe(0);
  expect(await store.listTimings()).toEqual([
    { figure: 'triplets', timing: { spread: 0.1 } },
    ...timings.slice(1),
  ]);
});
