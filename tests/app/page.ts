import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { vi } from 'vitest';

/** As much of a page as lessons and a round need, just opened on a device that has nothing. */
export function freshPage(): void {
  vi.resetModules();
  Object.assign(globalThis, {
    indexedDB: new IDBFactory(),
    IDBKeyRange,
    document: { documentElement: { dataset: {} }, addEventListener() {} },
  });
}
