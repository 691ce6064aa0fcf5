import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import {
  answerCards,
  faults,
  lessonLink,
  phraseLesson,
  question,
  reloadKept,
  roundEnd,
  SMALL,
  startLesson,
  THREE,
} from './people.ts';

/** What is kept, and what is said of it; and what a phone lends the page where it can. */

let small: string;

test.beforeAll(async ({ baseURL }) => {
  small = await lessonLink({ ...SMALL, title: 'Monday, seven steps' }, baseURL!);
});

/** Has the device answer so about keeping the data, now and once it is asked. */
const answering = (page: Page, now: boolean, asked: boolean) =>
  page.addInitScript(
    (answers) => {
      const { storage } = navigator;
      storage.persisted = () => Promise.resolve(answers.now);
      storage.persist = () => Promise.resolve((answers.now = answers.asked));
    },
    { now, asked },
  );

test.describe('what the device answered about keeping the data', () => {
  test('is said, and it can be asked', async ({ page }) => {
    await answering(page, false, true);
    await page.goto('#/settings');
    await expect(page.getByText(/^This device has not agreed to keep/)).toBeVisible();
    await page.getByRole('button', { name: 'Ask the device to keep it' }).click();
    await expect(page.getByText(/^This device has agreed to keep/)).toBeVisible();
    await expect(page.getByRole('button', { name: 'Ask the device to keep it' })).toHaveCount(0);
  });

  test('is said where it was asked and has not agreed', async ({ page }) => {
    await answering(page, false, false);
    await page.goto('#/settings');
    await page.getByRole('button', { name: 'Ask the device to keep it' }).click();
    await expect(page.getByText(/^Asked, the device has not agreed/)).toBeVisible();
  });

  test('is said of an iPhone’s tab too, which keeps it for a week', async ({ page }) => {
    await page.addInitScript(() =>
      Object.defineProperty(navigator, 'standalone', { value: false }),
    );
    await page.goto('#/settings');
    await expect(page.getByText(/tab for a week without a visit/)).toBeVisible();
  });

  test('is not said of a browser that has no home screen of that sort', async ({ page }) => {
    await page.goto('#/settings');
    await expect(page.getByText(/on this device, and nowhere else/)).toBeVisible();
    await expect(page.getByText(/iPhone/)).toHaveCount(0);
  });
});

test('the notices of the libraries that the page is made with lie a tap away', async ({ page }) => {
  await page.goto('#/settings');
  await page.getByRole('link', { name: /^Notices of the libraries/ }).click();
  for (const name of ['preact', 'tone', 'workbox-core', 'tslib']) {
    await expect(page.getByText(name).first()).toBeVisible();
  }
});

