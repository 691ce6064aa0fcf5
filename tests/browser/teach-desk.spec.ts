/** The teacher's desk: the lesson as one sentence, and the desk that a phrase is written on. */
import { expect, test, type Page } from '@playwright/test';
import {
  answerCards,
  linkIn,
  makeLesson,
  openPart,
  plan,
  reloadKept,
  SMALL,
  startLesson,
  writeTablature,
} from './people.ts';

const STAIRS = [
  'e|-------3-6-3-------5-----|-11----------|',
  'B|-----4-------4-6-10------|----13-10----|',
  'G|---5---------------------|----------10-|',
  'D|-------------------------|-------------|',
  'A|-------------------------|-------------|',
  'E|-------------------------|-------------|',
].join('\n');

const WIDE = { width: 1280, height: 800 };
const sentence = (page: Page) => page.locator('.sentence > p').first();
const done = (page: Page) => page.getByRole('button', { name: 'Done' }).last().click();
const note = (page: Page, number: number) =>
  page.locator('.bench').getByRole('button', { name: new RegExp(`^Note ${number}:`) });

async function write(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await writeTablature(page, STAIRS);
  await done(page);
  await expect(note(page, 13)).toHaveCount(1);
}

test('a lesson is a sentence whose parts are tapped, and the card beneath it follows', async ({
  page,
}) => {
  await plan(page, {});
  await expect(sentence(page)).toHaveText(
    'Triads of B♭ major on 5–4 and 4–3, frets 1–8: see, place, hear · next lesson not set',
  );
  await page.getByRole('radio', { name: 'E♭' }).check();
  await expect(page.locator('.mini [data-kind]')).toHaveAttribute('data-key', 'Eb major');
  await openPart(page, 'Next lesson');
  await page.getByRole('button', { name: 'in 7 days' }).click();
  await openPart(page, 'Chords');
  await expect(page.getByRole('button', { name: 'in 14 days' })).toHaveCount(0);
  await page.getByRole('checkbox', { name: 'sevenths' }).check();
  await expect(sentence(page)).toHaveText(
    'Triads and sevenths of E♭ major on 5–4 and 4–3, frets 1–8: see, place, hear · next lesson in 7 days',
  );
  await page.getByRole('button', { name: 'A card of this lesson' }).click();
  await expect(page.locator('[data-kind][data-new]')).toHaveAttribute('data-key', 'Eb major');
});

test('drills that would ask nothing are grey and say why; a phrase switches on those that fit it', async ({
  page,
}) => {
  await plan(page, {});
  await openPart(page, 'Cards');
  const outline = page.getByRole('checkbox', { name: 'name the arpeggios of the phrases' });
  await expect(outline).toBeDisabled();
  await expect(page.getByText(/: add a phrase first\.$/)).toBeVisible();
  await write(page);
  await page.getByRole('button', { name: 'Put it in' }).click();
  await openPart(page, 'Cards');
  await expect(outline).toBeChecked();
  await outline.uncheck();
  await openPart(page, 'Chords');
  const degrees = page.getByRole('group', { name: 'Degrees' }).getByRole('checkbox');
  for (const one of await degrees.all()) await one.uncheck();
  await openPart(page, 'Cards');
  await expect(page.getByText(/^See, place and hear: choose at least one degree\.$/)).toBeVisible();
});

