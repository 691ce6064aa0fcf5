import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import {
  answerCards,
  askedSoFar,
  kept,
  lessonLink,
  makeLesson,
  SMALL,
  startLesson,
} from './people.ts';

let link: string;
let small: string;

test.beforeAll(async ({ baseURL }) => {
  link = await lessonLink({ tonic: 'A', title: 'Wednesday on the quay' }, baseURL!);
  small = await lessonLink(SMALL, baseURL!);
});

/** Each damage, as someone's hand or a messenger does it, and what the student reads. */
const DAMAGES: readonly [what: string, damage: (link: string) => string, says: RegExp][] = [
  [
    'cut short',
    (good) => good.slice(0, -9),
    /was cut short: its end is missing\. Copy the whole link/,
  ],
  ['cut down to its first letters', (good) => good.replace(/(lesson\/.....).*/, '$1'), /cut short/],
  ['without anything', (good) => good.replace(/(lesson\/).*/, '$1'), /cut short|altered/],
  ['altered in one letter', altered, /was altered on the way\. Copy it again/],
  [
    'made of other letters',
    (good) => good.replace(/lesson\/.*/, `lesson/${'zzzz'.repeat(40)}`),
    /cut short|altered/,
  ],
  [
    'huge',
    (good) => good.replace(/lesson\/.*/, `lesson/${'A'.repeat(300_000)}`),
    /too large to be a lesson link\. Copy the link alone/,
  ],
  [
    'inflating without end',
    (good) => sealed(good, 1, deflateRawSync(Buffer.alloc(30_000_000, 'a'))),
    /unpacks to more than any lesson holds, so it was not opened/,
  ],
  [
    'of a newer version',
    (good) => sealed(good, DOCUMENT_VERSION + 1, body(good)),
    /made with a newer version of Skipwise\. Open the page online once/,
  ],
  [
    'sealed again around a key that is none',
    (good) => resealed(good, (text) => text.replace('A major', 'H major')),
    /holds something that no lesson has\. Key/,
  ],
  [
    'sealed again around a thousand drills',
    (good) =>
      resealed(good, (text) => text.replace(/s0\S+/, (drill) => `${drill} `.repeat(1000).trim())),
    /holds something that no lesson has\. .*[Dd]rills/,
  ],
];

test.describe('a link that is', () => {
  for (const [what, damage, says] of DAMAGES) {
    test(`${what} gets a clear sentence, and nothing is changed`, async ({ page }) => {
      await startLesson(page, small);
      await answerCards(page, 1);
      await page.goto('#/today');
      await expect(askedSoFar(page)).toBeVisible();
      const before = await kept(page);

      await page.goto(damage(link));
      await expect(page.getByRole('alert')).toContainText(says);
      await expect(page.getByText('Nothing on this phone was changed.')).toBeVisible();
      await expect(page.locator('[data-do="start"]')).toHaveCount(0);
      expect(await kept(page)).toBe(before);

      await page.goto('#/lessons');
      await page.getByLabel('A link from your teacher').fill(damage(link));
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await expect(page.getByRole('alert')).toContainText(says);
      expect(await kept(page)).toBe(before);
    });
  }
});

test('a script in a title or a note is shown as the text that it is', async ({ page, browser }) => {
  const script = '<script>document.title="taken"</script>';
  const picture = '<img src=x onerror=document.title="taken">';
  const teacher = await browser.newPage();
  const sly = await makeLesson(teacher, { ...SMALL, title: script, note: picture });
  await teacher.close();

  await page.goto(sly);
  await expect(page.getByRole('heading', { name: script })).toBeVisible();
  await expect(page.getByText(picture)).toBeVisible();
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(page.getByRole('heading', { name: script })).toBeVisible();
  await page.goto('#/lessons');
  await expect(page.getByRole('heading', { name: script })).toBeVisible();
  await expect(page).toHaveTitle('Skipwise');
  expect(await page.locator('main img, main script').count()).toBe(0);
});

test('what is no link at all is told how a link looks', async ({ page }) => {
  await page.goto('#/lessons');
  for (const text of ['', 'See you on Tuesday!', 'https://example.org/']) {
    await page.getByLabel('A link from your teacher').fill(text);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await expect(page.getByRole('alert')).toContainText('A lesson link has “#/lesson/” in it');
  }
});

/** One letter in the middle changed for another. */
function altered(good: string): string {
  const at = good.length - 30;
  return good.slice(0, at) + (good[at] === 'x' ? 'y' : 'x') + good.slice(at + 1);
}

const HEAD = 3;
const SUM = 4;

/** The body of a link: what is between its head and its checksum. */
function body(good: string): Buffer {
  return Buffer.from(good.split('#/lesson/')[1]!, 'base64url').subarray(HEAD, -SUM);
}

/** A link whose text was changed by someone who knows how it is sealed. */
function resealed(good: string, change: (text: string) => string): string {
  const text = inflateRawSync(body(good)).toString();
  const changed = change(text);
  if (changed === text) throw new Error(`Nothing to change was found in ${JSON.stringify(text)}.`);
  return sealed(good, 1, deflateRawSync(changed));
}

/** A body in the envelope that `src/decks/envelope.ts` describes, its checksum right. */
function sealed(good: string, version: number, content: Buffer): string {
  const bytes = Buffer.alloc(HEAD + content.length + SUM);
  bytes.writeUInt8(version);
  bytes.writeUInt16BE(bytes.length, 1);
  content.copy(bytes, HEAD);
  bytes.writeUInt32BE(crc32(bytes.subarray(0, -SUM)), bytes.length - SUM);
  return good.replace(/lesson\/.*/, `lesson/${bytes.toString('base64url')}`);
}
