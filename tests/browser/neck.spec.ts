import { expect, test, type Page } from '@playwright/test';
import { misnamed, type NamedDot } from './musician.ts';
import { axeOn, countSounds, lessonLink, linkIn, placeOn, SMALL, startLesson } from './people.ts';

const neck = (page: Page) => page.locator('.neck');
const step = (page: Page, degree: number) => page.locator(`[data-answer="${degree}"]`);
const told = (page: Page) => page.getByRole('status').filter({ visible: true });
const choose = (page: Page, label: string, value: string) =>
  page.getByRole('combobox', { name: label, exact: true }).selectOption(value);

async function open(page: Page, rest = '') {
  await page.goto(`#/neck${rest && `/${rest}`}`);
  await neck(page).waitFor();
}

/** What a named dot says wrongly, of all there are; and how many there are. */
async function checked(page: Page, key: string) {
  const { tuning, dots } = await neck(page).evaluate((root: HTMLElement) => ({
    tuning: root.dataset.tuning!.split(' '),
    dots: [...root.querySelectorAll<HTMLElement>('[data-note]')].map(({ dataset }): NamedDot => ({
      string: Number(dataset.string),
      fret: Number(dataset.fret),
      note: dataset.note!,
      degree: Number(dataset.degree),
    })),
  }));
  const wrong = dots.map((dot) => misnamed(dot, { key, tuning })).filter(Boolean);
  return { count: dots.length, wrong };
}

