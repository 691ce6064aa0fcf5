import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import midiFile from 'midi-file';
import { expect, test, type Page } from '@playwright/test';
import { plan, shareLink } from './people.ts';

/** ii7, then V7, in triplets and out of step nowhere. */
const STAIRS = [
  'e|-------3-6-3-------5-----|-11----------|',
  'B|-----4-------4-6-10------|----13-10----|',
  'G|---5---------------------|----------10-|',
  'D|-------------------------|-------------|',
  'A|-------------------------|-------------|',
  'E|-------------------------|-------------|',
].join('\n');

const tablature = (page: Page) => page.getByLabel('Tablature, string 1 on top');

/** Writes a phrase under Teach and leaves it open. */
async function write(page: Page, text: string) {
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await tablature(page).fill(text);
}

async function putIn(page: Page) {
  await page.getByRole('button', { name: 'Put it in' }).click();
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
}

test('a pasted phrase goes into the lesson, and the student sees and plays it', async ({
  page,
  browser,
}) => {
  await plan(page, {});
  await write(page, STAIRS);
  await expect(page.getByText('It outlines ii7 (Cm7), then V7 (F7).')).toBeVisible();
  await putIn(page);
  await expect(page.getByRole('button', { name: '1 · ii7 V7' })).toBeVisible();
  const link = await shareLink(page);
  expect(link.length).toBeLessThanOrEqual(300);

  const student = await (await browser.newContext()).newPage();
  await student.goto(link);
  await expect(student.getByText('1, to see, hear and play')).toBeVisible();
  await student.getByRole('button', { name: 'Keep for later' }).click();
  await student.getByRole('link', { name: 'The phrase of this lesson' }).click();
  const notes = student.getByRole('button', { name: /^Note \d+: degree/ });
  await expect(notes).toHaveCount(13);
  await expect(notes.first()).toHaveAccessibleName('Note 1: degree 2, string 3, fret 5');
  await expect(student.locator('[data-string="3"][data-fret="5"][data-dot]')).toHaveCount(1);
  await student.getByRole('button', { name: 'V7, notes 7 to 13' }).click();
  await expect(student.locator('.member-1')).not.toHaveCount(0);
  await student.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(student.locator('.strip .sounding')).toHaveCount(1);
  await student.getByRole('button', { name: 'Stop', exact: true }).click();
  await student.context().close();
});

test('what cannot be read is pointed at, and the text survives a reload', async ({ page }) => {
  await plan(page, {});
  const text = STAIRS.replace('B|-----4', 'B|-----x');
  await write(page, text);
  await page.getByRole('button', { name: 'Line 2, column 8' }).click();
  expect(
    await tablature(page).evaluate((field: HTMLTextAreaElement) =>
      field.value.slice(field.selectionStart, field.selectionEnd),
    ),
  ).toBe('x');
  await expect(page.getByRole('button', { name: 'Put it in' })).toBeDisabled();
  await page.reload();
  await page.getByRole('button', { name: 'Go on with the phrase you began' }).click();
  await expect(tablature(page)).toHaveValue(text);
});

test('where it is not sure it asks, and what the teacher says stands', async ({ page }) => {
  await plan(page, {});
  await write(page, 'e|-3-----|\nB|---3-6-|\nG|-------|\nD|-------|\nA|-------|\nE|-------|');
  await page.getByRole('radio', { name: 'quarters' }).first().click();
  const asked = page.getByRole('group', { name: /or I \(B♭\)/ });
  await asked.getByRole('radio', { name: 'I (B♭)' }).click();
  await expect(page.getByText('as you say')).toBeVisible();
  await expect(page.getByRole('button', { name: /^I, / })).toBeVisible();
  await putIn(page);
  await page.getByRole('button', { name: '1 · vi I' }).click();
  await expect(page.getByText('as you say')).toBeVisible();
});

test('a variation is compared and kept; a phrase is removed and put back', async ({ page }) => {
  await plan(page, {});
  await write(page, STAIRS);
  await page.getByText('Variations', { exact: true }).click();
  const backwards = page.getByRole('region', { name: 'backwards' });
  await backwards.getByRole('button', { name: 'Compare' }).click();
  await expect(backwards.getByRole('figure')).toHaveCount(2);
  await backwards.getByRole('button', { name: 'Hear the variation' }).click();
  await expect(backwards.locator('.sounding')).toHaveCount(1);
  await backwards.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByText('“backwards” is phrase 1 of the lesson.')).toBeVisible();
  await putIn(page);
  const phrases = page.getByRole('region', { name: 'Phrases' }).getByRole('listitem');
  await expect(phrases).toHaveCount(2);
  await page.getByRole('button', { name: 'Remove phrase 1' }).click();
  await expect(phrases).toHaveCount(1);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect(phrases).toHaveCount(2);
});

test('a phrase leaves as text, as MIDI and as MusicXML, and comes back from text and MIDI', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await plan(page, {});
  await write(page, STAIRS);
  await page.getByText('Take it along').click();
  await page.getByRole('button', { name: 'Copy the tablature' }).click();
  await expect(page.getByText('Copied. Paste it into a message.')).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  const mid = await saved(page, 'MIDI file');
  const sounded = midiFile.parseMidi(mid.bytes).tracks.flat();
  expect(sounded.filter(({ type }) => type === 'noteOn')).toHaveLength(13);
  const xml = await saved(page, 'MusicXML file');
  expect(xml.bytes.toString('utf8').match(/<fret>/g)).toHaveLength(13);

  const outlined = page.getByText('It outlines ii7 (Cm7), then V7 (F7).');
  await tablature(page).fill('');
  await expect(outlined).toBeHidden();
  await tablature(page).fill(copied);
  await expect(outlined).toBeVisible();
  await tablature(page).fill('');
  await page.setInputFiles('input[type=file]', {
    name: 'a.mid',
    mimeType: 'audio/midi',
    buffer: mid.bytes,
  });
  await expect(outlined).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the phrase’s form has no fault that a checker finds, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await plan(page, {});
    await write(page, STAIRS);
    await expect(page.getByText('It outlines ii7')).toBeVisible();
    expect(await faults(page)).toEqual([]);
  });

  test(`the student’s phrase has no fault that a checker finds, ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await plan(page, {});
    await write(page, STAIRS);
    await openAsStudent(page);
    expect(await faults(page)).toEqual([]);
  });
}

test('at twice the text size nothing is wider than the phone', async ({ page }) => {
  await plan(page, {});
  await write(page, STAIRS);
  await expect(page.getByText('It outlines ii7')).toBeVisible();
  expect(await widthOfLargeText(page)).toBeLessThanOrEqual(360);
  await openAsStudent(page);
  expect(await widthOfLargeText(page)).toBeLessThanOrEqual(360);
});

/** From the phrase’s form: the lesson taken and opened at the phrase. */
async function openAsStudent(page: Page) {
  await putIn(page);
  await page.goto(await shareLink(page));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.getByRole('link', { name: 'The phrase of this lesson' }).click();
  await expect(page.getByText('It outlines ii7')).toBeVisible();
}

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

async function widthOfLargeText(page: Page): Promise<number> {
  await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  await page.evaluate(() => (document.documentElement.style.fontSize = ''));
  return wide;
}

async function saved(page: Page, name: string): Promise<{ bytes: Buffer<ArrayBuffer> }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name, exact: true }).click();
  const path = await (await coming).path();
  return { bytes: await readFile(path) };
}
