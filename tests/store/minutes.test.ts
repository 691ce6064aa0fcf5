import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';

let store: typeof import('../../src/store/minutes.ts');
beforeEach(async () => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  store = await import('../../src/store/minutes.ts');
});

const minute = (lesson: string, at: number, says = 'here') => ({ lesson, at, document: { says } });

it('free minutes are listed from the first to the last, whatever lesson they are of, and taken away one by one', async () => {
  for (const one of [minute('b', 30), minute('a', 20), minute('b', 10)])
    await store.keepMinute(one);
  expect(await store.listMinutes()).toEqual([minute('b', 10), minute('a', 20), minute('b', 30)]);
  await store.removeMinute({ lesson: 'b', at: 10 });
  await store.removeMinute({ lesson: 'a', at: 30 });
  expect(await store.listMinutes()).toEqual([minute('a', 20), minute('b', 30)]);
});

it('of a backup only minutes are taken that are not here, and those are counted', async () => {
  await store.keepMinute(minute('a', 20));
  const file = [minute('a', 20, 'file'), minute('a', 21, 'file'), minute('b', 20, 'file')];
  expect(await store.takeMinutes(file)).toBe(2);
  expect(await store.takeMinutes(file)).toBe(0);
  expect(await store.listMinutes()).toEqual(
    expect.arrayContaining([minute('a', 20), file[1], file[2]]),
  );
  expect(await store.listMinutes()).toHaveLength(3);
});
