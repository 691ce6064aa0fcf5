import { readFile } from 'node:fs/promises';
import midiFile from 'midi-file';
import { expect, test, type Locator, type Page } from '@playwright/test';
import {
  axeOn,
  COLOUR_RULES,
  openPart,
  plan,
  reloadKept,
  shareLink,
  writeTablature,
} from './people.ts';

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
  await writeTablature(page, text);
  await done(page);
}

/** Lays a leaf over the desk; `done` takes it away. */
const lay = (page: Page, name: string | RegExp) =>
  page.locator('.desk').getByRole('button', { name, exact: true }).click();
const done = (page: Page) => page.getByRole('button', { name: 'Done' }).last().click();

async function putIn(page: Page) {
  await page.getByRole('button', { name: 'Put it in' }).click();
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
}

/** A place of the neck that a phrase is written on. */
const place = (page: Page, string: number, fret: number) =>
  page.locator(`.bench [data-string="${string}"][data-fret="${fret}"]`);

const strip = (page: Page) => page.getByRole('toolbar', { name: 'Note by note' });
const note = (page: Page, number: number) =>
  strip(page).getByRole('button', { name: new RegExp(`^Note ${number}:`) });

/** Two bars of triplets: ii7 up and down twice, then V7, as places. */
const UP_AND_DOWN = [
  [3, 5],
  [2, 4],
  [1, 3],
  [1, 6],
  [1, 3],
  [2, 4],
] as const;
const TWO_BARS = [
  ...UP_AND_DOWN,
  ...UP_AND_DOWN,
  ...([
    [2, 6],
    [1, 5],
    [1, 8],
    [1, 11],
    [1, 8],
    [1, 5],
  ] as const),
  ...UP_AND_DOWN,
];

test('two bars of triplets are tapped on the neck, changed, taken back and done again, and survive a reload', async ({
  page,
}) => {
  await plan(page, {});
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  for (const [string, fret] of TWO_BARS) await place(page, string, fret).tap();
  await expect(note(page, 24)).toHaveAccessibleName(
    'Note 24: degree 4, string 2, fret 4, triplet eighth',
  );
  await lay(page, 'Text');
  await expect(tablature(page)).toHaveValue(/beats +1\/3\n/);
  await done(page);

  // A note moved, lengthened, joined to another and taken out; each is one step.
  await note(page, 2).click();
  await lay(page, /^Length/);
  await page.getByRole('dialog').getByRole('radio', { name: 'eighths' }).check();
  await done(page);
  await expect(note(page, 2)).toHaveAccessibleName(/string 2, fret 4, eighth$/);
  await place(page, 3, 8).tap();
  await expect(note(page, 2)).toHaveAccessibleName(/degree 4, string 3, fret 8, eighth$/);
  await lay(page, 'Change this note');
  await expect(page.getByRole('radio', { name: 'pull-off' })).toBeDisabled();
  await expect(page.getByText('A pull-off leads to a lower note.')).toBeVisible();
  await page.getByRole('radio', { name: 'slide' }).check();
  await expect(note(page, 2)).toHaveAccessibleName(/by slide$/);
  await page.getByRole('button', { name: 'Later' }).click();
  await done(page);
  await expect(note(page, 3)).toHaveAccessibleName(/string 3, fret 8, eighth$/);
  await page.getByRole('button', { name: 'Delete' }).click();
  await expect(note(page, 24)).toHaveCount(0);

  const undo = page.getByRole('button', { name: 'Undo' });
  for (let i = 0; i < 2; i++) await undo.click();
  await expect(note(page, 2)).toHaveAccessibleName(/by slide$/);
  await reloadKept(page);
  await page.getByRole('button', { name: 'Go on with the phrase you began' }).click();
  await expect(note(page, 2)).toHaveAccessibleName(/by slide$/);
  for (let i = 0; i < 3; i++) await undo.click();
  await expect(note(page, 2)).toHaveAccessibleName(/string 2, fret 4, triplet eighth$/);
  const redo = page.getByRole('button', { name: 'Redo' });
  for (let i = 0; i < 5; i++) await redo.click();
  await expect(redo).toBeDisabled();
  await expect(note(page, 24)).toHaveCount(0);

  // A rest, and a note chosen on the neck.
  await page.getByRole('button', { name: 'Choose a note on the neck' }).click();
  await place(page, 1, 11).tap();
  await expect(note(page, 15)).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Rest' }).click();
  await expect(strip(page).getByText('rest')).toHaveCount(1);
  await putIn(page);
});

