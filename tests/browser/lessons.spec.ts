/** The teacher's lessons: tuned drill by drill, for any instrument, kept on the device, begun from others. */
import { expect, test, type Page } from '@playwright/test';
import {
  answerCards,
  axeOn,
  chooseCards,
  openPart,
  openWords,
  plan,
  reloadKept,
  shareLink,
  SMALL,
  startLesson,
  writeTablature,
} from './people.ts';

const TABLATURE = [
  'e|-------3-6-3---|',
  'B|-----4-------4-|',
  'G|---5-----------|',
  'D|---------------|',
  'A|---------------|',
  'E|---------------|',
].join('\n');

const estimate = (page: Page) => page.getByText(/^\d+ items? · about/);
const strings = (page: Page) => page.getByRole('group', { name: 'Strings' });
const unfold = (page: Page, name: string) => page.getByText(new RegExp(`^${name}`)).click();
const toForm = (page: Page) => page.getByRole('button', { name: 'Back to the lesson' }).click();
const toLessons = (page: Page) => page.getByRole('link', { name: 'Your lessons' }).click();
const titles = (page: Page) => page.locator('.lesson-list h2');

test('a lesson is for any instrument, and a tuning that makes no sense is told of by its string', async ({
  page,
  browser,
}) => {
  await plan(page, { kinds: ['spot'], frets: [0, 12] });
  await openPart(page, 'Strings');
  await unfold(page, 'Instrument');
  await page.getByLabel('Tuned as').selectOption('ukulele');
  await expect(strings(page).getByRole('checkbox')).toHaveCount(4);
  const open = page.getByLabel('Open strings, the lowest first');
  await open.fill('G4 C4 E4 H4');
  await expect(page.getByText('String 1 is tuned to “H4”: write a note')).toBeVisible();
  await expect(page.getByText('Until then the lesson is for the ukulele.')).toBeVisible();
  await open.fill('D4 G3 B3 E4 A4');
  await page.getByLabel('Frets', { exact: true }).fill('17');
  await page.getByLabel('Left-handed').check();
  await expect(page.getByText('Instrument · own tuning')).toBeVisible();
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  const link = await shareLink(page);

  const student = await (await browser.newContext()).newPage();
  await startLesson(student, link);
  await student.locator('[data-kind="spot"]').waitFor();
  await expect(student.locator('[data-tuning]').first()).toHaveAttribute(
    'data-tuning',
    'D4 G3 B3 E4 A4',
  );
  await student.context().close();
});

test('drills are tuned apart, ordered, taken out and put back, and the estimate follows', async ({
  page,
  browser,
}) => {
  await plan(page, SMALL);
  await expect(estimate(page)).toContainText('7 items · about');
  await unfold(page, 'Drills one by one');
  await page.getByLabel('Another drill').selectOption('spot');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Drill 2' })).toBeFocused();
  const choose = (group: string, name: string) =>
    page.getByRole('group', { name: group }).getByRole('checkbox', { name, exact: true });
  await choose('Chords', 'sevenths').check();
  await choose('Chords', 'triads').uncheck();
  await choose('Strings', '5–4').uncheck();
  await page.getByRole('button', { name: 'other strings' }).click();
  await page.getByLabel('Strings from the lowest').fill('2-4');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByRole('alert')).toContainText('Write the lowest string first');
  await page.getByLabel('Strings from the lowest').fill('4-3-2-1');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  const told = page.getByRole('status').getByText(/^\d+ items?/);
  const count = Number.parseInt((await told.textContent())!);
  expect(count).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Try a card' }).click();
  await expect(page.locator('[data-kind="spot"]')).toHaveAttribute('data-item', /:seventh:/);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await toForm(page);
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  await toForm(page);
  await expect(page.getByRole('button', { name: /^Change drill 2/ })).toBeFocused();
  await expect(estimate(page)).toContainText(`${7 + count} items`);

  await page.getByRole('button', { name: 'Move drill 2 up' }).press('Enter');
  // At the top there is only the way back.
  await expect(page.getByRole('button', { name: 'Move drill 1 down' })).toBeFocused();
  await expect(page.getByRole('button', { name: /^Change drill 1: .*sevenths/ })).toBeVisible();
  await page.getByRole('button', { name: 'Remove drill 2' }).click();
  await expect(estimate(page)).toContainText(new RegExp(`^${count} items?`));
  await expect(page.getByRole('button', { name: 'Put it back' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Change drill 2/ })).toBeFocused();
  await expect(estimate(page)).toContainText(`${7 + count} items`);
  expect((await axeOn(page).analyze()).violations).toEqual([]);

  // What the form chooses is for the drill that was not tuned apart.
  await openPart(page, 'Chords');
  await choose('Degrees', 'vii°').uncheck();
  await expect(estimate(page)).toContainText(`${6 + count} items`);
  const student = await (await browser.newContext()).newPage();
  await startLesson(student, await shareLink(page));
  const asked = await answerCards(student, Math.min(count, 3));
  for (const { item } of asked) expect(item).toContain(':seventh:');
  await student.context().close();
});

