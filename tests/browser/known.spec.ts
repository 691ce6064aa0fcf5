import { expect, test, type Page } from '@playwright/test';
import { axeOn, lessonLink, writeAnswers, type Answer, type Wishes } from './people.ts';

const DAY = 86_400_000;
const START = Date.UTC(2026, 10, 2, 18);

const LESSON: Wishes = {
  tonic: 'B♭',
  chords: ['triads'],
  strings: ['5–4', '4–3'],
  frets: [1, 9],
  title: 'Tuesday: along the quay',
  lessonDay: '2026-11-17',
};

const spot = (degree: number, strings = '5-4') =>
  `spot:Bb major:${degree}:triad:guitar:${strings}:1-7`;

const ANSWERS: readonly Answer[] = [
  ...[1, 3, 4, 5, 6].map((degree): Answer => [0, spot(degree), null]),
  ...[0, 1, 2].map((day): Answer => [day, spot(2), '4']),
  [2, 'trace:Bb major:5:triad:guitar:up:72', '3 5 7'],
  [3, spot(1), null],
];

/** A student who took the lesson on a Monday, gave these answers, and looks on a day after. */
async function student(page: Page, answers: readonly Answer[], today: number): Promise<void> {
  await page.clock.setFixedTime(START);
  await page.goto(await lessonLink(LESSON, test.info().project.use.baseURL!));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(page.getByText('0 of')).toBeVisible();
  await writeAnswers(page, answers, START);
  await page.clock.setFixedTime(START + today * DAY);
  await page.reload();
  await expect(page.getByRole('heading', { name: LESSON.title! })).toBeVisible();
}

const look = async (page: Page) => {
  await page.getByRole('link', { name: 'Look closer' }).click();
  await expect(page.getByRole('heading', { name: 'What you know' })).toBeVisible();
};
const section = (page: Page, name: string) =>
  page.locator('section').filter({ has: page.getByRole('heading', { name }) });
const dots = (page: Page) => page.locator('[data-tuning] [data-dot]');

test('before anything was asked there is a sentence and no picture', async ({ page }) => {
  await page.goto('#/known');
  await expect(page.getByText('There is no lesson here yet.')).toBeVisible();
  await student(page, [], 0);
  await expect(page.getByRole('link', { name: 'Look closer' })).toHaveCount(0);
  await page.goto('#/known');
  await expect(page.getByText('Nothing was asked here yet.')).toBeVisible();
  await expect(page.locator('section')).toHaveCount(0);
});

test('on the first day what needs more to be told is a sentence', async ({ page }) => {
  await student(page, [[0, spot(1), null]], 0);
  await look(page);
  await expect(section(page, 'Over the weeks')).toContainText('From tomorrow on');
  await expect(section(page, 'How fast')).toContainText('After a few more right answers');
  await expect(section(page, 'Taken for another')).toContainText(
    'no arpeggio was taken for another',
  );
  await expect(page.getByRole('link', { name: 'Today' })).toHaveAttribute('aria-current', 'page');
});

test.describe('after some days', () => {
  test.beforeEach(async ({ page }) => {
    await student(page, ANSWERS, 5);
    await look(page);
  });

  test('the neck is as full as each place is known, and steps, strings and frets choose what it shows', async ({
    page,
  }) => {
    await expect(dots(page)).not.toHaveCount(0);
    const all = await dots(page).count();
    // F on string 4 is in I, iii and V, all of which were answered on strings 5–4.
    const place = page.locator('[data-string="4"][data-fret="3"]');
    await expect(place).toHaveAccessibleName(/string 4, fret 3, .*\d+ percent known/);

    const neck = section(page, 'Where you know it');
    await neck.getByRole('button', { name: /^vii°/ }).click();
    await expect.poll(() => dots(page).count()).toBeLessThan(all);
    for (const dot of await dots(page).all())
      await expect(dot).toHaveAccessibleName(/not asked yet/);

    await neck.getByRole('button', { name: /^vii°/ }).click();
    await neck.getByRole('button', { name: 'strings 4–3' }).click();
    await expect(page.locator('[data-string="5"][data-dot]')).toHaveCount(0);
    await neck.getByRole('button', { name: 'strings 4–3' }).click();
    await expect(dots(page)).toHaveCount(all);
  });

  test('pairs say what was taken for what, and sound one after the other', async ({ page }) => {
    const pairs = section(page, 'Taken for another');
    const buttons = pairs.locator('[data-do="hear"]');
    await expect(buttons).toHaveText([/ii seen as IV, 3 times/, /V heard as iii, once/]);
    await buttons.first().click();
    await expect(pairs.locator('path.pale')).toHaveCount(1);
    await pairs.getByText('As a table').click();
    await expect(pairs.getByRole('row', { name: 'ii IV seen 3' })).toBeVisible();
  });

  test('every day since the first has its point, in the picture’s table too', async ({ page }) => {
    const weeks = section(page, 'Over the weeks');
    await expect(weeks.getByRole('img')).toHaveAccessibleName(/on 2 November, \d+ % today/);
    await weeks.getByText('As a table').click();
    await expect(weeks.getByRole('rowheader')).toHaveText([
      '2 November',
      '3 November',
      '4 November',
      '5 November',
      '6 November',
      'today',
    ]);
  });

  test('on lesson day less would be known than now if nothing more were asked', async ({
    page,
  }) => {
    const ready = section(page, 'How ready');
    const figure = async () => parseInt(await ready.locator('strong').innerText(), 10);
    const now = await figure();
    await ready.getByLabel('on lesson day').check();
    await expect(ready).toContainText('on Tuesday 17 November if nothing more were asked');
    expect(await figure()).toBeLessThan(now);
  });

  test('everything asked in the key is another, fuller picture than the lesson', async ({
    page,
  }) => {
    const overall = section(page, 'How ready').locator('strong');
    const lesson = parseInt(await overall.innerText(), 10);
    await page.getByLabel('all of B♭ major').check();
    await expect(section(page, 'How ready')).toContainText('7 of 7 asked so far');
    expect(parseInt(await overall.innerText(), 10)).toBeGreaterThan(lesson);
  });

  for (const scheme of ['light', 'dark'] as const) {
    test(`nothing is out of reach or of the screen, ${scheme}, at twice the text size too`, async ({
      page,
    }) => {
      await page.emulateMedia({ colorScheme: scheme });
      for (const table of await page.getByText('As a table').all()) await table.click();
      expect((await axeOn(page).analyze()).violations).toEqual([]);
      for (const [width, height, size] of [
        [360, 640, '100%'],
        [640, 360, '100%'],
        [360, 640, '200%'],
      ] as const) {
        await page.setViewportSize({ width, height });
        await page.evaluate((text) => (document.documentElement.style.fontSize = text), size);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      }
    });
  }
});
