import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Answer, Log } from '../../src/store/log.ts';

const answer = (item: string, at = 1_790_000_000_000): Answer => ({
  item,
  seed: 4_294_967_295,
  at,
  offset: 120,
  right: true,
  takenFor: null,
  ms: 4321,
  sounded: 0,
  taps: 1,
  hidden: false,
  grade: 3,
});

/** A tab: modules of its own, the device shared. */
async function tab(): Promise<Log> {
  vi.resetModules();
  const { openLog } = await import('../../src/store/log.ts');
  return openLog();
}

beforeEach(() => {
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
});

describe('the log', () => {
  it('has on the device what it has answered for', async () => {
    const log = await tab();
    const first = await log.append(answer('spot:C major:1'));
    expect(first).toMatchObject({ device: log.device, n: 1, item: 'spot:C major:1' });
    await log.append(answer('spot:C major:2'));
    const again = await tab();
    expect(again.device).toBe(log.device);
    expect(again.reviews).toEqual(log.reviews);
    expect(again.reviews.map(({ n }) => n)).toEqual([1, 2]);
  });

  it('goes on over the end of a chunk', async () => {
    const log = await tab();
    await Promise.all(Array.from({ length: 300 }, (_, k) => log.append(answer(`spot:${k}`))));
    const again = await tab();
    expect(again.reviews.map(({ n }) => n)).toEqual(Array.from({ length: 300 }, (_, k) => k + 1));
    expect(again.reviews.map(({ item }) => item)).toEqual(log.reviews.map(({ item }) => item));
  });

  it('loses nothing when two tabs answer at once, and they agree afterwards', async () => {
    const [one, two] = [await tab(), await tab()];
    const news = vi.fn<() => void>();
    two.watch(news);
    await Promise.all(
      Array.from({ length: 100 }, (_, k) => [
        one.append(answer(`one:${k}`)),
        two.append(answer(`two:${k}`)),
      ]).flat(),
    );
    await vi.waitFor(() => expect(one.reviews).toEqual(two.reviews));
    expect(one.reviews.map(({ n }) => n)).toEqual(Array.from({ length: 200 }, (_, k) => k + 1));
    expect(new Set(one.reviews.map(({ item }) => item)).size).toBe(200);
    expect(news).toHaveBeenCalled();
  });

  it('goes on in memory where the browser keeps nothing, and says so', async () => {
    // @ts-expect-error: a browser without it
    delete globalThis.indexedDB;
    const log = await tab();
    expect(log.trouble?.why).toBe('refused');
    await expect(log.append(answer('spot:1'))).rejects.toThrow(/private window/);
    expect(log.reviews).toHaveLength(1);
    globalThis.indexedDB = new IDBFactory();
    await log.append(answer('spot:2'));
    expect(log.trouble).toBeNull();
    expect((await tab()).reviews.map(({ item }) => item)).toEqual(['spot:1', 'spot:2']);
  });
});