test('any item can be marked easy or hard', async ({ page }) => {
  await plan(page, SMALL);
  await unfold(page, 'Drills one by one');
  await page.getByRole('button', { name: /^Change drill 1/ }).click();
  await unfold(page, 'How hard single items are');
  await page.getByLabel('Find, like').fill('vii 5-4');
  const found = page.locator('.marks select');
  await expect(found).toHaveCount(1);
  await found.selectOption('hard');
  await toForm(page);
  await unfold(page, '1 item is marked easy or hard');
  await expect(page.getByLabel('name vii° on strings 5–4')).toHaveValue('5');
  const link = await shareLink(page);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await page.getByRole('button', { name: 'Change it' }).click();
  await expect(page.getByRole('button', { name: 'Share the link' })).toBeFocused();
  await page.evaluate(() => (location.hash = '#/teach/lessons'));
  await page.goto(link);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await reloadKept(page);
  await page.goto('#/teach');
  await expect(page.getByText('1 item is marked easy or hard')).toBeVisible();
});

test('several unfinished lessons survive a reload, and are copied, named, put away and taken back', async ({
  page,
}) => {
  await plan(page, { tonic: 'D', title: 'Tuesday, quay side' });
  await toLessons(page);
  await page.getByRole('button', { name: 'A new lesson' }).click();
  await page.getByRole('radio', { name: 'F', exact: true }).check();
  await reloadKept(page);
  await openPart(page, 'Key');
  await expect(page.getByRole('radio', { name: 'F', exact: true })).toBeChecked();
  await toLessons(page);
  await expect(titles(page)).toHaveText(['Arpeggios of F major', 'Tuesday, quay side']);
  await page.getByRole('button', { name: 'Copy: Tuesday, quay side' }).click();
  await expect(page.getByLabel('Title')).toHaveValue('Copy of Tuesday, quay side');
  await openPart(page, 'Key');
  await expect(page.getByRole('radio', { name: 'D', exact: true })).toBeChecked();
  await toLessons(page);
  await page.getByRole('button', { name: 'Rename: Copy of Tuesday' }).click();
  await page.getByLabel('Title').fill('Thursday, quay side');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Rename: Thursday, quay side' })).toBeFocused();
  await page.getByRole('button', { name: 'Put away: Tuesday, quay side' }).click();
  await reloadKept(page);
  await expect(titles(page)).toHaveText([
    'Thursday, quay side',
    'Arpeggios of F major',
    'Tuesday, quay side',
  ]);
  await expect(titles(page).nth(2)).toBeHidden();
  await unfold(page, 'Put away · 1');
  await page.getByRole('button', { name: 'Take back: Tuesday, quay side' }).click();
  await expect(titles(page).first()).toHaveText('Tuesday, quay side');
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  await page.getByRole('button', { name: 'Open: Tuesday, quay side' }).click();
  await expect(page.getByLabel('Title')).toHaveValue('Tuesday, quay side');
});