test('a phrase is written and changed with the keyboard alone', async ({ page }) => {
  await plan(page, {});
  await page.getByRole('button', { name: 'Add a phrase' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'A phrase' })).toBeFocused();
  const tabTo = async (target: Locator) => {
    for (let i = 0; i < 40; i++) {
      if (await target.evaluate((one) => one.contains(document.activeElement))) return;
      await page.keyboard.press('Tab');
    }
    throw new Error('The Tab key does not lead there.');
  };
  const press = async (...keys: string[]) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await tabTo(page.getByRole('grid', { name: 'Neck to write on' }));
  // The neck is gone over place by place, from its lowest open string.
  let [string, fret] = [6, 0];
  for (const [wanted, at] of [
    [3, 5],
    [2, 4],
    [1, 3],
  ] as const) {
    while (string !== wanted || fret !== at) {
      await press(string !== wanted ? 'ArrowRight' : fret < at ? 'ArrowDown' : 'ArrowUp');
      if (string !== wanted) string--;
      else fret += fret < at ? 1 : -1;
      await expect(place(page, string, fret)).toBeFocused();
    }
    await press('Enter');
  }
  await expect(note(page, 3)).toHaveAccessibleName(/degree 6, string 1, fret 3/);

  await page.keyboard.press('Control+z');
  await expect(note(page, 3)).toHaveCount(0);
  await page.keyboard.press('Control+Shift+z');
  await expect(note(page, 3)).toHaveCount(1);

  const back = async (target: Locator) => {
    for (let i = 0; i < 40; i++) {
      if (await target.evaluate((one) => one.contains(document.activeElement))) return;
      await page.keyboard.press('Shift+Tab');
    }
    throw new Error('The Tab key does not lead back there.');
  };
  await back(strip(page));
  await press('ArrowLeft');
  await expect(note(page, 3)).toBeFocused();
  await press('Shift+ArrowLeft');
  await expect(note(page, 2)).toBeFocused();
  await expect(note(page, 2)).toHaveAccessibleName(/degree 6/);
  await press('Delete');
  await expect(note(page, 3)).toHaveCount(0);
  await press('Home', 'Delete', 'Backspace');
  await expect(strip(page).getByRole('button', { name: /^Note/ })).toHaveCount(0);
  await press('Control+z', 'Control+z', 'Control+z');
  await expect(note(page, 2)).toHaveAccessibleName(/degree 6/);
});

