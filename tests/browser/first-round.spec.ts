/** A beginner's first round, by keys alone on a small phone. */
import { expect, test, type Page } from '@playwright/test';
import { degreeSeen } from './musician.ts';
import {
  answerCards,
  answerOne,
  kept,
  lessonLink,
  newCard,
  next,
  question,
  SMALL,
  startLesson,
  THREE,
  verdict,
} from './people.ts';

test.use({ viewport: { width: 360, height: 640 } });

let small: string;
let mixed: string;
let heard: string;

test.beforeAll(async ({ baseURL }) => {
  small = await lessonLink(SMALL, baseURL!);
  mixed = await lessonLink({ ...SMALL, kinds: ['spot', 'trace'] }, baseURL!);
  heard = await lessonLink({ ...SMALL, kinds: ['trace'] }, baseURL!);
});

/** The item on the screen, and whether it is only shown. */
async function onScreen(page: Page): Promise<{ item: string; isNew: boolean }> {
  const card = page.locator('[data-kind]:not(:has([data-verdict]))');
  await card.waitFor();
  return card.evaluate(({ dataset }: HTMLElement) => ({
    item: dataset.item!,
    isNew: dataset.new !== undefined,
  }));
}

/** Presses Tab until the control has the focus, then Enter. */
async function press(page: Page, selector: string): Promise<void> {
  const control = page.locator(selector);
  for (let presses = 0; presses < 40; presses++) {
    if (await control.evaluate((element) => element === document.activeElement)) {
      await page.keyboard.press('Enter');
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`Forty presses of Tab do not reach ${selector}.`);
}

/** Answers the card that waits, by keys, and goes on. */
async function answerByKeys(page: Page, right: boolean): Promise<void> {
  const degree = Number(degreeSeen((await question(page))!));
  await press(page, `[data-answer="${right ? degree : (degree % 7) + 1}"]`);
  await expect(verdict(page)).toHaveAttribute('data-verdict', right ? 'right' : 'wrong');
  await expect(page.locator('[data-do="next"]')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toHaveCount(0);
}

test('what is new is shown, asked two cards later, and comes again when missed', async ({
  page,
}) => {
  await page.goto(small);
  await press(page, '[data-do="start"]');
  const first = await onScreen(page);
  expect(first.isNew).toBe(true);
  await expect(page.getByText(/A degree is the step of the scale/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^New: /);
  await expect(newCard(page)).toContainText(/stands on the \w+ degree/);
  await expect(newCard(page).locator('[data-dot][data-degree][data-note]')).not.toHaveCount(0);
  await expect(page.locator('[data-do="next"]')).toBeInViewport({ ratio: 1 });

  const seen: { item: string; isNew: boolean }[] = [];
  let hasMissed = false;
  while (seen.length < 12) {
    const now = await onScreen(page);
    seen.push(now);
    if (now.isNew) {
      await expect(page.locator('[data-do="next"]')).toBeFocused();
      await page.keyboard.press('Enter');
      await expect(page.locator(`[data-new][data-item="${now.item}"]`)).toHaveCount(0);
    } else {
      await answerByKeys(page, hasMissed);
      hasMissed = true;
    }
  }
  const places = seen.flatMap(({ item }, i) => (item === first.item ? [i] : []));
  // Shown, asked two cards later and missed, and again after two to four more.
  expect(places[1]).toBe(2);
  expect(places[2]! - places[1]!).toBeGreaterThanOrEqual(3);
  expect(places[2]! - places[1]!).toBeLessThanOrEqual(5);
  for (const [i, { item, isNew }] of seen.entries())
    expect(isNew).toBe(seen.findIndex((one) => one.item === item) === i);
});

test('Show me shows the answer, and counts as not known and taken for nothing', async ({
  page,
}) => {
  await startLesson(page, small);
  const { item } = (await question(page))!;
  await press(page, '[data-do="show"]');
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'wrong');
  await expect(verdict(page)).toContainText('Shown');
  await expect(verdict(page)).not.toContainText(/wrong|, not /i);
  await expect(page.locator('[data-dot][data-note]')).not.toHaveCount(0);
  const log = await kept(page);
  expect(log).toContain(item);
  await page.goto('#/known');
  await expect(page.getByText(/(seen|heard) as/)).toHaveCount(0);
});

test('looking back tells what was shown from what was missed', async ({ page, baseURL }) => {
  await startLesson(page, await lessonLink(THREE, baseURL!));
  for (const does = ['show', 'miss']; await question(page); await next(page)) {
    const what = does.shift();
    if (what === 'show') await page.locator('[data-do="show"]').click();
    else await answerOne(page, what !== 'miss');
    await verdict(page).waitFor();
  }
  await page.getByRole('button', { name: 'Look back over the cards' }).click();
  const cards = page.getByRole('list').getByRole('button');
  await expect(cards.nth(0)).toContainText('shown to you');
  await expect(cards.nth(1)).toContainText('missed');
  await expect(cards.nth(2)).toContainText('right');
  await cards.nth(0).click();
  await expect(page.getByText('It was shown to you')).toBeVisible();
  await expect(verdict(page)).toContainText('Shown:');
});

test('the first card says what to tap on a card of its kind', async ({ page }) => {
  await startLesson(page, heard);
  await expect(newCard(page)).toContainText('tap the path of its degrees');
});

test('a volume of nothing is as muted, and sound can be turned on again', async ({ page }) => {
  await startLesson(page, mixed);
  await onScreen(page);
  await page.goto('#/settings');
  await page.getByLabel('Volume').fill('0');
  await page.goto('#/today');
  await expect(page.getByText(/Without sound: \d+ of \d+\./)).toBeVisible();
  await page.getByRole('button', { name: 'Turn sound on' }).click();
  await expect(page.getByText(/Without sound/)).toHaveCount(0);
  await page.goto('#/settings');
  await expect(page.getByLabel('Volume')).not.toHaveValue('0');
});

test('on a muted phone nothing is asked that must be heard, and Today says so', async ({
  page,
}) => {
  await page.goto(mixed);
  await page.locator('[data-do="start"]').click();
  await page.getByRole('button', { name: 'Mute' }).click();
  const asked = await answerCards(page, 99);
  expect(asked.length).toBeGreaterThanOrEqual(6);
  expect(asked.every(({ kind }) => kind === 'spot')).toBe(true);
  await page.goto('#/today');
  await expect(page.getByText(/Without sound: \d+ of \d+\./)).toBeVisible();
  await page.getByRole('button', { name: 'Turn sound on' }).click();
  await expect(page.getByText(/Without sound/)).toHaveCount(0);
});

test('a card that is heard gives way once the phone is muted, and nothing of it counts', async ({
  page,
}) => {
  await startLesson(page, heard);
  await expect(page.locator('[data-kind="trace"]')).toBeVisible();
  await page.getByRole('button', { name: 'Mute' }).click();
  await expect(page.getByRole('heading', { name: 'Nothing to ask now' })).toBeVisible();
  await expect(page.getByText(/must be heard/)).toBeVisible();
});