test('the next lesson says what it took from reports, and leaves out what the teacher leaves out', async ({
  page,
  browser,
}) => {
  const link = await makeLesson(page, SMALL);
  const phone = await (await browser.newContext()).newPage();
  await startLesson(phone, link);
  await answerCards(phone, 4, false);
  await phone.goto('#/send');
  const report = await linkIn(phone.getByLabel('The report’s link'));
  await phone.context().close();
  await page.goto(report);
  await page.getByRole('button', { name: 'Make the next lesson' }).click();
  // What was taken for another twice is named first; what is left is some of the degrees, or all.
  const some = /least known|Every degree once more/;
  const row = page.locator('.from-reports li').filter({ hasText: some }).first();
  await expect(row.getByRole('button', { name: 'use' })).toHaveAttribute('aria-pressed', 'true');
  const before = await sentence(page).textContent();
  await row.getByRole('button', { name: 'leave out' }).click();
  await expect(row.getByRole('button', { name: 'leave out' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await reloadKept(page);
  await expect(row.getByRole('button', { name: 'use' })).toHaveAttribute('aria-pressed', 'false');
  await row.getByRole('button', { name: 'use' }).click();
  await expect(sentence(page)).toHaveText(before!);
});

test('on a small phone all that writes a phrase stands on the screen; the rest lies over it and goes with Escape', async ({
  page,
}) => {
  await plan(page, {});
  await write(page);
  const whole = () => page.evaluate(() => document.documentElement.scrollHeight <= innerHeight + 1);
  expect(await whole()).toBe(true);
  await expect(page.getByRole('button', { name: 'Put it in' })).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.bench .strip')).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.bench .phrase-neck')).toBeInViewport({ ratio: 1 });
  await note(page, 2).click();
  for (const name of ['Text', 'Outlines', 'Variations', 'More', 'Change this note']) {
    const opener = page.getByRole('button', { name, exact: true });
    await opener.click();
    const dialog = page.getByRole('dialog');
    await expect(dialog.locator(':focus')).toHaveCount(1);
    expect(await small(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(dialog).toHaveCount(0);
    await expect(opener).toBeFocused();
  }
  expect(await small(page)).toEqual([]);
  await page.setViewportSize({ width: 640, height: 360 });
  await expect.poll(whole).toBe(true);
});

test('of notes written at once the upper ones are kept with a tap', async ({ page }) => {
  await plan(page, {});
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await writeTablature(page, STAIRS.replace('G|---5---', 'G|---5-5-'));
  await page.getByRole('button', { name: 'Keep the upper notes' }).click();
  await expect(page.getByLabel('Tablature, string 1 on top')).toHaveValue(/G\|---5-----/);
  await page.getByRole('dialog').getByRole('button', { name: 'Put it in' }).click();
  await expect(page.getByRole('button', { name: '1 · ii7 V7' })).toBeVisible();
});

test('on a wide screen everything lies side by side, and the keyboard writes notes', async ({
  page,
}) => {
  await page.setViewportSize(WIDE);
  await plan(page, {});
  await page.getByRole('button', { name: 'Share the link' }).click();
  await expect(page.getByRole('img', { name: 'QR code' })).toBeVisible();
  await expect(sentence(page)).toBeVisible();
  await page.getByRole('radio', { name: 'E♭' }).check();
  await expect(page.getByRole('button', { name: 'Share the link' })).toBeEnabled();
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  for (const name of ['Text', 'Outlines', 'Variations', 'More'])
    await expect(page.getByRole('region', { name, exact: true })).toBeVisible();
  for (const key of ['ArrowUp', '3', 'ArrowUp', 'e']) await page.keyboard.press(key);
  // At once, however busy the machine is.
  await page.evaluate(() => {
    for (let i = 0; i < 2; i++)
      document.activeElement!.dispatchEvent(
        new KeyboardEvent('keydown', { key: '1', bubbles: true, cancelable: true }),
      );
  });
  await expect(note(page, 1)).toHaveAccessibleName(/string 2, fret 3, triplet eighth$/);
  await expect(note(page, 2)).toHaveAccessibleName(/string 1, fret 11, eighth$/);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Delete');
  await expect(note(page, 2)).toHaveCount(0);
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog', { name: 'Keys' })).toContainText('a rest');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(await sideways(page)).toEqual([]);
});

test('with letters half as large again and twice the size nothing of it sticks out, overlaps or grows without end', async ({
  page,
}) => {
  await plan(page, { title: 'Thursday class' });
  await fits(page);
  await openPart(page, 'Cards');
  await fits(page);
  await page.getByText(/^Drills one by one/).click();
  await page.getByText(/^Instrument/).click();
  await fits(page);
  await page.getByRole('button', { name: /^Change drill 1/ }).click();
  await fits(page);
  await page.getByRole('button', { name: 'Back to the lesson' }).click();
  await page.getByRole('link', { name: 'Your lessons' }).click();
  await fits(page);
  await page.getByRole('button', { name: 'Open: Thursday class' }).click();
  await write(page);
  await fits(page);
  for (const name of ['Text', 'Outlines', 'Variations', 'More']) {
    await page.getByRole('button', { name, exact: true }).click();
    await fits(page);
    await done(page);
  }
});

/** With letters twice the size and all that folds open, a phone's page is as long as so many screens at most. */
const LONGEST = 15 * 640;

async function fits(page: Page): Promise<void> {
  for (const size of ['150%', '200%']) {
    await page.evaluate((to) => (document.documentElement.style.fontSize = to), size);
    expect(await sideways(page), size).toEqual([]);
    expect(await overlapping(page), size).toEqual([]);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    expect(height, size).toBeLessThan(LONGEST);
  }
  await page.evaluate(() => (document.documentElement.style.fontSize = ''));
}

/** What sticks out to the left or right of the screen, and is in no frame that scrolls. */
function sideways(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    const framed = '.strip, .phrase-neck, .unseen, .mini, .printed, .tablature';
    const out = [...document.querySelectorAll('#app *')].filter((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      return width > 0 && (left < -1 || right > clientWidth + 1) && !element.closest(framed);
    });
    return [
      ...(scrollWidth > clientWidth ? [`the page is ${scrollWidth} wide`] : []),
      ...out.map((element) => element.outerHTML.slice(0, 120)),
    ];
  });
}

/** Controls of one row or list that lie over one another. */
function overlapping(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const all = [...document.querySelectorAll('main .button, main .part, main summary')].filter(
      (one) =>
        !one.closest('.mini, .last, dialog:not([open]), details:not([open]) > :not(summary)') &&
        one.getClientRects().length > 0,
    );
    return all.flatMap((one, i) =>
      all.slice(i + 1).flatMap((other) => {
        if (one.contains(other) || one.closest('dialog') !== other.closest('dialog')) return [];
        const [a, b] = [one.getBoundingClientRect(), other.getBoundingClientRect()];
        const apart =
          a.right <= b.left + 1 ||
          b.right <= a.left + 1 ||
          a.bottom <= b.top + 1 ||
          b.bottom <= a.top + 1;
        return apart ? [] : [`${one.textContent} over ${other.textContent}`];
      }),
    );
  });
}

/** What can be tapped and is smaller than a fingertip. */
function small(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const dialog = document.querySelector('dialog[open]');
    const targets = (dialog ?? document).querySelectorAll<HTMLElement>(
      'button, a[href], summary, select, label.choice, textarea',
    );
    return [...targets]
      .filter((one) => !one.closest('[inert], .printed, details:not([open]) > :not(summary)'))
      .map((one) => ({ one, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < 43.9)
      .map(({ one, box }) => `${box.width} × ${box.height}: ${one.outerHTML.slice(0, 120)}`);
  });
}
