import jsQR from 'jsqr';
import { expect, test, type Browser, type Page } from '@playwright/test';
import { readLink } from '../../src/decks/link.ts';
import {
  answerCards,
  answerOne,
  kept,
  keptWhenQuiet,
  lessonLink,
  linkIn,
  makeLesson,
  newCard,
  next,
  openPart,
  openCard,
  plan,
  roundEnd,
  shareLink,
  SMALL,
  startLesson,
  verdict,
  type Wishes,
} from './people.ts';

test('taps make the lesson that they wish for, whose link other tests open without them', async ({
  page,
  baseURL,
}) => {
  const wishes: Wishes = {
    tonic: 'E♭',
    scale: 'minor',
    chords: ['triads', 'sevenths'],
    kinds: ['place', 'trace'],
    strings: ['5–4', '4–3'],
    frets: [2, 9],
    title: 'Tuesday: along the quay',
    note: 'Slowly.',
    lessonDay: '2099-12-01',
  };
  // Compared as they are read: a browser compresses otherwise than Node.
  const read = async (link: Promise<string>) => readLink(await link);
  expect(await read(makeLesson(page, wishes))).toEqual(await read(lessonLink(wishes, baseURL!)));
  await page.getByRole('button', { name: 'Change it' }).click();
  const small = lessonLink({ ...wishes, ...SMALL }, baseURL!);
  expect(await read(makeLesson(page, SMALL))).toEqual(await read(small));
});

test('from the start to the link of a plain lesson in a chosen key it is at most four taps', async ({
  page,
}) => {
  await page.goto('');
  await expect(page.locator('[data-do="start"]').first()).toBeVisible();
  let taps = 0;
  await page.exposeFunction('tapped', () => taps++);
  await page.evaluate(() =>
    addEventListener('pointerdown', () => (window as unknown as { tapped(): void }).tapped(), true),
  );
  await page.getByRole('navigation').getByRole('link', { name: 'Teach' }).click();
  await page.getByRole('radio', { name: 'A♭' }).click();
  const link = await shareLink(page);
  expect(taps).toBeLessThanOrEqual(4);
  expect(link.length).toBeLessThanOrEqual(300);
  await expect(page.getByRole('heading', { name: 'Arpeggios of A♭ major' })).toBeVisible();
});

test('the link can be copied', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'share'));
  const link = await makeLesson(page, { tonic: 'G', scale: 'minor' });
  await expect(page.getByRole('button', { name: 'Copy' })).toHaveClass(/main/);
  await expect(page.getByRole('button', { name: 'Share' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Copy' }).click();
  await expect(page.getByRole('status')).toContainText('Copied');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(link);
});

test('the link goes to the phone’s share sheet where there is one', async ({ page }) => {
  await page.addInitScript(() => {
    const shared: ShareData[] = [];
    Object.assign(window, { shared });
    Object.assign(navigator, { share: async (data: ShareData) => void shared.push(data) });
  });
  const link = await makeLesson(page, { title: 'Thursday, quay side' });
  // The main button there; elsewhere that is to copy.
  await expect(page.getByRole('button', { name: 'Copy' })).not.toHaveClass(/main/);
  await expect(page.getByRole('button', { name: 'Share' })).toHaveClass(/main/);
  await page.getByRole('button', { name: 'Share' }).click();
  const shared = await page.evaluate(() => (window as unknown as { shared: ShareData[] }).shared);
  expect(shared).toEqual([
    { title: 'Thursday, quay side', text: 'Tap, then Start. Works offline.', url: link },
  ]);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`a camera reads the QR code off a phone’s screen, ${colorScheme}`, async ({
    page,
    browser,
  }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme });
    const link = await makeLesson(page, { tonic: 'B♭', note: 'Name the root aloud.' });
    await page.getByRole('img', { name: 'QR code' }).scrollIntoViewIfNeeded();
    expect(await decode(browser, await page.screenshot())).toBe(link);
    // The student's phone has never seen the desk.
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      colorScheme,
    });
    const phone = await context.newPage();
    await startLesson(phone, link);
    await answerCards(phone, 1);
    await phone.goto('#/send');
    const report = await linkIn(phone.getByLabel('The report’s link'));
    await phone.getByRole('img', { name: 'QR code' }).scrollIntoViewIfNeeded();
    expect(await decode(browser, await phone.screenshot())).toBe(report);
    await context.close();
  });
}

