/** What a student reads where the browser has taken a part of what it kept: the answers, or the app's own files. */
import { expect, test, type Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { openHost, type Host } from './host.ts';
import {
  answerCards,
  answerOne,
  answersKept,
  askedSoFar,
  kept,
  question,
  startLesson,
  verdict,
} from './people.ts';

test.use({ serviceWorkers: 'allow' });

let host: Host;
let lesson: string;
let thrown: string[];

test.beforeEach(async ({ page }) => {
  host = await openHost();
  const read = readDeck({
    version: 1,
    title: 'Monday, seven steps',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 7] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  lesson = await deckLink(read.deck, host.url);
  thrown = [];
  page.on('pageerror', ({ message }) => thrown.push(message));
});

test.afterEach(async () => {
  expect(thrown).toEqual([]);
  await host.close();
});

/** Has the browser take all of a sort, as it does when it needs room, whoever has it open. */
async function evict(page: Page, what: 'indexeddb' | 'cache_storage'): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const origin = new URL(host.url).origin;
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: what });
  await session.detach();
}

/** Waits until the worker has every file. */
async function isKeptOffline(page: Page): Promise<void> {
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
}

const answersHere = (page: Page) => page.getByText(/^\d+ answers? on this device/);

test('answers that were taken between two visits are told of nowhere, and a first visit begins', async ({
  page,
}) => {
  await startLesson(page, lesson);
  await answerCards(page, 3);
  await isKeptOffline(page);
  await page.goto(`${host.url}#/today`);
  await expect(askedSoFar(page)).toContainText('3 of 7 asked so far');
  await kept(page);
  await page.goto('about:blank');
  await evict(page, 'indexeddb');

  await page.goto(`${host.url}#/today`);
  await expect(page.getByText('I have a link')).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  for (const screen of ['known', 'send', 'calendar', 'lessons', 'settings']) {
    await page.goto(`${host.url}#/${screen}`);
    await expect(page.locator('main h1').first()).toBeVisible();
    await expect(page.getByText('Monday, seven steps')).toHaveCount(0);
    await expect(page.getByRole('alert')).toHaveCount(0);
  }
  await expect(answersHere(page)).toHaveText(/^0 answers/);

  // The lesson's link brings it back, with nothing asked yet; what is answered now is kept, offline too.
  await host.fallSilent();
  await startLesson(page, lesson);
  await answerCards(page, 1);
  await page.goto(`${host.url}#/today`);
  await page.reload();
  await expect(askedSoFar(page)).toContainText('1 of 7 asked so far');
});

test('answers that are taken in mid-round are not said to be here, and those given from then on are kept', async ({
  page,
}) => {
  await startLesson(page, lesson);
  await answerCards(page, 2);
  const open = (await question(page))!;
  await kept(page);
  await evict(page, 'indexeddb');
  await answerOne(page);
  await expect(verdict(page)).toBeVisible();
  // It is on the device before its verdict is shown, or it is said that it is not.
  expect(await answersKept(page)).toContain(open.item);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.locator('[data-do="next"]').click();
  await answerCards(page, 1);
  await kept(page);
  await page.reload();
  await page.goto(`${host.url}#/settings`);
  await expect(answersHere(page)).toHaveText(/^2 answers/);
});

test('files of the app that were taken are fetched anew, and every answer is there', async ({
  page,
}) => {
  await startLesson(page, lesson);
  await answerCards(page, 3);
  await isKeptOffline(page);
  await kept(page);
  await page.goto('about:blank');
  await evict(page, 'cache_storage');

  await page.goto(`${host.url}#/today`);
  await expect(askedSoFar(page)).toContainText('3 of 7 asked so far');
  await page.locator('[data-do="start"]').click();
  await answerCards(page, 1);
  await expect(page.getByRole('alert')).toHaveCount(0);
  const isWhole = () =>
    page.evaluate(async () => {
      const names = await caches.keys();
      const counts = names.map(async (name) => (await (await caches.open(name)).keys()).length);
      return Math.max(0, ...(await Promise.all(counts))) > 20;
    });
  await expect.poll(isWhole, { timeout: 20_000 }).toBe(true);
  await host.fallSilent();
  await page.goto(`${host.url}#/today`);
  await page.reload();
  await expect(askedSoFar(page)).toContainText('4 of 7 asked so far');
});
