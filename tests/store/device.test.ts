/** A store that does not answer: nobody waits for it longer than a few seconds, and nothing that it did not take is lost. */
import { IDBFactory, IDBKeyRange, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Answer } from '../../src/store/log.ts';

const answer = (some: Partial<Answer>): Answer => ({
  item: 'spot:Bb major:1:triad:guitar:5-4:1-7',
  seed: 1,
  at: 1_700_000_000_000,
  offset: 60,
  right: true,
  takenFor: null,
  ms: 2000,
  sounded: 0,
  taps: 1,
  hidden: false,
  grade: 3,
  ...some,
});

/** As it is with a database that another program holds on to. */
const silent = { open: () => new EventTarget() };

beforeEach(() => {
  vi.resetModules();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  Object.assign(globalThis, { indexedDB: silent, IDBKeyRange });
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

it('opening it ends after a few seconds, in memory and with a sentence; all else is told at once', async () => {
  const { openLog } = await import('../../src/store/log.ts');
  const { loadSettings } = await import('../../src/store/settings.ts');
  const opening = openLog();
  await vi.advanceTimersByTimeAsync(5000);
  const log = await opening;
  expect(log.trouble?.message).toMatch(/does not answer/);
  await expect(loadSettings()).rejects.toThrow(/does not answer/);
  await expect(log.append(answer({ seed: 7 }))).rejects.toThrow(/does not answer/);
  expect(log.reviews.length).toBe(1);
});

it('once it answers again, what it did not take is written', async () => {
  const { openLog } = await import('../../src/store/log.ts');
  const opening = openLog();
  await vi.advanceTimersByTimeAsync(5000);
  const log = await opening;
  await expect(log.append(answer({ seed: 7 }))).rejects.toThrow(/does not answer/);
  Object.assign(globalThis, { indexedDB: new IDBFactory() });
  await vi.advanceTimersByTimeAsync(30_000);
  await log.append(answer({ seed: 9 }));
  expect(log.trouble).toBeNull();
  vi.resetModules();
  const again = await (await import('../../src/store/log.ts')).openLog();
  expect(Array.from(again.reviews, ({ seed }) => seed)).toEqual([7, 9]);
});

it('a phone that slept gives the store its time anew when it wakes', async () => {
  const { loadSettings } = await import('../../src/store/settings.ts');
  let ended = false;
  const told = loadSettings().catch(() => (ended = true));
  // Three seconds awake, an hour asleep: what was due meanwhile comes at once.
  await vi.advanceTimersByTimeAsync(3000);
  const wake = performance.now() + 3_600_000;
  const clock = vi.spyOn(performance, 'now').mockReturnValue(wake);
  await vi.advanceTimersByTimeAsync(1000);
  expect(ended).toBe(false);
  clock.mockReturnValue(wake + 4000);
  await vi.advanceTimersByTimeAsync(4000);
  await told;
  expect(ended).toBe(true);
});

it('a write that never ends is given up, and written with the next one, once', async () => {
  Object.assign(globalThis, { indexedDB: new IDBFactory() });
  const { openLog } = await import('../../src/store/log.ts');
  const log = await openLog();
  await log.append(answer({ seed: 1 }));
  const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: {
    readonly transaction: EventTarget;
  }) {
    // Nothing of the transaction is ever heard of.
    vi.spyOn(this.transaction, 'dispatchEvent').mockReturnValue(true);
    return new EventTarget() as never;
  });
  const writing = log.append(answer({ seed: 2 }));
  await Promise.all([
    expect(writing).rejects.toThrow(/does not answer/),
    vi.advanceTimersByTimeAsync(15_000),
  ]);
  put.mockRestore();
  await vi.advanceTimersByTimeAsync(30_000);
  await log.append(answer({ seed: 3 }));
  vi.resetModules();
  const again = await (await import('../../src/store/log.ts')).openLog();
  expect(Array.from(again.reviews, ({ seed }) => seed)).toEqual([1, 2, 3]);
});
