/** What a working student finds on Today, at a round's end and on looking back. */
import { expect, test, type Page } from '@playwright/test';
import { itemsOf } from '../../src/cards/index.ts';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { answerCards, countSounds, kept, roundEnd, writeAnswers, type Answer } from './people.ts';

const DAY = 86_400_000;

const read = readDeck({
  version: 2,
  title: 'Tuesday: along the quay',
  note: '',
  key: 'Bb major',
  drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 7] }],
});
if ('fault' in read) throw new Error(read.fault);
const { deck } = read;

/** Right answers to some of the items on each of these days, counted from the first. */
const answers = (days: readonly number[], count: number): Answer[] =>
  days.flatMap((day) =>
    itemsOf(deck)
      .slice(0, count)
      .map(({ id }): Answer => [day, id, null]),
  );

/** A student who gave these answers, the last of them today. */
async function student(page: Page, base: string, given: readonly Answer[]): Promise<void> {
  await page.goto(await deckLink(deck, base));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(page.getByText('asked so far')).toBeVisible();
  const last = Math.max(...given.map(([day]) => day));
  await writeAnswers(page, given, Date.now() - last * DAY - 600_000);
  await page.reload();
  await expect(page.getByText('asked so far')).toBeVisible();
}

const start = (page: Page) => page.locator('[data-do="start"]');

test('the stair is 160 px high, one figure stands over it, and practice is told as a gain', async ({
  page,
  baseURL,
}) => {
  await student(page, baseURL!, answers([0, 1, 2], 3));
  const steps = page.locator('.ready .step');
  await expect(steps).toHaveCount(7);
  expect((await steps.last().boundingBox())!.height).toBeCloseTo(160, 0);
  const figure = page.locator('.ready .figure');
  await expect(figure).toHaveText(
    /^(\d+) %known tomorrow morning; \d+ % by next week with \d+ minutes a day$/,
  );
  const [now, then] = (await figure.innerText()).match(/\d+(?= %)/g)!.map(Number);
  expect(then).toBeGreaterThan(now!);
  await expect(page.getByRole('img', { name: /^What you know: .+ today/ })).toBeVisible();
});

test('growth is a line from the second day on, and in the first days what is foretold is about so much', async ({
  page,
  baseURL,
}) => {
  await student(page, baseURL!, answers([0], 3));
  await expect(page.locator('.ready .figure')).toContainText(/; about \d+0 % by next week/);
  await expect(page.locator('.ready .weeks')).toHaveCount(0);
});

test('one stepper says how long, on both sides of the button that begins', async ({
  page,
  baseURL,
}) => {
  await student(page, baseURL!, answers([0, 1, 2], 3));
  const minutes = async () => Number((await start(page).innerText()).match(/\d+/)![0]);
  const usual = await minutes();
  await page.getByRole('button', { name: 'Longer' }).click();
  expect(await minutes()).toBe(usual + 1);
  await expect(page.locator('.ready .figure')).toContainText(`with ${usual + 1} minutes a day`);
  await page.getByRole('button', { name: 'Shorter' }).click();
  expect(await minutes()).toBe(usual);
  const longer = page.getByRole('button', { name: 'Longer' });
  while ((await longer.getAttribute('aria-disabled')) !== 'true') await longer.click();
  await expect(start(page)).toHaveText('Practise until enough');
});

test('where it is enough for today, no round is gone on with', async ({ page, baseURL }) => {
  await student(page, baseURL!, answers([0, 1, 2, 4, 5], 7));
  await expect(page.getByText('Enough for today')).toBeVisible();
  await start(page).click();
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(page.getByText('Enough for today')).toBeVisible();
  await expect(start(page)).toHaveText(/^Practise \d+ minutes$/);
});

test('a round ends with the stair as it was and is, what is new on the neck, and what was missed as shapes that sound', async ({
  page,
}) => {
  const sounds = await countSounds(page);
  await page.goto('');
  await page.getByRole('button', { name: 'Begin with three cards' }).click();
  await answerCards(page, 2);
  await answerCards(page, 1, false);
  await expect(roundEnd(page)).toBeVisible();
  await expect(page.locator('.grown .figure')).toHaveText(/^\d+ %known tomorrow morning/);
  await expect(page.locator('.grown .grew')).not.toHaveCount(0);
  await expect(page.getByText(/^2 of [23] right first time$/)).toBeVisible();
  await expect(page.getByRole('img', { name: /^The neck; ringed/ })).toBeVisible();
  const before = await sounds();
  await page
    .locator('.missed-shapes')
    .getByRole('button', { name: /^Hear / })
    .first()
    .click();
  await expect.poll(sounds).toBeGreaterThan(before);

  await page.getByRole('button', { name: 'Look back over the cards' }).click();
  const cards = page.getByRole('listitem');
  await expect(cards).toHaveCount(3);
  await page.getByLabel('Missed only').check();
  await expect(cards).toHaveCount(1);
  await expect(cards.first()).toContainText(/missed: .+/);
});

test('the phone chooses the hand and the numerals, whatever the lesson says, and keeps the name of a report', async ({
  page,
  baseURL,
}) => {
  await student(page, baseURL!, answers([0], 3));
  await page.getByRole('link', { name: 'Sound and names' }).click();
  await page.getByLabel('left-handed').check();
  await page.getByLabel('Roman numerals on steps').uncheck();
  await page.goto('#/known');
  const [low, high] = await Promise.all(
    [5, 4].map((string) => page.locator(`[data-string="${string}"]`).first().boundingBox()),
  );
  expect(low!.x).toBeGreaterThan(high!.x);
  await page.goto('#/today');
  await expect(page.locator('.ready .numeral').first()).toHaveText('1');
  await page.goto('#/send');
  await page.getByLabel('Your name, if you like').fill('Mareike');
  await expect.poll(() => kept(page)).toContain('Mareike');
  await page.reload();
  await expect(page.getByLabel('Your name, if you like')).toHaveValue('Mareike');
});
