import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { answerCards, linkIn, makeLesson, plan, SMALL, startLesson } from './people.ts';

/** Saves everything to a file. */
async function save(page: Page): Promise<string> {
  await page.goto('#/settings');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save to a file' }).click();
  return (await saved).path();
}

test.describe('the student’s answers', () => {
  test('go to a file, are erased when asked twice, and come back from the file', async ({
    page,
  }) => {
    await page.goto('/');
    await page.locator('[data-do="start"]').nth(3).click();
    await answerCards(page, 3);
    await page.goto('/#/settings');
    const count = page.getByText(/^\d+ answers? on this device/);
    const before = await count.textContent();
    expect(before).not.toMatch(/^0 /);

    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save to a file' }).click();
    const file = await (await saved).path();
    expect(await readFile(file, 'utf8')).toContain('"skipwise":"backup"');

    await page.getByRole('button', { name: 'Erase everything' }).click();
    await expect(page.getByRole('alertdialog')).toContainText('Save them to a file first');
    await page.getByRole('button', { name: 'Erase', exact: true }).click();
    await page.getByRole('button', { name: 'Yes, erase everything' }).click();
    await page.getByText('I have a link').waitFor();

    await page.goto('/#/settings');
    await expect(count).toHaveText(/^0 answers/);
    await page.locator('input[type="file"]').setInputFiles(file);
    await expect(page.getByText(/more than before/)).toBeVisible();
    await expect(count).toHaveText(before!);
    await page.locator('input[type="file"]').setInputFiles(file);
    await expect(page.getByText('Everything in this file is here already.')).toBeVisible();
    await page.goto('/#/lessons');
    await expect(page.getByText('practised now')).toHaveCount(1);
  });

  test('take with them what a teacher keeps: lessons made and reports received', async ({
    page,
    browser,
  }) => {
    const lesson = await makeLesson(page, { ...SMALL, title: 'Harbour room, Tuesday' });
    await page.goto('#/teach/lessons');
    await page.getByRole('button', { name: 'A new lesson' }).click();
    await plan(page, { tonic: 'A', title: 'Not finished yet' });
    const student = await (await browser.newContext()).newPage();
    await startLesson(student, lesson);
    await answerCards(student, 1);
    await student.goto('#/send');
    await student.getByLabel('Your name, if you like').fill('Mareike');
    const report = await linkIn(student.getByLabel('The report’s link'));
    await student.context().close();
    await page.goto(report);
    await expect(page.getByText('Kept on this device.')).toBeVisible();
    const file = await save(page);

    const other = await (await browser.newContext()).newPage();
    await other.goto('#/teach');
    await other.goto('#/settings');
    const input = other.locator('input[type="file"]');
    await input.setInputFiles(file);
    await expect(other.getByText(/2 own lessons and 1 report more than before/)).toBeVisible();
    await input.setInputFiles(file);
    await expect(other.getByText('Everything in this file is here already.')).toBeVisible();
    await other.goto('#/teach/lessons');
    await expect(other.locator('.lesson-list h2')).toHaveText([
      'Not finished yet',
      'Harbour room, Tuesday',
    ]);
    await other.goto('#/class');
    await expect(other.getByRole('link', { name: /Mareike/ })).toBeVisible();
    const damaged = (await readFile(file, 'utf8')).replace('#/report/', '#/report/x');
    await other.goto('#/settings');
    await input.setInputFiles({
      name: 'a.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from(damaged),
    });
    await expect(
      other.getByText(/^Line \d of this backup holds no report that can be read/),
    ).toBeVisible();
    await other.context().close();
  });

  test('are not touched by a file that is none of ours, or damaged', async ({ page }) => {
    await page.goto('/#/settings');
    const read = (text: string) =>
      page
        .locator('input[type="file"]')
        .setInputFiles({ name: 'a.txt', mimeType: 'text/plain', buffer: Buffer.from(text) });
    await read('hello');
    await expect(page.getByText('This is not a backup of Skipwise')).toBeVisible();
    await read(
      '{"skipwise":"backup","version":2,"decks":0,"reviews":1,"aside":0}\n{"review":{}}\n',
    );
    await expect(
      page.getByText('Line 2 of this backup is damaged. Nothing was changed.'),
    ).toBeVisible();
  });
});