test('opened in another browser the link yields exactly the same items', async ({
  page,
  browser,
}) => {
  await plan(page, { ...SMALL, tonic: 'D' });
  await openPart(page, 'Chords');
  const degrees = page.getByRole('group', { name: 'Degrees' });
  for (const name of ['iii', 'vi', 'vii°'])
    await degrees.getByRole('checkbox', { name, exact: true }).uncheck();
  await expect(page.getByText(/^4 items/)).toBeVisible();
  const link = await shareLink(page);

  const asked = await Promise.all([0, 1].map(() => roundOf(browser, link)));
  const [one, other] = asked as [string[], string[]];
  expect(one).toHaveLength(4);
  expect(other).toEqual(one);

  await page.getByRole('button', { name: 'Change it' }).click();
  await page.getByRole('button', { name: 'Try a card' }).click();
  expect(one).toContain(await newCard(page).getAttribute('data-item'));
});

test('a teacher sees cards as the student will, and nothing of them is kept', async ({ page }) => {
  await plan(page, { tonic: 'F', kinds: ['spot', 'place', 'trace'] });
  const before = await keptWhenQuiet(page);
  await page.getByRole('button', { name: 'Try a card' }).click();
  // What is new is shown first; the answer of what is asked can be shown too.
  const shown = await newCard(page).getAttribute('data-item');
  await next(page);
  await expect(openCard(page)).toHaveAttribute('data-item', shown!);
  await page.locator('[data-do="show"]').click();
  await expect(verdict(page)).toContainText('Shown:');
  await next(page);
  await expect(newCard(page)).toBeVisible();
  const asked = await answerCards(page, 3);
  expect(asked.map(({ key }) => key)).toEqual(['F major', 'F major', 'F major']);
  await answerOne(page, false);
  await page.getByRole('button', { name: 'Back to the lesson' }).click();
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
  expect(await kept(page)).toBe(before);
});

test('a lesson without a single card is told of, and has no link', async ({ page }) => {
  await plan(page, { chords: ['ninths'], kinds: ['place'], strings: ['6–5'], frets: [0, 2] });
  await expect(page.getByRole('status')).toContainText('choose more strings or frets');
  await expect(page.getByRole('button', { name: 'Share the link' })).toBeDisabled();
  await expect(page.getByRole('button', { name: 'Try a card' })).toBeDisabled();
});

/** The items of two rounds on a phone of its own, by their ids: a beginner's first round does not ask them all. */
async function roundOf(browser: Browser, link: string): Promise<string[]> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await startLesson(page, link);
  const first = await answerCards(page, 99);
  await expect(roundEnd(page)).toBeVisible();
  await page.locator('[data-do="start"]').click();
  const second = await answerCards(page, 7);
  await context.close();
  return [...new Set([...first, ...second].map(({ item }) => item))].toSorted();
}

/** What a QR reader finds in a picture, which a page of its own unpacks into pixels. */
async function decode(browser: Browser, png: Buffer): Promise<string | undefined> {
  const page = await browser.newPage();
  const { data, width, height } = await pixels(page, png.toString('base64'));
  await page.close();
  // It is written for another module system, and comes wrapped in one more `default` here and there.
  const { default: wrapped } = jsQR as unknown as { default?: typeof jsQR };
  const bytes = Uint8ClampedArray.from(Buffer.from(data, 'base64'));
  return (wrapped ?? jsQR)(bytes, width, height)?.data;
}

function pixels(page: Page, png: string) {
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const { width, height } = bitmap;
    const canvas = new OffscreenCanvas(width, height).getContext('2d')!;
    canvas.drawImage(bitmap, 0, 0);
    const { data } = canvas.getImageData(0, 0, width, height);
    let text = '';
    for (const byte of data) text += String.fromCharCode(byte);
    return { data: btoa(text), width, height };
  }, png);
}