test('opens in B♭ major where there is no lesson, else in the key of the lesson', async ({
  page,
  baseURL,
}) => {
  await open(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('B♭ major');
  expect(await page.getByRole('navigation').getByRole('link').allTextContents()).toEqual([
    'Today',
    'Neck',
    'Lessons',
    'Teach',
  ]);
  await startLesson(page, await lessonLink({ ...SMALL, tonic: 'E♭', scale: 'minor' }, baseURL!));
  await page.locator('[data-kind]').waitFor();
  await open(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('E♭ minor');
});

test('names every dot rightly in keys and on instruments of all sorts', async ({ page }) => {
  const looked = [
    ['Bb-major', 'Bb major'],
    ['Fsharp-harmonic-minor/seventh-3/8-string-guitar', 'F# harmonic minor'],
    ['Cb-major/ninth-7/ukulele', 'Cb major'],
    ['D-dorian/triad-2-to-4/bass/left-handed', 'D dorian'],
    ['Gsharp-melodic-minor/Csharp2.Gsharp2.Csharp3.Fsharp3.Asharp3', 'G# melodic minor'],
  ] as const;
  for (const [address, key] of looked) {
    await open(page, address);
    const shown = key.replace('#', '♯').replace(/^([A-G])b/, '$1♭');
    await expect(page.getByRole('heading', { level: 1 })).toContainText(shown);
    const { count, wrong } = await checked(page, key);
    expect(wrong, address).toEqual([]);
    expect(count, address).toBeGreaterThan(10);
  }
});

test('steps from arpeggio to arpeggio and tells by form and words what stays, goes and comes', async ({
  page,
}) => {
  await open(page);
  await step(page, 2).click();
  await step(page, 4).click();
  await expect(told(page)).toHaveText('ii to IV: E♭ and G stay, C goes, B♭ comes.');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('IV of B♭ major: E♭');
  const look = (string: number, fret: number) =>
    placeOn(page, { string, fret })
      .locator('.dot')
      .evaluate((dot) => {
        const { outlineStyle, borderStyle } = getComputedStyle(dot);
        return { outlineStyle, borderStyle, text: dot.textContent };
      });
  expect(await look(4, 1)).toEqual({ outlineStyle: 'none', borderStyle: 'none', text: 'E♭' });
  expect(await look(5, 3)).toEqual({ outlineStyle: 'none', borderStyle: 'dashed', text: '' });
  expect(await look(5, 1)).toEqual({ outlineStyle: 'solid', borderStyle: 'solid', text: 'B♭' });
  await expect(placeOn(page, { string: 5, fret: 3 })).toHaveAccessibleName(
    'string 5, fret 3, C, goes',
  );
  await expect(step(page, 4)).toHaveAttribute('aria-pressed', 'true');
  await step(page, 4).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('B♭ major');
});

test('shows one shape, moves it, and tells where and why it bends', async ({ page }) => {
  await open(page, 'Bb-major/triad-2');
  await choose(page, 'Where', 'shape 4–3');
  await choose(page, 'On the dots', 'fingers');
  await expect(told(page)).toContainText('Cm');
  await expect(page.locator('[data-dot]')).toHaveCount(3);
  await page.getByRole('button', { name: 'same shape on higher strings' }).click();
  await expect(told(page)).toContainText('Strings 3 and 2 are tuned a major third apart');
  const bent = page.locator('[data-dot]:has(.bent)');
  const unbent = page.locator('[data-dot]:has(.unbent)');
  await expect(bent.first()).toHaveAccessibleName(/string 2, .*finger [1-4], bent to here/);
  await expect(unbent.first()).toHaveAccessibleName(/string 2, .*here if nothing bent/);
  const { count, wrong } = await checked(page, 'Bb major');
  expect({ count, wrong }).toEqual({ count: 3, wrong: [] });
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(640);
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  const dots = () =>
    page
      .locator('[data-dot]')
      .evaluateAll((all) => all.map((dot) => dot.ariaLabel + dot.innerHTML));
  const shown = await dots();
  await page.reload();
  await neck(page).waitFor();
  expect(await dots()).toEqual(shown);
  await page.getByRole('button', { name: 'same shape up the neck' }).click();
  await expect(step(page, 3)).toHaveAttribute('aria-pressed', 'true');
  await expect(page.locator('.bent')).toHaveCount(0);
});

test('is a link that shows the same elsewhere', async ({ page, browser }) => {
  await open(page);
  await choose(page, 'Tonic', 'F#');
  await choose(page, 'Scale', 'dorian');
  await choose(page, 'Arpeggios', 'seventh');
  await choose(page, 'On the dots', 'degrees');
  await choose(page, 'Where', 'strings 5–4');
  await step(page, 2).click();
  await step(page, 5).click();
  await page.getByRole('button', { name: 'More' }).click();
  await choose(page, 'Instrument', 'drop D');
  await page.getByRole('checkbox', { name: 'Left-handed' }).check();
  const link = await linkIn(page.getByLabel('The link to what is shown'));
  expect(link).toContain(
    '#/neck/Fsharp-dorian/seventh-2-to-5/degrees/strings-5-4/drop-D/left-handed',
  );
  expect(page.url()).toBe(link);
  await page.getByRole('button', { name: 'Done' }).click();
  const shown = await neck(page).innerHTML();
  const other = await browser.newPage();
  await other.goto(link);
  await neck(other).waitFor();
  expect(await neck(other).innerHTML()).toBe(shown);
  await other.close();
});

test('shows a plain neck and says why where a link is damaged', async ({ page }) => {
  await open(page, 'Bb-major/triad-9');
  await expect(page.getByRole('alert')).toContainText('“triad-9”');
  expect(await checked(page, 'Bb major')).toMatchObject({ wrong: [] });
  await step(page, 2).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('scrolls under the names of its strings, with the stair in reach, upright on a small phone', async ({
  page,
}) => {
  await open(page);
  await placeOn(page, { string: 1, fret: 22 }).focus();
  await expect(placeOn(page, { string: 1, fret: 22 })).toBeInViewport();
  for (const name of await page.locator('.string-name').all()) await expect(name).toBeInViewport();
  await expect(step(page, 1)).toBeInViewport({ ratio: 1 });
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(640);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  const small = await page
    .locator('.whole-neck button, .whole-neck select, nav a')
    .evaluateAll((all) =>
      all
        .map((one) => ({ box: one.getBoundingClientRect(), name: one.textContent }))
        // A seventh of the width of a phone of 360 is 43 and a bit.
        .filter(({ box }) => box.width < 43 || box.height < 43.5)
        .map(({ name, box }) => `${name}: ${box.width} × ${box.height}`),
    );
  expect(small).toEqual([]);
});

test('lies down with the phone, and shows a position where it is', async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await open(page);
  await expect(neck(page)).toHaveClass(/lying/);
  await choose(page, 'Where', 'frets 15–19');
  await expect(placeOn(page, { string: 1, fret: 15 })).toBeInViewport({ ratio: 1 });
  const frets = await page
    .locator('[data-dot]')
    .evaluateAll((all) => all.map((dot) => Number((dot as HTMLElement).dataset.fret)));
  expect([Math.min(...frets), Math.max(...frets)]).toEqual([15, 19]);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(neck(page)).toHaveClass(/upright/);
});

test('is heard where it is tapped, and as a whole', async ({ page }) => {
  const started = await countSounds(page);
  await open(page, 'Bb-major/triad-2');
  await expect
    .poll(
      async () => {
        await placeOn(page, { string: 5, fret: 3 }).click();
        return started();
      },
      { timeout: 20_000 },
    )
    .toBeGreaterThan(0);
  const before = await started();
  await page.locator('[data-do="hear"]').click();
  await expect.poll(started).toBeGreaterThanOrEqual(before + 3);
  await expect(page.locator('.lit')).toHaveCount(1);
  // Something else is played meanwhile: nothing stays lit of what it stopped.
  await page.locator('[data-do="hear"]').click();
  await expect(page.locator('.neck-frame .lit')).toHaveCount(1);
  await page.getByRole('button', { name: 'Play along' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.neck-frame .lit')).toHaveCount(0);
});

test('takes any tuning that makes sense, and says which string makes none', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'More' }).click();
  await choose(page, 'Instrument', 'own tuning');
  const strings = page.getByLabel('Open strings');
  await strings.fill('C2 G2 D3 A3 X4');
  await expect(told(page).first()).toContainText('String 1 is tuned to “X4”');
  await strings.fill('C2 G2 D3 A3 E4');
  await choose(page, 'Capo', '2');
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(neck(page)).toHaveAttribute('data-tuning', 'D2 A2 E3 B3 F#4');
  await expect(placeOn(page, { string: 5, fret: 0 })).toHaveAccessibleName('string 5, open, D');
  await expect(page.locator('.string-name').first()).toHaveText('F♯');
  expect(page.url()).toContain('/C2.G2.D3.A3.E4+2');
});

test('prints the whole neck lying across one clean sheet', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await open(page, 'Bb-major/triad-2-to-4/8-string-guitar');
  await page.getByRole('button', { name: 'More' }).click();
  const sheet = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(sheet).toMatch(/\/Count 1\b/);
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(sheet)!.map(Number);
  expect(width).toBeGreaterThan(height!);

  // The same sheet, as the page draws it for the printer.
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.setViewportSize({ width: 1000, height: 700 });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(neck(page)).toHaveClass(/lying/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('IV of B♭ major: E♭');
  await expect(page.locator('.sheet-words')).toContainText('E♭ and G stay');
  await expect(page.locator('nav, .stair, select, .button').filter({ visible: true })).toHaveCount(
    0,
  );
  const colours = await page.locator('.dot, .string-line').evaluateAll((all) => [
    ...new Set(
      all.flatMap((one) => {
        const { color, backgroundColor, stroke } = getComputedStyle(one);
        return one.classList.contains('dot') ? [color, backgroundColor] : [stroke];
      }),
    ),
  ]);
  expect(colours.toSorted()).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  const right = (await neck(page).boundingBox())!;
  expect(right.x + right.width).toBeLessThanOrEqual(1000);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await expect(page.getByLabel('The link to what is shown')).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`has no fault that axe knows, ${colorScheme}, whole and chosen from`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await open(page, 'Bb-major/ninth-2-to-4');
    expect((await axeOn(page).analyze()).violations).toEqual([]);
    await page.getByRole('button', { name: 'More' }).click();
    expect((await axeOn(page).analyze()).violations).toEqual([]);
  });
}

test('is walked by the arrow keys', async ({ page }) => {
  await open(page);
  await placeOn(page, { string: 5, fret: 1 }).focus();
  await page.keyboard.press('ArrowDown');
  await expect(placeOn(page, { string: 5, fret: 2 })).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(placeOn(page, { string: 4, fret: 2 })).toBeFocused();
});

test('is played along with, up and down, and each note lights up on the neck and in the strip', async ({
  page,
}) => {
  await open(page, 'Bb-major/seventh-2');
  await page.getByRole('button', { name: 'Play along' }).click();
  const dialog = page.getByRole('dialog', { name: 'Play along' });
  const strip = dialog.getByRole('button', { name: /^Note \d/ });
  await expect(strip).toHaveCount(7);
  await dialog.getByLabel('count in').uncheck();
  await page.evaluate(() => {
    // What is lit at once: in the strip, and on the neck.
    const lit: string[] = [];
    new MutationObserver(() => {
      const noted = document.querySelector('.strip .sounding')?.getAttribute('aria-label');
      const at = document.querySelector<HTMLElement>('dialog .neck .lit');
      if (noted && at) lit.push(`${noted} / string ${at.dataset.string}, fret ${at.dataset.fret}`);
    }).observe(document.querySelector('dialog')!, { subtree: true, attributes: true });
    Object.assign(window, { lit });
  });
  await dialog.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(dialog.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Play', exact: true })).toBeVisible();
  const lit = await page.evaluate(() => (window as unknown as { lit: string[] }).lit);
  const notes = new Set(lit);
  expect(notes.size).toBe(7);
  for (const note of notes) expect(note).toMatch(/: degree \d, (string \d, fret \d+) \/ \1$/);
  expect((await axeOn(page).include('dialog').analyze()).violations).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
});
