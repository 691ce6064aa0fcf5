/** Days as the phone's own clock has them: on the nights when clocks are changed, and where a phone has travelled. */
import { readFile } from 'node:fs/promises';
import { expect, test, type BrowserContext, type Page } from '@playwright/test';
import ICAL from 'ical.js';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { answerCards, kept, linkIn, question, reloadKept } from './people.ts';

/** A night on which clocks are changed, from the tz database (IANA, 2025b), and a lesson five days on. */
interface Night {
  readonly zone: string;
  readonly what: string;
  /** Late in the evening before, and in the small hours after, as clocks there show them. */
  readonly evening: string;
  readonly night: string;
  readonly morning: string;
  readonly lessonDay: string;
  readonly weekday: string;
}

const NIGHTS: readonly Night[] = [
  {
    zone: 'America/St_Johns',
    what: 'forward at two',
    evening: '2027-03-13T23:40:00-03:30',
    night: '2027-03-14T03:10:00-02:30',
    morning: '2027-03-14T09:00:00-02:30',
    lessonDay: '2027-03-18',
    weekday: 'Thursday',
  },
  {
    zone: 'Pacific/Auckland',
    what: 'back at three',
    evening: '2027-04-03T23:40:00+13:00',
    night: '2027-04-04T03:10:00+12:00',
    morning: '2027-04-04T09:00:00+12:00',
    lessonDay: '2027-04-08',
    weekday: 'Thursday',
  },
  {
    zone: 'America/Santiago',
    what: 'forward at midnight, which there is not',
    evening: '2027-09-04T23:40:00-04:00',
    night: '2027-09-05T01:10:00-03:00',
    morning: '2027-09-05T09:00:00-03:00',
    lessonDay: '2027-09-09',
    weekday: 'Thursday',
  },
];

/** The link of a small lesson before a day. */
async function lessonBefore(lessonDay: string, base: string): Promise<string> {
  const read = readDeck({
    version: 1,
    title: 'Tuesday, quay side',
    lessonDay,
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 7] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, base);
}

/** A page on a phone in a zone, its clock set; what goes wrong in it is collected. */
async function phoneIn(context: BrowserContext, at: string) {
  const page = await context.newPage();
  const thrown: string[] = [];
  page.on('pageerror', ({ message }) => thrown.push(message));
  await page.clock.install({ time: new Date(at) });
  return { page, thrown };
}

async function today(page: Page, at: string): Promise<void> {
  await page.clock.setSystemTime(new Date(at));
  await reloadKept(page);
  await page.goto('#/today');
  await expect(page.getByText('asked so far')).toBeVisible();
}

/** The days that the calendar's file has, as another library unfolds them, and what the screen says of them. */
async function practiceDays(page: Page) {
  await page.goto('#/calendar');
  const said = await page.getByText(/^\d+ days? until the lesson on /).textContent();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the calendar file' }).click();
  const text = await readFile(await (await saving).path(), 'utf8');
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const event = new ICAL.Event(calendar.getAllSubcomponents('vevent')[0]!);
  const days: string[] = [];
  const all = event.iterator();
  for (let next = all.next(); next; next = all.next()) days.push(next.toString());
  return { said: said!, days };
}

/** So many days before a day, the earliest first, at six in the evening. */
const daysBefore = (day: string, count: number) =>
  Array.from({ length: count }, (_, k) => {
    const date = new Date(`${day}T18:00:00Z`);
    date.setUTCDate(date.getUTCDate() - count + k);
    return date.toISOString().slice(0, 19);
  });

for (const { zone, what, evening, night, morning, lessonDay, weekday } of NIGHTS) {
  test.describe(`in ${zone}, where clocks go ${what},`, () => {
    test.use({ timezoneId: zone });

    test('days until the lesson, days of practice and tomorrow are those of the clock on the wall', async ({
      context,
      baseURL,
    }) => {
      const { page, thrown } = await phoneIn(context, evening);
      await page.goto(await lessonBefore(lessonDay, baseURL!));
      await page.getByRole('button', { name: 'Keep for later' }).click();
      const head = page.locator('header .label');
      await expect(head).toHaveText(`For ${weekday} · five days left`);
      expect(await practiceDays(page)).toEqual({
        said: `4 days until the lesson on ${weekday}.`,
        days: daysBefore(lessonDay, 4),
      });
      await page.goto('#/today');
      await page.locator('[data-do="start"]').click();
      await answerCards(page, 2);

      // Until four it is still the evening's practice, but the day's date is the next.
      await today(page, night);
      await expect(head).toHaveText(`For ${weekday} · four days left`);
      await expect(page.getByText('2 of 7 asked so far')).toBeVisible();
      expect(await practiceDays(page)).toEqual({
        said: `4 days until the lesson on ${weekday}.`,
        days: daysBefore(lessonDay, 4),
      });
      await page.goto('#/today');
      await page.locator('[data-do="start"]').click();
      await answerCards(page, 1);
      await expect(await practisedDays(page)).toBe(1);

      await today(page, morning);
      await expect(head).toHaveText(`For ${weekday} · four days left`);
      await page.locator('[data-do="start"]').click();
      await answerCards(page, 1);
      await expect(await practisedDays(page)).toBe(2);
      expect(thrown).toEqual([]);
    });
  });
}

/** How many of the last days a report tells practice of. */
async function practisedDays(page: Page): Promise<number> {
  await page.goto('#/send');
  const link = await linkIn(page.getByLabel('The report’s link'));
  await page.goto(link);
  const said = await page.getByText(/^\d+ of the last 28 days/).textContent();
  return Number.parseInt(said!);
}

test('a phone that flies across the date line keeps its answers, and its days are those of where it is', async ({
  browser,
  baseURL,
}) => {
  const there = await browser.newContext({ baseURL: baseURL!, timezoneId: 'Pacific/Auckland' });
  const { page, thrown } = await phoneIn(there, '2027-06-10T09:00:00+12:00');
  await page.goto(await lessonBefore('2027-06-12', baseURL!));
  await page.locator('[data-do="start"]').click();
  await answerCards(page, 3);
  await page.goto('#/today');
  await expect(page.locator('header .label')).toHaveText('For Saturday · two days left');
  await kept(page);
  const storageState = await there.storageState({ indexedDB: true });
  await there.close();

  // Twenty hours later it is still the tenth.
  const here = await browser.newContext({
    baseURL: baseURL!,
    timezoneId: 'America/St_Johns',
    storageState,
  });
  const landed = await phoneIn(here, '2027-06-10T14:30:00-02:30');
  await landed.page.goto('#/today');
  await expect(landed.page.locator('header .label')).toHaveText('For Saturday · two days left');
  await expect(landed.page.getByText('3 of 7 asked so far')).toBeVisible();
  await expect(landed.page.locator('.ready .figure')).toContainText(/^(\d\d?|100) %/);
  await landed.page.locator('[data-do="start"]').click();
  expect(await question(landed.page)).not.toBeNull();
  await answerCards(landed.page, 1);
  expect(await practisedDays(landed.page)).toBe(1);
  expect([...thrown, ...landed.thrown]).toEqual([]);
  await here.close();
});