test('text that cannot be read yet stays while the neck is tapped', async ({ page }) => {
  await plan(page, {});
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await place(page, 3, 5).tap();
  const text = STAIRS.replace('B|-----4', 'B|-----x');
  await writeTablature(page, text);
  await expect(page.getByText('Until it can be read')).toBeVisible();
  await done(page);
  await place(page, 2, 4).tap();
  await expect(note(page, 2)).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Put it in' })).toBeDisabled();
  await lay(page, 'Text');
  await expect(tablature(page)).toHaveValue(text);
  await tablature(page).fill(STAIRS);
  await done(page);
  await expect(note(page, 13)).toHaveCount(1);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(note(page, 3)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Put it in' })).toBeEnabled();
});

test('a pasted phrase goes into the lesson, and the student sees and plays it', async ({
  page,
  browser,
}) => {
  await plan(page, {});
  await write(page, STAIRS);
  await lay(page, 'Outlines');
  await expect(page.getByText('It outlines ii7 (Cm7), then V7 (F7).')).toBeVisible();
  await done(page);
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
  await expect(notes.first()).toHaveAccessibleName(
    'Note 1: degree 2, string 3, fret 5, triplet eighth',
  );
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
  await expect(page.getByRole('button', { name: 'Put it in' })).toBeDisabled();
  await lay(page, 'Text');
  await page.getByRole('button', { name: 'Line 2, column 8' }).click();
  expect(
    await tablature(page).evaluate((field: HTMLTextAreaElement) =>
      field.value.slice(field.selectionStart, field.selectionEnd),
    ),
  ).toBe('x');
  await reloadKept(page);
  await page.getByRole('button', { name: 'Go on with the phrase you began' }).click();
  await lay(page, 'Text');
  await expect(tablature(page)).toHaveValue(text);
});

test('where it is not sure it asks, and what the teacher says stands', async ({ page }) => {
  await plan(page, {});
  await write(page, 'e|-----|\nB|-6-3-|\nG|-----|\nD|-----|\nA|-----|\nE|-----|');
  await lay(page, /^Length/);
  await page.getByRole('dialog').getByRole('radio', { name: 'quarters' }).check();
  await done(page);
  await lay(page, 'Outlines');
  const asked = page.getByRole('group', { name: /I \(B♭\), or iii/ });
  await asked.getByRole('radio', { name: 'iii (Dm)' }).click();
  await expect(page.getByText('as you say')).toBeVisible();
  await expect(page.getByRole('button', { name: /^iii, / })).toBeVisible();
  await done(page);
  await putIn(page);
  await page.getByRole('button', { name: '1 · iii' }).click();
  await lay(page, 'Outlines');
  await expect(page.getByText('as you say')).toBeVisible();
});

test('the teacher says where a group ends and what a note is, and takes it back', async ({
  page,
}) => {
  await plan(page, {});
  await write(page, STAIRS);
  const undo = async () => {
    await done(page);
    await page.getByRole('button', { name: 'Undo' }).click();
    await lay(page, 'Outlines');
  };
  await lay(page, 'Outlines');
  const first = page.getByRole('region', { name: 'Notes 1 to 6' });
  await expect(first.getByText(/% sure/)).toBeVisible();
  await first.getByLabel('ends with note').selectOption('5');
  await expect(page.getByRole('region', { name: 'Notes 1 to 5' })).toContainText(
    'grouped as you say',
  );
  await expect(page.getByRole('region', { name: 'Notes 6 to 13' })).toBeVisible();
  await page
    .getByRole('region', { name: 'Notes 1 to 5' })
    .getByLabel('ends with note')
    .selectOption('13: joined to the next');
  await expect(page.getByRole('region', { name: 'Notes 1 to 13' })).toBeVisible();
  await undo();
  await undo();
  await first.getByLabel('another group begins at').selectOption('note 4');
  await first.getByRole('button', { name: 'Cut' }).click();
  await expect(page.getByRole('region', { name: 'Notes 4 to 6' })).toBeVisible();
  await undo();
  await done(page);

  // What is said of a single note stands, and the lesson keeps it.
  await note(page, 6).click();
  await lay(page, 'Change this note');
  const what = page.getByLabel('It is the third of ii7');
  await what.selectOption('an appoggiatura');
  await expect(page.getByText('· as you say')).toBeVisible();
  await done(page);
  await lay(page, 'Outlines');
  await expect(page.getByText('Note 6 is an appoggiatura.')).toBeVisible();
  await done(page);
  await putIn(page);
  await page.getByRole('button', { name: /^1 · / }).click();
  await lay(page, 'Outlines');
  await expect(page.getByText('Note 6 is an appoggiatura.')).toBeVisible();
});

test('a variation is compared and kept; a phrase is removed and put back', async ({ page }) => {
  await plan(page, {});
  await write(page, STAIRS);
  await lay(page, 'Variations');
  await page.locator('summary', { hasText: 'In the same key' }).click();
  const backwards = page.getByRole('region', { name: 'backwards' });
  await backwards.getByRole('button', { name: 'Compare' }).click();
  await expect(backwards.getByRole('figure')).toHaveCount(2);
  await backwards.getByRole('button', { name: 'Hear the variation' }).click();
  await expect(backwards.locator('.sounding')).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(backwards.getByRole('button', { name: 'Compare' })).toBeFocused();
  await backwards.getByRole('button', { name: 'Keep it' }).click();
  // What it was made of goes in before it.
  await expect(page.getByText('“backwards” is phrase 2 of the lesson.')).toBeVisible();
  await done(page);
  await putIn(page);
  const phrases = page.getByRole('region', { name: 'Phrases' }).getByRole('listitem');
  await expect(phrases).toHaveCount(2);
  await page.getByRole('button', { name: 'Remove phrase 1' }).click();
  await expect(phrases).toHaveCount(1);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect(phrases).toHaveCount(2);
});

test('a phrase that was thrown away can be gone on with', async ({ page }) => {
  await plan(page, {});
  await write(page, STAIRS);
  await lay(page, 'More');
  await page.getByRole('button', { name: 'Throw away' }).click();
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await putIn(page);
  const phrases = page.getByRole('region', { name: 'Phrases' }).getByRole('listitem');
  await expect(phrases).toHaveCount(1);
});

test('a phrase is moved to another key: kept in this lesson, or the first of one in that key', async ({
  page,
}) => {
  await plan(page, {});
  await write(page, STAIRS);
  await lay(page, 'Variations');
  await page.getByText('In another key', { exact: true }).click();
  await expect(page.getByText('Choose another key or another scale.')).toBeVisible();
  await page.locator('.other-key').getByRole('combobox', { name: 'Key' }).selectOption('G');
  const moved = page.getByRole('region', { name: 'in G major' });
  await expect(moved).toContainText('3 semitones lower');
  await moved.getByRole('button', { name: 'Compare' }).click();
  await expect(
    moved
      .getByRole('figure', { name: 'The variation' })
      .getByRole('button', { name: /^Note 1: degree 2,/ }),
  ).toHaveCount(1);
  await done(page);
  await moved.getByRole('button', { name: 'Keep it in this lesson' }).click();
  await expect(page.getByText('this lesson, which stays in B♭ major')).toBeVisible();
  await page
    .locator('.other-key')
    .getByRole('combobox', { name: 'Scale' })
    .selectOption('harmonic minor');
  await page.getByRole('button', { name: 'A lesson in G harmonic minor' }).click();
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
  await openPart(page, 'Key');
  await expect(page.getByRole('radio', { name: 'G', exact: true })).toBeChecked();
  const phrases = page.getByRole('region', { name: 'Phrases' }).getByRole('listitem');
  await expect(phrases).toHaveCount(1);
  await expect(phrases).toContainText('iiø7 V7');
});

test('a phrase leaves as text, as MIDI and as MusicXML, and comes back from text and MIDI', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await plan(page, {});
  await write(page, STAIRS);
  await lay(page, 'More');
  await page.getByText('Copy, save or print').click();
  await page.getByRole('button', { name: 'Copy the tablature' }).click();
  await expect(page.getByText('Copied. Paste it into a message.')).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  const mid = await saved(page, 'MIDI file');
  const sounded = midiFile.parseMidi(mid.bytes).tracks.flat();
  expect(sounded.filter(({ type }) => type === 'noteOn')).toHaveLength(13);
  const xml = await saved(page, 'MusicXML file');
  expect(xml.bytes.toString('utf8').match(/<fret>/g)).toHaveLength(13);

  await done(page);
  const outlined = async (yes: boolean) => {
    await done(page);
    await lay(page, 'Outlines');
    await expect(page.getByText('It outlines ii7 (Cm7), then V7 (F7).')).toBeVisible({
      visible: yes,
    });
    await done(page);
    await lay(page, 'Text');
  };
  await writeTablature(page, '');
  await outlined(false);
  await tablature(page).fill(copied);
  await outlined(true);
  await tablature(page).fill('');
  await page.setInputFiles('input[type=file]', {
    name: 'a.mid',
    mimeType: 'audio/midi',
    buffer: mid.bytes,
  });
  await outlined(true);
});