test('what one window changes of a lesson the other one has at once, and says so', async ({
  page,
}) => {
  await plan(page, { ...SMALL, title: 'Tuesday, quay side' });
  const other = await page.context().newPage();
  await other.goto('#/teach');
  await expect(other.getByLabel('Title')).toHaveValue('Tuesday, quay side');
  await openWords(other);
  await other.getByLabel('A note to the student').fill('Slowly at first.');
  const told = page.getByText('This lesson was changed in another window.');
  await expect(told).toBeVisible();
  await expect(page.getByLabel('A note to the student')).toHaveValue('Slowly at first.');
  await openWords(page);
  await page.getByLabel('Title').fill('Thursday, quay side');
  await expect(told).toHaveCount(0);
  await expect(other.getByLabel('Title')).toHaveValue('Thursday, quay side');
  // What is only shared, and a lesson of its own, change nothing in the other window's form.
  await shareLink(page);
  await openWords(other);
  await other.getByLabel('A note to the student').fill('Slowly.');
  await expect(page.getByLabel('A note to the student')).toHaveValue('Slowly.');
  await other.getByRole('button', { name: 'A new lesson' }).click();
  await other.getByRole('radio', { name: 'E♭', exact: true }).check();
  await expect(page.getByLabel('Title')).toHaveValue('Thursday, quay side');
  await reloadKept(page);
  await toLessons(page);
  await expect(titles(page)).toHaveText(['Arpeggios of E♭ major', 'Thursday, quay side']);
});

test('a lesson starts from a ready-made or a received one in one tap, and the one before is kept', async ({
  page,
  browser,
}) => {
  const other = await (await browser.newContext()).newPage();
  await plan(other, { ...SMALL, title: 'From the other quay' });
  const link = await shareLink(other);
  await other.context().close();
  await page.goto(link);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await plan(page, { tonic: 'G' });
  await toLessons(page);
  await page.getByRole('button', { name: 'From the other quay', exact: true }).click();
  await expect(page.getByLabel('Title')).toHaveValue('From the other quay');
  await expect(estimate(page)).toContainText('7 items');
  await toLessons(page);
  await page.getByRole('button', { name: 'Fog over the harbour: G minor' }).click();
  await openPart(page, 'Key');
  await expect(page.getByRole('radio', { name: 'minor', exact: true })).toBeChecked();
  await toLessons(page);
  await expect(titles(page)).toHaveCount(3);
});

test('a lesson with a phrase and no drill opens for the student to see and play', async ({
  page,
  browser,
}) => {
  await plan(page, { kinds: [] });
  await expect(page.getByRole('status')).toContainText('or add a phrase');
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await writeTablature(page, TABLATURE);
  await page.getByRole('dialog').getByRole('button', { name: 'Put it in' }).click();
  // Drills that fit come with the phrase.
  await expect(estimate(page)).toBeVisible();
  await chooseCards(page, []);
  await expect(page.getByText('a lesson to see, hear and play')).toBeVisible();
  const link = await shareLink(page);

  const student = await (await browser.newContext()).newPage();
  await student.goto(link);
  await expect(student.getByText('1, to see, hear and play')).toBeVisible();
  await student.getByRole('button', { name: 'See the phrases' }).click();
  await expect(student.getByRole('heading', { name: 'The phrase' })).toBeVisible();
  for (const screen of ['today', 'lessons', 'known', 'send', 'round', 'neck']) {
    await student.goto(`#/${screen}`);
    await expect(student.locator('main h1').first()).toBeVisible();
    expect(await student.getByRole('alert').count()).toBe(0);
  }
  await student.goto('#/today');
  await student.getByRole('link', { name: 'The phrase of this lesson' }).click();
  await expect(student.getByRole('button', { name: 'Play', exact: true })).toBeVisible();
  await student.context().close();
});

test('Teach, tapped once more, goes back to the lesson from its link, its phrase, a drill and a card', async ({
  page,
}) => {
  await plan(page, { ...SMALL, title: 'Tuesday, quay side' });
  const teach = page.getByRole('navigation').getByRole('link', { name: 'Teach' });
  const back = async () => {
    await expect(page.getByLabel('Title')).toHaveCount(0);
    await teach.click();
    await expect(page.getByLabel('Title')).toHaveValue('Tuesday, quay side');
  };
  await shareLink(page);
  await back();
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await back();
  await page.getByRole('button', { name: 'Try a card' }).click();
  await back();
  await unfold(page, 'Drills one by one');
  await page.getByRole('button', { name: /^Change drill 1/ }).click();
  await back();
});
