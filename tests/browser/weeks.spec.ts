/** Eight weeks of a student with one teacher, day by day, by a clock that is set. */
import { expect, test, type Page } from '@playwright/test';
import { itemsOf } from '../../src/cards/index.ts';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { dice, type Question } from './musician.ts';
import { answersKept, answerTo, give, judged, kept, linkIn, next, question } from './people.ts';

// Clocks go back in the fourth week.
test.use({ timezoneId: 'Europe/Berlin', serviceWorkers: 'allow' });

const FIRST_MONDAY = '2026-10-05';
const WEEKS = 8;
/** Days of the week with practice, from Monday, and how many cards on each. */
const DAYS = [0, 2, 5];
const CARDS = 3;

/** The link of a lesson on a string set, and how many items it has. */
async function lessonOf(title: string, strings: string, base: string) {
  const read = readDeck({
    version: 1,
    title,
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: [strings], frets: [1, 7] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  return { link: await deckLink(read.deck, base), items: itemsOf(read.deck).length };
}

/** Half past six in the evening of a day, counted from the first, as the student's own clock has it. */
function eveningOf(day: number): Date {
  const date = new Date(`${FIRST_MONDAY}T17:30:00Z`);
  date.setUTCDate(date.getUTCDate() + day);
  return date;
}

/** Answers so many cards of a round, one in four wrong, and leaves it. */
async function practise(page: Page, pick: ReturnType<typeof dice>): Promise<Question[]> {
  await page.locator('[data-do="start"]').click();
  const asked: Question[] = [];
  while (asked.length < CARDS) {
    const one = await question(page);
    if (!one) break;
    asked.push(one);
    await page.clock.fastForward(2500);
    await give(page, answerTo(one, pick([true, true, true, false]), pick));
    // Half a second from the answer to the verdict.
    await page.clock.fastForward(600);
    await judged(page);
    await next(page);
  }
  return asked;
}

/** The figures of Today: what is known, and how many were asked of how many. */
async function figures(page: Page) {
  await page.goto('#/today');
  const [asked, of] = (await page.getByText('asked so far').innerText()).match(/\d+/g)!.map(Number);
  const known = await page.locator('.ready .figure').innerText();
  const percents = (known.match(/\d+(?= %)/g) ?? []).map(Number);
  return { asked: asked!, of: of!, percents };
}

/** Opens a report as a teacher would. Gives how many answers it tells of, and how many days of practice. */
async function report(student: Page, teacher: Page) {
  await student.goto('#/send');
  const link = await linkIn(student.getByLabel('The report’s link'));
  // The report before is on the screen until the new one is read.
  await teacher.goto('about:blank');
  await teacher.goto(link);
  const days = await teacher.getByText(/^\d+ of the last 28 days/).innerText();
  const answers = await teacher.getByText(/^(?:.*\s)?\d+ answers? on this lesson/).innerText();
  return {
    days: Number.parseInt(days),
    answers: Number(/(\d+) answers? on this lesson/.exec(answers)![1]),
  };
}

test('a student practises for eight weeks, on two lessons, with and without net, and nothing is lost or said that is not so', async ({
  page,
  context,
  browser,
  baseURL,
}) => {
  test.setTimeout(120_000);
  const thrown: string[] = [];
  page.on('pageerror', ({ message }) => thrown.push(message));
  page.on('console', (message) => {
    if (message.type() === 'error') thrown.push(message.text());
  });
  await page.clock.install({ time: eveningOf(0) });
  const elsewhere = await browser.newContext({ baseURL: baseURL!, timezoneId: 'Europe/Berlin' });
  const teacher = await elsewhere.newPage();
  await teacher.clock.install({ time: eveningOf(0) });
  const lessons = [
    await lessonOf('Low tide', '5-4', baseURL!),
    await lessonOf('High tide', '3-2', baseURL!),
  ];
  for (const { link } of lessons) {
    await teacher.goto(link);
    await teacher.getByRole('button', { name: 'Keep for later' }).click();
  }

  const pick = dice(8);
  /** Every card that was answered, by the lesson it was of. */
  const asked: Question[][] = [[], []];
  let lesson = 0;
  await page.goto(lessons[0]!.link);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
  for (let week = 0; week < WEEKS; week++) {
    if (week === 3) {
      lesson = 1;
      await page.goto(lessons[1]!.link);
      await page.getByRole('button', { name: 'Keep for later' }).click();
    }
    for (const day of DAYS) {
      await page.clock.setSystemTime(eveningOf(7 * week + day));
      // On Wednesdays there is no net, and the page is loaded anew without it.
      await context.setOffline(day === 2);
      if (day !== 0) {
        await kept(page);
        await page.reload();
      }
      await page.goto('#/today');
      asked[lesson]!.push(...(await practise(page, pick)));
      const now = await figures(page);
      const seen = new Set(asked[lesson]!.map(({ item }) => item)).size;
      expect(now).toMatchObject({ asked: seen, of: lessons[lesson]!.items });
      expect(now.percents.length).toBeGreaterThan(0);
      for (const percent of now.percents) {
        expect(percent).toBeGreaterThanOrEqual(0);
        expect(percent).toBeLessThanOrEqual(100);
      }
    }
    await context.setOffline(false);
    if (![1, 5, 7].includes(week)) continue;
    await teacher.clock.setSystemTime(eveningOf(7 * week + 6));
    const told = await report(page, teacher);
    expect(told.answers).toBe(asked[lesson]!.length);
    expect(told.days).toBe(Math.min(4, week + 1) * DAYS.length);
    await page.goto('#/today');
  }

  await page.goto('#/known');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const all = asked.flat();
  expect(all.length).toBeGreaterThan(60);
  await page.goto('#/settings');
  await expect(page.getByText(/^\d+ answers? on this device/)).toHaveText(
    new RegExp(`^${all.length} answers on this device`),
  );
  const lines = linesOf(await answersKept(page));
  expect(lines.map(({ item, seed }) => `${item} ${seed}`)).toEqual(
    all.map(({ item, seed }) => `${item} ${seed}`),
  );
  expect(lines.map(({ n }) => n)).toEqual(all.map((_, k) => k + 1));
  expect(thrown).toEqual([]);
  await elsewhere.close();
});

/** The answers of the log, in the order in which they were given. */
function linesOf(text: string) {
  const chunks = JSON.parse(text) as string[];
  return chunks
    .flatMap((chunk) => chunk.split('\n'))
    .map((line) => JSON.parse(line) as unknown[])
    .map(([, n, item, seed]) => ({ n: Number(n), item, seed }))
    .toSorted((a, b) => a.n - b.n);
}
