/** Whoever comes without a lesson; and what hands find on a card without looking. */
import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { degreeSeen } from './musician.ts';
import {
  answerCards,
  countSounds,
  judged,
  lessonLink,
  openCard,
  question,
  roundEnd,
  SMALL,
  startLesson,
} from './people.ts';

test('three notes hop onto the stair, sound when they are tapped, and three cards begin', async ({
  page,
}) => {
  const sounds = await countSounds(page);
  await page.addInitScript(watchRoot);
  await page.goto('');
  // From its string down onto its step.
  const seen = () => page.evaluate(() => (globalThis as unknown as { rootAt: number[] }).rootAt);
  await expect.poll(async () => (await seen()).at(-1)! - (await seen())[0]!).toBeGreaterThan(100);
  await page.getByRole('button', { name: /Hear the first arpeggio of B♭ major/ }).click();
  await expect.poll(sounds).toBeGreaterThanOrEqual(3);
  await page.getByRole('button', { name: 'Begin with three cards' }).click();
  expect(await answerCards(page, 99)).toHaveLength(3);
  await expect(roundEnd(page)).toBeVisible();
  await expect(page.getByText(/^(\d) of \1 right first time$/)).toBeVisible();
});

test('on a phone no button of the first screen lies half under the places, and each is named by what is seen in it', async ({
  page,
}) => {
  for (const [width, height] of [
    [412, 823],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    await page.goto('');
    await expect(page.locator('[data-early]')).toHaveCount(0);
    const axe = new AxeBuilder({ page }).withRules(['target-size', 'label-content-name-mismatch']);
    const { violations } = await axe.analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`)).toEqual([]);
  }
});

test('the ways in lead to where a link is pasted and to the teacher’s desk', async ({ page }) => {
  await page.goto('');
  await page.getByRole('link', { name: 'I have a link' }).click();
  await expect(page.getByLabel('A link from your teacher')).toBeVisible();
  await page.goBack();
  await page.getByRole('link', { name: 'I teach' }).click();
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
});

test('an ear card shows that the key and then the phrase sound, stops, and sounds either alone', async ({
  page,
  baseURL,
}) => {
  await startLesson(page, await lessonLink({ ...SMALL, kinds: ['trace'] }, baseURL!));
  await question(page);
  const card = openCard(page);
  const [stop, stage] = [card.getByRole('button', { name: 'Stop' }), card.locator('.stage')];
  await expect(stage).toHaveText('The key');
  await expect(card.locator('.blanks .filled')).toHaveCount(0);
  await expect(stage).toHaveText('The phrase');
  await expect(card.locator('.blanks .filled')).not.toHaveCount(0);
  await stop.click();
  await expect(stage).toHaveText('');
  await card.getByRole('button', { name: 'Key alone' }).click();
  await expect(stage).toHaveText('The key');
  await expect(card.getByRole('button', { name: 'Hear the phrase' })).toBeVisible();
  await card.getByRole('button', { name: 'Phrase alone' }).click();
  await expect(stage).toHaveText('The phrase');
});

test('a digit answers, the space bar sounds, and Enter goes on', async ({ page, baseURL }) => {
  const sounds = await countSounds(page);
  await startLesson(page, await lessonLink({ ...SMALL, kinds: ['trace'] }, baseURL!));
  await question(page);
  await expect(openCard(page).getByRole('button', { name: 'Hear the phrase' })).toBeVisible();
  const silent = await sounds();
  await page.keyboard.press('Space');
  await expect.poll(sounds).toBeGreaterThan(silent);
  await startLesson(page, await lessonLink(SMALL, baseURL!));
  const asked = (await question(page))!;
  await page.keyboard.press(degreeSeen(asked));
  expect(await judged(page)).toBe('right');
  await page.keyboard.press('Enter');
  expect((await question(page))!.item).not.toBe(asked.item);
});

test('a card to be placed begins on a string of its set, names it, and fills a slot a note', async ({
  page,
  baseURL,
}) => {
  await startLesson(page, await lessonLink({ ...SMALL, kinds: ['place'] }, baseURL!));
  await question(page);
  const card = openCard(page);
  await expect(card.getByText('strings 5 4 (A D)')).toBeVisible();
  await expect(card.locator('.cell.takes[tabindex="0"]')).toHaveCount(1);
  await expect(card.locator('.slot')).toHaveCount(3);
  await card.locator('.cell.takes[tabindex="0"]').press('Enter');
  await expect(card.locator('.slot.filled')).toHaveCount(1);
});

// What follows runs in the page.

/** Keeps how far down the picture's root lies, in every frame. */
function watchRoot(): void {
  const rootAt: number[] = [];
  Object.assign(globalThis, { rootAt });
  const look = () => {
    const root = document.querySelector('.onto-the-stair .note.first');
    if (root) rootAt.push(root.getBoundingClientRect().top);
    requestAnimationFrame(look);
  };
  look();
}
