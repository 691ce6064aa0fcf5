/** As a teacher would, from the first screen: how many taps and seconds it takes. Prints them. */
import { expect, test, type Browser, type Locator, type Page } from '@playwright/test';
import { writeMidi } from '../../src/decks/notation/midi.ts';
import { phraseDeck } from '../cards/phrases.ts';
import { answerCards, linkIn, makeLesson, SMALL, startLesson, writeTablature } from './people.ts';

/** Four bars of triplets: ii7, V7, Imaj7, vi, as one writes it in a message. */
const FOUR_BARS = [
  'e|-------3-6-3-------|-----5---------------|-----------------5-|-6-3---------------|',
  'B|-----4-------4-6-4-|-6-------6-4---------|---------3-6-3-6---|-----6-3-----------|',
  'G|---5---------------|-----------------5-2-|-3-2-3-7-----------|---------3-0-3-----|',
  'D|-5-----------------|---------------------|-------------------|---------------5---|',
  'A|-------------------|---------------------|-------------------|-------------------|',
  'E|-------------------|---------------------|-------------------|-------------------|',
].join('\n');

/** Counts taps from now on; tells them and the seconds that have gone. */
async function stopwatch(page: Page): Promise<() => { taps: number; seconds: number }> {
  let taps = 0;
  await page.exposeFunction('tapped', () => taps++);
  await page.evaluate(() =>
    addEventListener('pointerdown', () => (window as unknown as { tapped(): void }).tapped(), true),
  );
  const began = performance.now();
  return () => ({ taps, seconds: (performance.now() - began) / 1000 });
}

function tell(what: string, { taps, seconds }: { taps: number; seconds: number }) {
  console.log(`${what}: ${taps} taps, ${seconds.toFixed(1)} s`);
}

async function firstScreen(page: Page): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('');
  await expect(page.locator('[data-do="start"]').first()).toBeVisible();
}

const tapTeach = (page: Page) =>
  page.getByRole('navigation').getByRole('link', { name: 'Teach' }).click();

async function shared(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Share the link' }).click();
  await expect(page.getByLabel('The lesson’s link')).toHaveValue(/#\/lesson\//);
}

test('a plain lesson takes three taps', async ({ page }) => {
  await firstScreen(page);
  const stop = await stopwatch(page);
  await tapTeach(page);
  await page.getByRole('radio', { name: 'E♭' }).click();
  await shared(page);
  const taken = stop();
  tell('a plain lesson', taken);
  expect(taken.taps).toBe(3);
});

test('a lesson with a four-bar phrase typed as tablature takes at most six taps', async ({
  page,
}) => {
  await firstScreen(page);
  const stop = await stopwatch(page);
  await tapTeach(page);
  await page.getByRole('radio', { name: 'B♭' }).click();
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await writeTablature(page, FOUR_BARS);
  await page.getByRole('dialog').getByRole('button', { name: 'Put it in' }).click();
  await shared(page);
  const taken = stop();
  tell('a lesson with a four-bar phrase', taken);
  expect(taken.taps).toBeLessThanOrEqual(6);
});

test('reading three reports and making the next lesson takes at most eight taps', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, SMALL);
  const links: string[] = [];
  const names = ['Mareike', 'Tomke', 'Ilse'];
  for (const name of names) {
    links.push(await reportOf(browser, lesson, name, name !== 'Mareike'));
  }
  await firstScreen(page);
  const stop = await stopwatch(page);
  for (const [i, link] of links.entries()) {
    await openLink(page, link, i);
    await expect(page.getByRole('heading', { name: names[i]! })).toBeVisible();
    await expect(page.getByText('Kept on this device.')).toBeVisible();
  }
  await page.getByRole('link', { name: 'All reports' }).click();
  await page.getByRole('button', { name: 'Next lesson from 3 reports' }).click();
  await shared(page);
  const taken = stop();
  tell('reading three reports and making the next lesson', taken);
  expect(taken.taps).toBeLessThanOrEqual(8);
});

/** A message’s link, tapped: it stands on the page for as long as that takes. */
async function openLink(page: Page, link: string, i: number): Promise<void> {
  await page.evaluate(
    ([href, name]) => {
      const anchor = Object.assign(document.createElement('a'), { href, textContent: name });
      anchor.style.cssText = 'position:fixed;inset:0 auto auto 0;z-index:99;padding:1rem';
      anchor.addEventListener('click', () => setTimeout(() => anchor.remove()));
      document.body.append(anchor);
    },
    [link, `Message ${i + 1}`] as const,
  );
  await page.getByRole('link', { name: `Message ${i + 1}` }).click();
}

async function reportOf(
  browser: Browser,
  lesson: string,
  name: string,
  right: boolean,
): Promise<string> {
  const phone = await (await browser.newContext()).newPage();
  await startLesson(phone, lesson);
  await answerCards(phone, 3, right);
  await phone.goto('#/send');
  await phone.getByLabel('Your name, if you like').fill(name);
  const link = await linkIn(phone.getByLabel('The report’s link'));
  await phone.context().close();
  return link;
}

test.describe('a MIDI file', () => {
  // What is asked of the net is asked by the page, where it can be held up.
  test.use({ serviceWorkers: 'block' });

  const bytes = writeMidi({ tempo: 90, notes: phraseDeck().phrases[0]!.notes }, 'stairs');
  const file = { name: 'stairs.mid', mimeType: 'audio/midi', buffer: Buffer.from(bytes) };
  const isWorker = (url: URL) => /\/worker-.*\.js$/.test(url.pathname);

  /** Opens the text of a new phrase; gives the field for a file. */
  async function openText(page: Page): Promise<Locator> {
    await page.goto('#/teach');
    await page.getByRole('button', { name: 'Add a phrase' }).click();
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    return page.locator('input[type="file"]');
  }

  test('goes on being read where its sheet is closed', async ({ page }) => {
    let come = () => {};
    const asked = new Promise<void>((resolve) => (come = resolve));
    const input = await openText(page);
    await page.route(isWorker, (route) => asked.then(() => route.continue()));
    await input.setInputFiles(file);
    await page.getByRole('button', { name: 'Done' }).last().click();
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(page.getByRole('button', { name: 'Stop reading' })).toBeVisible();
    come();
    await expect(page.getByRole('button', { name: /^Note 13:/ })).toHaveCount(1);
    await expect(page.getByRole('button', { name: 'Stop reading' })).toHaveCount(0);
  });

  test('is read beside the page, and the reading can be stopped', async ({ page }) => {
    const input = await openText(page);
    await page.route(isWorker, () => {
      // Nothing is ever answered.
    });
    await input.setInputFiles(file);
    await page.getByRole('button', { name: 'Stop reading' }).click();
    await expect(page.getByText('Stopped. Nothing was read.')).toBeVisible();
    await page.unroute(isWorker);
    await input.setInputFiles(file);
    await expect(page.getByText('Stopped. Nothing was read.')).toHaveCount(0);
    await expect(page.getByLabel('Tablature, string 1 on top')).toHaveValue(/\d/);
    await expect(page.getByRole('button', { name: 'Stop reading' })).toHaveCount(0);
  });
});
