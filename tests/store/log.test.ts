import { IDBFactory, IDBKeyRange, IDBObjectStore as FDBObjectStore } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { CHUNK, PACK } from '../../src/store/chunk.ts';
import { lineOf } from '../../src/store/logLine.ts';
import type { Answer, Log } from '../../src/store/log.ts';
import { MOST_COUNT, type Review } from '../../src/store/review.ts';

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

const listOf = ({ reviews }: Log): Review[] => [...reviews];

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
    expect(listOf(again)).toEqual(listOf(log));
    expect(listOf(again).map(({ n }) => n)).toEqual([1, 2]);
  });

  it('asks the device to keep it once there are twenty answers, and not again', async () => {
    const persist = vi.fn<() => Promise<boolean>>(async () => true);
    vi.stubGlobal('navigator', { storage: { persist } });
    const log = await tab();
    for (let k = 0; k < 19; k++) await log.append(answer(`spot:${k}`));
    expect(persist).not.toHaveBeenCalled();
    for (let k = 0; k < 3; k++) await log.append(answer(`more:${k}`));
    expect(persist).toHaveBeenCalledTimes(1);
    vi.unstubAllGlobals();
  });

  it('goes on over the end of a chunk', async () => {
    const log = await tab();
    const reviews = Array.from({ length: CHUNK - 3 }, (_, k) => ({
      ...answer(`spot:${k}`),
      device: log.device,
      n: k + 1,
    }));
    await log.merge({ reviews, quarantined: [] });
    await Promise.all([1, 2, 3, 4, 5, 6].map((k) => log.append(answer(`more:${k}`))));
    const again = await tab();
    expect(listOf(again).map(({ n }) => n)).toEqual(
      Array.from({ length: CHUNK + 3 }, (_, k) => k + 1),
    );
    expect(listOf(again)).toEqual(listOf(log));
  });

  it('goes on after a log whose chunks were smaller, and gives no count twice', async () => {
    const log = await tab();
    const reviews = Array.from({ length: 300 }, (_, k) => ({
      ...answer(`spot:${k}`),
      device: log.device,
      n: k + 1,
    }));
    const { store, stored } = await import('../../src/store/device.ts');
    await store('readwrite', (all) => {
      for (let chunk = 0; chunk * 128 < reviews.length; chunk++) {
        const lines = reviews.slice(chunk * 128, (chunk + 1) * 128).map(lineOf);
        all.put(lines.join('\n'), ['log', log.device, chunk]);
      }
      return stored(all);
    });
    const later = await tab();
    expect(listOf(later)).toHaveLength(300);
    expect((await later.append(answer('more:1'))).n).toBe(301);
    expect((await later.append(answer('more:2'))).n).toBe(302);
    const again = await tab();
    expect(listOf(again).map(({ n }) => n)).toEqual(Array.from({ length: 302 }, (_, k) => k + 1));
    expect(
      listOf(again)
        .slice(-2)
        .map(({ item }) => item),
    ).toEqual(['more:1', 'more:2']);
  });

  describe('once it is long', () => {
    const MANY = PACK * CHUNK;
    const long = (device: string, count: number) =>
      Array.from({ length: count }, (_, k) => ({
        ...answer(`spot:${k % 300}`, 1_790_000_000_000 + k * 60_000),
        device,
        n: k + 1,
      }));

    /** A tab on a device with so many reviews, packed where they can be. */
    async function withLong(count: number): Promise<Log> {
      const log = await tab();
      await log.merge({ reviews: long(log.device, count), quarantined: [] });
      return log;
    }

    it('is packed, and read as it was', async () => {
      const log = await withLong(MANY + CHUNK + 5);
      await log.append(answer('more:1'));
      expect(await chunks()).toEqual([0, PACK, PACK + 1]);
      const again = await tab();
      expect(again.quarantined).toEqual([]);
      expect(listOf(again)).toEqual(listOf(log));
      expect((await again.append(answer('more:2'))).n).toBe(MANY + CHUNK + 7);
    });

    it('is packed at the next opening where it has grown by answers', async () => {
      const log = await withLong(MANY - 1);
      for (const k of [1, 2, 3]) await log.append(answer(`more:${k}`));
      expect(await chunks()).toHaveLength(PACK + 1);
      const again = await tab();
      expect((await again.append(answer('more:4'))).n).toBe(MANY + 3);
      expect(await chunks()).toEqual([0, PACK]);
      expect(listOf(await tab())).toEqual(listOf(again));
    });

    it('takes its own file again without a change', async () => {
      const log = await withLong(MANY + 5);
      await log.append(answer('more:1'));
      const before = listOf(log);
      expect(await log.merge({ reviews: before, quarantined: [] })).toBe(0);
      expect(listOf(await tab())).toEqual(before);
      const stranger = { ...before[700]!, item: 'of a copy of this device' };
      expect(await log.merge({ reviews: [stranger], quarantined: [] })).toBe(1);
      expect(listOf(await tab())).toHaveLength(before.length + 1);
    });

    it('loses nothing of a tab that missed the packing', async () => {
      vi.stubGlobal('BroadcastChannel', undefined);
      const asleep = await withLong(MANY - CHUNK - 2);
      const awake = await tab();
      await Promise.all(
        Array.from({ length: CHUNK + 5 }, (_, k) => awake.append(answer(`awake:${k}`))),
      );
      await (await tab()).append(answer('packed'));
      expect(await chunks()).toEqual([0, PACK]);
      expect((await asleep.append(answer('asleep'))).n).toBe(MANY + 5);
      const reviews = listOf(await tab());
      expect(reviews.map(({ n }) => n)).toEqual(Array.from({ length: MANY + 5 }, (_, k) => k + 1));
      expect(listOf(asleep)).toEqual(reviews);
      vi.unstubAllGlobals();
    });

    it('leaves chunks alone in which something cannot be read', async () => {
      const log = await withLong(MANY - 1);
      await change(['log', log.device, 3], (text) => `${text as string}\n[9,"later"]`);
      await log.append(answer('more:1'));
      await log.append(answer('more:2'));
      const again = await tab();
      await again.append(answer('more:3'));
      expect(await chunks()).toHaveLength(PACK + 1);
      expect((await tab()).quarantined).toHaveLength(1);
      expect(listOf(await tab())).toEqual(listOf(again));
    });

    it('keeps all as it was where there is no room to pack it', async () => {
      const log = await withLong(MANY - 1);
      for (const k of [1, 2]) await log.append(answer(`more:${k}`));
      const put = vi.spyOn(FDBObjectStore.prototype, 'put').mockImplementation(() => {
        throw new DOMException('No space', 'QuotaExceededError');
      });
      const full = await tab();
      await vi.waitFor(() => expect(put).toHaveBeenCalled());
      put.mockRestore();
      // Nothing that was answered is missing, so there is nothing to be told.
      expect((await full.append(answer('more:3'))).n).toBe(MANY + 2);
      expect(full.trouble).toBeNull();
      expect(await chunks()).toHaveLength(PACK + 1);
      expect(listOf(await tab())).toEqual(listOf(full));
    });
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
    await vi.waitFor(() => expect(listOf(one)).toEqual(listOf(two)));
    expect(listOf(one).map(({ n }) => n)).toEqual(Array.from({ length: 200 }, (_, k) => k + 1));
    expect(new Set(listOf(one).map(({ item }) => item)).size).toBe(200);
    expect(news).toHaveBeenCalled();
  });

  it('goes on in memory where the browser keeps nothing, and says so', async () => {
    // @ts-expect-error: a browser without it
    delete globalThis.indexedDB;
    const log = await tab();
    expect(log.trouble?.why).toBe('refused');
    await expect(log.append(answer('spot:1'))).rejects.toThrow(/private window/);
    expect(listOf(log)).toHaveLength(1);
    globalThis.indexedDB = new IDBFactory();
    await log.append(answer('spot:2'));
    expect(log.trouble).toBeNull();
    expect(listOf(await tab()).map(({ item }) => item)).toEqual(['spot:1', 'spot:2']);
  });

  it('says that all is well again once what was refused can be read', async () => {
    // @ts-expect-error: a browser without it
    delete globalThis.indexedDB;
    const log = await tab();
    globalThis.indexedDB = new IDBFactory();
    await log.merge({ reviews: [], quarantined: [] });
    expect(log.trouble).toBeNull();
  });

  it('keeps later answers though a backup has used up the counts of this device', async () => {
    const log = await tab();
    await log.append(answer('spot:1'));
    const forged = { ...answer('spot:forged'), device: log.device, n: MOST_COUNT };
    await log.merge({ reviews: [forged], quarantined: [] });
    await log.append(answer('spot:2'));
    await log.append(answer('spot:3'));
    const again = await tab();
    expect(again.device).toBe(log.device);
    expect(new Set(listOf(again).map(({ item }) => item))).toEqual(
      new Set(['spot:1', 'spot:forged', 'spot:2', 'spot:3']),
    );
    expect(again.quarantined).toEqual([]);
    await again.append(answer('spot:4'));
    expect(listOf(await tab())).toHaveLength(5);
  });

  it('takes no count for one that no log reaches, wherever it stands in a backup', async () => {
    const log = await tab();
    await log.append(answer('spot:1'));
    const text = lineOf({ ...answer('x'), device: log.device, n: Number.MAX_SAFE_INTEGER });
    const quarantined = [{ device: log.device, text, flaw: 'newer' as const }];
    await log.merge({ reviews: [], quarantined });
    for (const item of ['spot:2', 'spot:3']) await log.append(answer(item));
    expect(listOf(await tab()).map(({ item }) => item)).toEqual(['spot:1', 'spot:2', 'spot:3']);
  });

  it('takes what another device could not read for the review that it is here', async () => {
    const log = await tab();
    const review = await log.append(answer('spot:1'));
    const later = { ...review, n: 2, item: 'spot:2' };
    const quarantined = [review, later].map((one) => ({
      device: log.device,
      text: lineOf(one),
      flaw: 'newer' as const,
    }));
    expect(await log.merge({ reviews: [], quarantined })).toBe(1);
    expect(listOf(log)).toEqual([review, later]);
    expect(log.quarantined).toEqual([]);
  });

  it('sets aside what is torn, foreign or from a newer version, and keeps it', async () => {
    const log = await tab();
    await log.append(answer('spot:1'));
    const strange = ['[1,2,"spot:', '{"spot":1}', '[9,3,"spot:3",{}]'];
    await change(['log', log.device, 0], (text) => [text, ...strange].join('\n'));
    await change(['log', log.device, 1], () => 42);
    const after = await tab();
    expect(listOf(after)).toHaveLength(1);
    expect(after.quarantined.map(({ flaw }) => flaw)).toEqual([
      'torn',
      'foreign',
      'newer',
      'foreign',
    ]);
    await after.append(answer('spot:2'));
    const again = await tab();
    expect(listOf(again).map(({ item }) => item)).toEqual(['spot:1', 'spot:2']);
    expect(again.quarantined.map(({ text }) => text)).toEqual([...strange, '42']);
  });

  it('tells that the device is full, goes on, and writes it all once there is room', async () => {
    const log = await tab();
    await log.append(answer('spot:1'));
    const put = vi.spyOn(FDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('No space', 'QuotaExceededError');
    });
    await expect(log.append(answer('spot:2'))).rejects.toThrow(/device is full/);
    await expect(log.append(answer('spot:3'))).rejects.toThrow(/device is full/);
    expect(log.trouble?.why).toBe('full');
    expect(listOf(log).map(({ n, item }) => [n, item])).toEqual([
      [1, 'spot:1'],
      [2, 'spot:2'],
      [3, 'spot:3'],
    ]);
    put.mockRestore();
    await log.append(answer('spot:4'));
    expect(log.trouble).toBeNull();
    expect(listOf(await tab())).toEqual(listOf(log));
    expect(listOf(log)).toHaveLength(4);
  });

  it('joins the logs of two phones, and reading the file again changes nothing', async () => {
    const phone = await tab();
    for (const k of [1, 2, 3]) await phone.append(answer(`phone:${k}`, k * 10));
    const backup = { reviews: listOf(phone), quarantined: [quarantined('[7,"later"]')] };
    Object.assign(globalThis, { indexedDB: new IDBFactory() });
    const tablet = await tab();
    await tablet.append(answer('tablet:1', 15));
    expect(await tablet.merge(backup)).toBe(3);
    expect(listOf(tablet).map(({ item }) => item)).toEqual([
      'phone:1',
      'tablet:1',
      'phone:2',
      'phone:3',
    ]);
    const once = listOf(tablet);
    expect(await tablet.merge(backup)).toBe(0);
    expect(listOf(tablet)).toEqual(once);
    expect(tablet.quarantined).toEqual([quarantined('[7,"later"]')]);
    expect(listOf(await tab())).toEqual(once);
  });

  it('takes back its own file after it was erased, in any number of merges', async () => {
    const log = await tab();
    await Promise.all(Array.from({ length: 200 }, (_, k) => log.append(answer(`spot:${k}`, k))));
    const before = listOf(log);
    await log.erase();
    expect(listOf(log)).toEqual([]);
    expect(listOf(await tab())).toEqual([]);
    await log.append(answer('spot:new', 1000));
    for (const from of [100, 0, 50]) {
      await log.merge({ reviews: before.slice(from, from + 100), quarantined: [] });
    }
    expect(listOf(log).slice(0, 200)).toEqual(before);
    expect(listOf(log)).toHaveLength(201);
  });
});

const quarantined = (text: string) => ({ device: 'old', text, flaw: 'newer' as const });

/** The chunks that are on the device. */
async function chunks(): Promise<IDBValidKey[]> {
  const { store, under } = await import('../../src/store/device.ts');
  const { promisifyRequest } = await import('idb-keyval');
  const keys = await store('readonly', (all) => promisifyRequest(all.getAllKeys(under('log'))));
  return keys.map((key) => (key as IDBValidKey[])[2]!);
}

/** Changes a record behind the log's back. */
async function change(key: IDBValidKey, to: (before: unknown) => unknown): Promise<void> {
  const { store, stored } = await import('../../src/store/device.ts');
  const { promisifyRequest } = await import('idb-keyval');
  await store('readwrite', async (all) => {
    all.put(to(await promisifyRequest<unknown>(all.get(key))), key);
    await stored(all);
  });
}
