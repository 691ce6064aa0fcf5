import { expect, test, type Page } from '@playwright/test';
import type { Log } from '../../src/store/log.ts';
import { answer, openTab } from './log/tab.ts';

/** The log in a real browser's storage: two tabs at once, pages that are closed in mid-write. */

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
    return { counts: Array.from(log.reviews, ({ n }) => n), quarantined: log.quarantined.length };
  });
  expect(told.length).toBeGreaterThan(100);
  expect(told.filter((n) => !stored.counts.includes(n))).toEqual([]);
  expect(stored.counts).toEqual(stored.counts.map((_, k) => k + 1));
  expect(stored.quarantined).toBe(0);
});