test.describe('that it is kept for offline', () => {
  test.use({ serviceWorkers: 'allow' });

  test('is told once, with a screen that comes, and never again', async ({ page }) => {
    await page.goto('');
    const told = page.getByText('Kept for offline');
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
    await expect(page.getByRole('heading').first()).toBeVisible();
    await expect(told).toHaveCount(0);
    await page.getByRole('link', { name: 'Lessons', exact: true }).click();
    await expect(told).toBeVisible();
    expect(await faults(page)).toEqual([]);
    await page.getByRole('link', { name: 'Neck', exact: true }).click();
    await expect(told).toHaveCount(0);
    await reloadKept(page);
    await page.getByRole('link', { name: 'Lessons', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Lessons' })).toBeVisible();
    await expect(told).toHaveCount(0);
  });
});

test('that it can be put on the home screen is told once, after the second round', async ({
  page,
  baseURL,
}) => {
  const offer = () =>
    page.evaluate(() => {
      const event = new Event('beforeinstallprompt', { cancelable: true });
      Object.assign(window, { prompted: 0 });
      Object.assign(event, {
        prompt: async () => void (window as unknown as { prompted: number }).prompted++,
      });
      return dispatchEvent(event);
    });
  const hint = page.getByRole('region', { name: 'On your home screen' });
  await page.goto('');
  await expect(page.getByRole('heading').first()).toBeVisible();
  // The browser's own banner does not come.
  expect(await offer()).toBe(false);
  await startLesson(page, await lessonLink(THREE, baseURL!));
  await answerCards(page, 99);
  await expect(roundEnd(page)).toBeVisible();
  await expect(hint).toHaveCount(0);

  await page.locator('[data-do="start"]').click();
  await answerCards(page, 99);
  await expect(hint).toBeVisible();
  await hint.getByRole('button', { name: 'Put it there' }).click();
  expect(await page.evaluate(() => (window as unknown as { prompted: number }).prompted)).toBe(1);
  await expect(hint).toHaveCount(0);

  await offer();
  await page.locator('[data-do="start"]').click();
  await answerCards(page, 99);
  await expect(page.getByRole('button', { name: 'Back to today' })).toBeVisible();
  await expect(hint).toHaveCount(0);
});

test.describe('the screen stays awake', () => {
  /** How many locks are held; the browser takes them away from a page that is hidden. */
  const held = (page: Page) =>
    page.evaluate(() => (window as unknown as { locks: Set<unknown> }).locks.size);

  test.beforeEach(({ page }) =>
    page.addInitScript(() => {
      const locks = new Set<unknown>();
      const request = async () => {
        const lock = Object.assign(new EventTarget(), {
          released: false,
          release: async () => {
            lock.released = true;
            locks.delete(lock);
          },
        });
        locks.add(lock);
        return lock;
      };
      Object.assign(window, { locks });
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    }),
  );

  test('while a round with sound runs, and no longer', async ({ page }) => {
    await startLesson(page, small);
    await question(page);
    await expect.poll(() => held(page)).toBe(1);
    await page.getByRole('button', { name: 'Mute' }).click();
    await expect.poll(() => held(page)).toBe(0);
    await page.getByRole('button', { name: 'Mute' }).click();
    await expect.poll(() => held(page)).toBe(1);
    await page.getByRole('button', { name: 'Leave the round' }).click();
    await expect.poll(() => held(page)).toBe(0);
  });

  test('while a phrase plays, and no longer', async ({ page, baseURL }) => {
    await page.goto(await phraseLesson(['outline'], baseURL!));
    await page.getByRole('button', { name: 'Keep for later' }).click();
    await page.getByRole('link', { name: /^The phrase of this lesson/ }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => held(page)).toBe(1);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await expect.poll(() => held(page)).toBe(0);
  });
});

test('the days of practice until the lesson go into a calendar, at a time that is chosen', async ({
  page,
  baseURL,
}) => {
  await page.clock.install({ time: new Date('2026-11-29T12:00:00') });
  const lesson = { ...SMALL, title: 'Tuesday, quay side', lessonDay: '2026-12-08' };
  await page.goto(await lessonLink(lesson, baseURL!));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.getByRole('link', { name: 'Practice days for your calendar' }).click();
  await page.getByLabel('Time of the day').fill('07:05');
  for (const day of ['Sat', 'Sun']) await page.getByRole('checkbox', { name: day }).uncheck();
  await expect(page.getByText('6 days until the lesson on Tuesday 8 December.')).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the calendar file' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('practice.ics');
  const file = await readFile(await saved.path(), 'utf8');
  expect(file).toContain('DTSTART:20261130T070500\r\n');
  expect(file).toContain('RRULE:FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR;COUNT=6\r\n');
  expect(file).toContain('SUMMARY:Practise: Tuesday\\, quay side\r\n');
  for (const day of ['Mon', 'Tue', 'Wed', 'Thu', 'Fri'])
    await page.getByRole('checkbox', { name: day }).uncheck();
  await expect(page.getByText('No such day is left before the lesson.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save the calendar file' })).toBeDisabled();
});
