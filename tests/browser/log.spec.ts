import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type BrowserContext, type Page } from '@playwright/test';
import { build } from 'vite';
import type { Answer, Log } from '../../src/store/log.ts';

/** The log in a real browser's storage: its size, two tabs at once, pages that are closed in mid-write. */

const ADDRESS = 'http://localhost:1/log';
let script: string;

test.beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'skipwise-log-'));
  const entry = join(import.meta.dirname, 'log/page.ts');
  await build({
    configFile: false,
    logLevel: 'error',
    build: { outDir: folder, lib: { entry, formats: ['iife'], name: 'unused', fileName: 'page' } },
  });
  script = await readFile(join(folder, 'page.iife.js'), 'utf8');
  await rm(folder, { recursive: true });
});

/** A tab with nothing on it but the log. */
async function openTab(context: BrowserContext): Promise<Page> {
  const tab = await context.newPage();
  await tab.route(ADDRESS, (route) =>
    route.fulfill({ contentType: 'text/html', body: `<script>${script}</script>` }),
  );
  await tab.goto(ADDRESS);
  return tab;
}

const answer: Answer = {
  item: 'spot:Bb major:2:seventh:guitar:4-3-2-1:2-6',
  seed: 4_294_967_295,
  at: 1_790_000_000_000,
  offset: 120,
  right: true,
  takenFor: null,
  ms: 4321,
  sounded: 1200,
  taps: 1,
  hidden: false,
  grade: 3,
};

test('a hundred thousand reviews cost at most 12 MB', async ({ context }) => {
  const tab = await openTab(context);
  await tab.evaluate(async (like) => {
    const log = await window.log.openLog();
    const reviews = Array.from({ length: 99_999 }, (_, k) => ({
      ...like,
      device: log.device,
      n: k + 1,
      item: `spot:Bb major:${(k % 7) + 1}:seventh:guitar:4-3-2-1:${k % 1429}-6`,
      seed: (k * 2_654_435_761) % 2 ** 32,
      at: like.at + k * 61_234,
      ms: 1500 + ((k * 7919) % 6000),
    }));
    await log.merge({ reviews, aside: [] });
    const { device: _, n: __, ...last } = reviews.at(-1)!;
    // What is appended waits until the log is packed.
    await log.append(last);
  }, answer);
  await tab.close();

  const again = await openTab(context);
  const found = await again.evaluate(async () => {
    const times = [];
    for (let k = 0; k < 3; k++) {
      const start = performance.now();
      const log = await window.log.openLog();
      const opened = performance.now();
      window.log.replay(log.reviews);
      times.push({ open: opened - start, replay: performance.now() - opened });
    }
    const log = await window.log.openLog();
    const { usage } = await navigator.storage.estimate();
    const start = performance.now();
    for (let k = 0; k < 100; k++) {
      const { device: _, n: __, ...last } = log.reviews.at(-1)!;
      await log.append(last);
    }
    const append = (performance.now() - start) / 100;
    return { times, append, count: log.reviews.length, usage: usage! };
  });
  console.log('100,000 reviews:', JSON.stringify(found));
  const next = await again.evaluate(async () => {
    const { nextCard, openLog, replay, startRound } = window.log;
    const { reviews } = await openLog();
    const ids = [...new Set(Array.from(reviews, ({ item }) => item))];
    let now = reviews.at(-1)!.at;
    const chosen = (count: number) => {
      const items = ids.slice(0, count).map((id, k) => ({
        id,
        kind: 'spot' as const,
        degree: Number(id.split(':')[2]),
        strings: String(k % 5),
      }));
      const memory = replay(reviews);
      const round = startRound({ deck: '', goal: 'enough', seed: 1, now });
      const taking = (later: number) => {
        now += later;
        const start = performance.now();
        nextCard(round, items, memory, now);
        return performance.now() - start;
      };
      const middle = (later: number) =>
        Array.from({ length: 21 }, () => taking(later)).toSorted((a, b) => a - b)[10];
      return { items: items.length, first: taking(0), next: middle(9000), later: middle(600_000) };
    };
    return [2500, 5000, 10_000].map(chosen);
  });
  console.log('the next of many items, ms:', JSON.stringify(next));
  expect(found.count).toBe(100_100);
  expect(found.usage).toBeLessThan(12e6);
});

test('two tabs that answer at once lose nothing and agree afterwards', async ({ context }) => {
  const tabs = [await openTab(context), await openTab(context)];
  const answerFifty = (tab: Page, name: string) =>
    tab.evaluate(
      async ([like, item]) => {
        const log = await window.log.openLog();
        Object.assign(window, { opened: log });
        for (let k = 0; k < 50; k++) await log.append({ ...like, item: `${item}:${k}` });
      },
      [answer, name] as const,
    );
  await Promise.all(tabs.map((tab, k) => answerFifty(tab, `spot:${k}`)));
  const seen = (tab: Page) =>
    tab.evaluate(() => {
      const { opened } = window as unknown as {
        opened: Log;
      };
      return Array.from(opened.reviews, ({ n, item }) => `${n} ${item}`);
    });
  await expect.poll(async () => (await seen(tabs[0]!)).length).toBe(100);
  await expect.poll(() => seen(tabs[1]!)).toEqual(await seen(tabs[0]!));
  expect(new Set((await seen(tabs[0]!)).map((line) => line.split(' ')[0])).size).toBe(100);
});

test('a page closed at any moment keeps every answer that it had told of', async ({ context }) => {
  const told: number[] = [];
  await context.exposeFunction('told', (n: number) => void told.push(n));
  for (let closing = 0; closing < 12; closing++) {
    const tab = await openTab(context);
    const before = told.length;
    tab
      .evaluate(async (like) => {
        const log = await window.log.openLog();
        for (;;) window.told((await log.append(like)).n);
      }, answer)
      .catch(() => {
        // The page is closed under it: that is the point.
      });
    const answers = 1 + ((closing * 7) % 15);
    await expect.poll(() => told.length - before, { intervals: [1] }).toBeGreaterThan(answers);
    await tab.close();
  }
  const tab = await openTab(context);
  const stored = await tab.evaluate(async () => {
    const log = await window.log.openLog();
    return { counts: Array.from(log.reviews, ({ n }) => n), aside: log.aside.length };
  });
  expect(told.length).toBeGreaterThan(100);
  expect(told.filter((n) => !stored.counts.includes(n))).toEqual([]);
  expect(stored.counts).toEqual(stored.counts.map((_, k) => k + 1));
  expect(stored.aside).toBe(0);
});