// In the dark by the rules of colour, which alone depend on it.
for (const colorScheme of ['light', 'dark'] as const) {
  const rules = colorScheme === 'dark' ? COLOUR_RULES : undefined;
  test(`the phrase’s form has no fault that a checker finds, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await plan(page, {});
    await write(page, STAIRS);
    await expect(note(page, 13)).toHaveCount(1);
    expect(await faults(page, rules)).toEqual([]);
    await note(page, 2).click();
    for (const leaf of [/^Length/, 'Change this note', 'Text', 'Outlines', 'Variations', 'More']) {
      await lay(page, leaf);
      expect(await faults(page, rules)).toEqual([]);
      await done(page);
    }
  });

  test(`the student’s phrase has no fault that a checker finds, ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await plan(page, {});
    await write(page, STAIRS);
    await openAsStudent(page);
    expect(await faults(page, rules)).toEqual([]);
  });
}

test('at twice the text size nothing is wider than the phone', async ({ page }) => {
  await plan(page, {});
  await write(page, STAIRS);
  await expect(note(page, 13)).toHaveCount(1);
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

async function faults(page: Page, rules?: readonly string[]): Promise<string[]> {
  const axe = axeOn(page);
  const { violations } = await (rules ? axe.withRules([...rules]) : axe).analyze();
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
