/** Links and files from before, and from a program yet to come, as the screen takes them. */
import { expect, test, type Page } from '@playwright/test';
import { sealLink } from '../../src/decks/seal.ts';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import { BACKUPS, LESSONS, REPORTS } from '../decks/written.ts';
import { kept, keptWhenQuiet } from './people.ts';

/** The part of a link that any page of the app can be asked for. */
const behind = (link: string) => link.slice(link.indexOf('#'));

const titleOf = (document: unknown) => (document as { readonly title: string }).title;

async function takeLesson(page: Page, link: string, title: string): Promise<void> {
  await page.goto(behind(link));
  await expect(page.getByRole('heading', { name: title })).toBeVisible();
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(page.getByRole('heading', { name: title })).toBeVisible();
}

test('lessons’ links of every version open, and count as many items', async ({ page }) => {
  for (const { link, document, items } of LESSONS) {
    await takeLesson(page, link, titleOf(document));
    await expect(page.getByText(`0 of ${items.length} asked so far`)).toBeVisible();
  }
});

test('reports’ links of every version open on their lesson', async ({ page }) => {
  await takeLesson(page, LESSONS[0]!.link, titleOf(LESSONS[0]!.document));
  for (const { link } of REPORTS) {
    await page.goto('#/class');
    await page.goto(behind(link));
    await expect(page.getByRole('heading', { name: 'Mareike' })).toBeVisible();
    await expect(page.getByText('“Why is ii not IV?”')).toBeVisible();
    await expect(page.getByText(/61 answers on this lesson/)).toBeVisible();
    await expect(page.getByText('4 of the last 28 days')).toBeVisible();
  }
});

/** Chooses a text as the file of a backup. */
async function readFile(page: Page, text: string): Promise<void> {
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: 'backup.txt', mimeType: 'text/plain', buffer: Buffer.from(text) });
}

test('backups of every version are read one after the other, and the answers count once', async ({
  page,
}) => {
  await page.goto('#/settings');
  for (const { version, text } of BACKUPS) {
    await readFile(page, text);
    await expect(
      page.getByText(
        version === 1
          ? /^12 answers and 1 lesson more than before/
          : /more than before|is here already/,
      ),
    ).toBeVisible();
    await expect(page.getByText(/^12 answers on this device/)).toBeVisible();
    await page.goto('#/lessons');
    await page.goto('#/settings');
  }
  await page.goto('#/today');
  await expect(page.getByRole('heading', { name: titleOf(LESSONS[0]!.document) })).toBeVisible();
  await expect(page.getByText('9 of 24 asked so far')).toBeVisible();
  await page.goto('#/teach/lessons');
  await expect(page.locator('.lesson-list h2')).toHaveCount(1);
  await page.goto('#/class');
  await expect(page.getByRole('link', { name: /Mareike/ }).first()).toBeVisible();
});

test('a lesson, a report and a backup of a newer version say that they need it, and change nothing', async ({
  page,
}) => {
  await takeLesson(page, LESSONS[0]!.link, titleOf(LESSONS[0]!.document));
  await page.goto('#/lessons');
  await expect(page.getByRole('heading', { name: 'Lessons' })).toBeVisible();
  const before = await keptWhenQuiet(page);
  const body = new Uint8Array([1, 2, 3]);
  for (const link of [
    sealLink('lesson', '', DOCUMENT_VERSION + 1, body),
    sealLink('report', '', REPORTS.at(-1)!.version + 1, body),
  ]) {
    await page.goto(link);
    await expect(page.getByText(/made with a newer version of Skipwise/)).toBeVisible();
  }
  await page.goto('#/settings');
  const { text } = BACKUPS.at(-1)!;
  await readFile(page, text.replace('"version":4', '"version":5'));
  await expect(page.getByText(/was saved by a newer version of Skipwise/)).toBeVisible();
  await readFile(page, text.replace('"document":{"version":1', '"document":{"version":99'));
  await expect(
    page.getByText(/^Line 2 of this backup holds a lesson made with a newer version of Skipwise/),
  ).toBeVisible();
  expect(await kept(page)).toBe(before);
});
