import { expect, test } from '@playwright/test';
import { answer, openTab } from './log/tab.ts';

/** A log of a hundred thousand reviews: what it costs, and how long it takes to open it and to choose from it. */

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
    await log.merge({ reviews, quarantined: [] });
    // What is appended waits until the log is packed.
    await log.append({ ...like, at: reviews.at(-1)!.at });
  }, answer);
  await tab.close();

  for (let opening = 0; opening < 5; opening++) {
    const cold = await openTab(context);
    const times = await cold.evaluate(async () => {
      const start = performance.now();
      const { reviews } = await window.log.openLog();
      const opened = performance.now();
      window.log.replay(reviews);
      return { open: opened - start, replay: performance.now() - opened, count: reviews.length };
    });
    console.log('100,000 reviews in a new tab, ms:', JSON.stringify(times));
    expect(times.count).toBe(100_000);
    await cold.close();
  }

  const again = await openTab(context);
  const append = await again.evaluate(async (like) => {
    const log = await window.log.openLog();
    const start = performance.now();
    for (let k = 0; k < 100; k++) await log.append({ ...like, at: log.reviews.at(-1)!.at });
    return (performance.now() - start) / 100;
  }, answer);
  const { usage } = await again.evaluate(() => navigator.storage.estimate());
  console.log('each of 100 more, ms:', append, 'and in the store, bytes:', usage);
  expect(usage).toBeLessThan(12e6);

  const next = await again.evaluate(async () => {
    const { nextCard, openLog, replay, startRound } = window.log;
    const { reviews } = await openLog();
    const ids = [...new Set(Array.from(reviews, ({ item }) => item))];
    let now = reviews.at(-1)!.at;
    const chosen = (count: number) => {
      const items = ids.slice(0, count).map((id, k) => ({
        id,
        kind: 'spot' as const,
        key: { tonic: 'Bb', scale: 'major' as const },
        size: 'triad' as const,
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
});
