import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { crc32, fromBase64url } from '../../src/decks/bytes.ts';
import { toBase64url } from '../../src/decks/seal.ts';
import { readReport, reportLink, type Report } from '../../src/decks/report.ts';
import {
  answerCards,
  axeOn,
  kept,
  keptWhenQuiet,
  linkIn,
  makeLesson,
  reloadKept,
  SMALL,
  startLesson,
  type Wishes,
} from './people.ts';

const LESSON: Wishes = { ...SMALL, title: 'Harbour room, Tuesday' };

interface Sending {
  readonly question?: string;
  readonly name?: string;
  /** Cards answered, and whether right. */
  readonly cards?: number;
  readonly right?: boolean;
}

/** What a student sends after some cards of a lesson, on a phone of their own, which stays open. */
async function send(page: Page, { question = '', name = '' }: Sending): Promise<string> {
  await page.goto('#/send');
  await page.getByLabel('A question to your teacher').fill(question);
  await page.getByLabel('Your name, if you like').fill(name);
  return linkIn(page.getByLabel('The report’s link'));
}

/** The phones of a test, which are put away when it is over: what has once sounded on them would go on to cost. */
const phones: BrowserContext[] = [];
test.afterEach(async () => {
  for (const phone of phones.splice(0)) await phone.close();
});

async function newPhone(browser: Browser): Promise<Page> {
  const phone = await browser.newContext();
  phones.push(phone);
  return phone.newPage();
}

async function student(browser: Browser, lesson: string, sending: Sending): Promise<Page> {
  const page = await newPhone(browser);
  await startLesson(page, lesson);
  await answerCards(page, sending.cards ?? 2, sending.right ?? true);
  return page;
}

const reportOf = async (browser: Browser, lesson: string, sending: Sending) =>
  send(await student(browser, lesson, sending), sending);

test('a student’s report opens at the teacher’s, with the question and what was wrong', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const phone = await student(browser, lesson, { cards: 7, right: false });
  await phone.goto('#/today');
  await phone.getByRole('link', { name: 'Send a report' }).click();
  const link = await send(phone, { question: 'Why is <b>ii</b> not IV?', name: 'Mareike' });
  expect(link.length).toBeLessThanOrEqual(500);

  await page.goto(link);
  await expect(page.getByRole('heading', { name: 'Mareike' })).toBeVisible();
  await expect(page.getByText('“Why is <b>ii</b> not IV?”')).toBeVisible();
  await expect(page.getByText('Harbour room, Tuesday')).toBeVisible();
  await expect(page.getByText('seen as').first()).toBeVisible();
  await expect(page.getByRole('row', { name: /5–4, 1–7/ })).toContainText(/[1-7] of 7/);
  await expect(page.getByText('1 of the last 28 days')).toBeVisible();
  const found = await axeOn(page).analyze();
  expect(found.violations).toEqual([]);
  await page.goto('#/class');
  await expect(page.getByRole('link', { name: /Mareike/ })).toBeVisible();
  expect((await axeOn(page).analyze()).violations).toEqual([]);
});

test('what is said of a link that was copied goes as the link changes', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(await makeLesson(page, LESSON));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.getByRole('link', { name: 'Send a report' }).click();
  const copied = page.getByText('Copied. Paste it into a message to your teacher.');
  await page.getByRole('button', { name: 'Copy' }).click();
  await expect(copied).toBeVisible();
  await page.getByLabel('Your name, if you like').fill('Mareike');
  await expect(copied).toHaveCount(0);
});

test('a report names nobody unless a name was typed, and a marked card can be left out of it', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const phone = await student(browser, lesson, { cards: 7 });
  await phone.getByRole('button', { name: 'Look back' }).click();
  await phone.locator('.looked-back button').first().click();
  await phone.getByRole('button', { name: 'Ask the teacher' }).click();
  const link = await send(phone, {});
  await expect(phone.getByRole('button', { name: /Leave out/ })).toHaveCount(1);
  expect((await axeOn(phone).analyze()).violations).toEqual([]);
  await page.goto(link);
  await expect(page.getByRole('heading', { name: /^Student [0-9a-f]{4}$/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Asks about' })).toBeVisible();

  await phone.getByRole('button', { name: /Leave out/ }).click();
  await page.goto(await send(phone, {}));
  await expect(page.getByRole('heading', { name: /^Student/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Asks about' })).toHaveCount(0);
});

test('a report on a lesson that the device has not waits until its link is opened', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const link = await reportOf(browser, lesson, { name: 'Tomke' });
  const other = await newPhone(browser);
  await other.goto(link);
  await expect(other.getByText('Open that lesson’s link here first')).toBeVisible();
  await other.goto('#/class');
  await expect(other.getByText('1 report waits')).toBeVisible();
  await other.goto(lesson);
  await other.getByRole('button', { name: 'Keep for later' }).click();
  await other.goto('#/class');
  await expect(other.getByRole('link', { name: /Tomke/ })).toBeVisible();
});

test('several reports make the next lesson in one tap, and each link opens again after a reload', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const [weak, strong] = await Promise.all([
    reportOf(browser, lesson, { name: 'Mareike', right: false }),
    reportOf(browser, lesson, { name: 'Tomke' }),
  ]);
  for (const [name, link] of [
    ['Tomke', strong!],
    ['Mareike', weak!],
  ] as const) {
    await page.goto(link);
    // The one before says that it is kept until this one is read.
    await expect(page.getByRole('heading', { name })).toBeVisible();
    await expect(page.getByText('Kept on this device.')).toBeVisible();
  }
  await page.goto('#/teach');
  await page.getByRole('link', { name: 'Reports of your students' }).click();
  await reloadKept(page);
  const students = page.locator('.student strong');
  await expect(students).toHaveText(['Mareike', 'Tomke']);
  await page.getByRole('button', { name: 'Next lesson from 2 reports' }).click();
  await expect(page.getByLabel('Title')).toHaveValue('Harbour room, Tuesday: once more');
  await page.getByRole('button', { name: 'Share the link' }).click();
  await expect(page.getByLabel('The lesson’s link')).toHaveValue(/#\/lesson\//);
});

test('a damaged, foreign or future report changes nothing and says so', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const link = await reportOf(browser, lesson, {});
  await page.goto('#/today');
  await expect(page.getByRole('heading').first()).toBeVisible();
  const before = await keptWhenQuiet(page);
  const payload = link.split('/').at(-1)!;
  const bytes = fromBase64url(payload)!;
  // Deck and sender stand behind the zero byte of the empty text; then the day.
  const future = bytes.slice();
  future.set([0xff, 0xff], 3 + 1 + 8);
  new DataView(future.buffer).setUint32(future.length - 4, crc32(future.subarray(0, -4)));
  for (const [bad, said] of [
    [payload.slice(0, -6), 'was cut short'],
    [
      `${payload.slice(0, 20)}${payload[20] === 'x' ? 'y' : 'x'}${payload.slice(21)}`,
      'was altered',
    ],
    [lesson.split('/').at(-1)!, 'was altered'],
    ['hello', 'not a report'],
    [toBase64url(future), 'dated in the future'],
  ] as const) {
    await page.goto(`#/report/${bad}`);
    await expect(page.getByRole('alert')).toContainText(bad === 'hello' ? 'report link' : said);
  }
  expect(await kept(page)).toBe(before);
});

/** A report's link with something else in it. */
function altered(link: string, change: (report: Report) => Partial<Report>): string {
  const read = readReport(link);
  if ('fault' in read) throw new Error(read.fault);
  return reportLink({ ...read.report, ...change(read.report) }, link.split('#')[0]!);
}

test('a newer report says whose place it would take before it does, and an older one takes none', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const phone = await student(browser, lesson, {});
  await phone.clock.install();
  const first = await send(phone, { question: 'First?', name: 'Mareike' });
  await phone.clock.fastForward('02:00:00');
  const second = await send(phone, { question: 'Second?' });
  await page.goto(first);
  await expect(page.getByText('Kept on this device.')).toBeVisible();
  const before = await keptWhenQuiet(page);
  await page.goto(second);
  await expect(page.getByText(/^Not kept yet: it goes on from .* \(.?Mareike.?\)/)).toBeVisible();
  expect(await kept(page)).toBe(before);
  await page.getByRole('button', { name: 'Put it in its place' }).click();
  await expect(page.getByText('Kept on this device.')).toBeVisible();
  await page.goto(first);
  await expect(page.getByText('A newer report on this lesson is kept already')).toBeVisible();
  await page.goto('#/class');
  await expect(page.locator('.student')).toHaveCount(1);
  await expect(page.locator('.student')).toContainText('Second?');
});

test('a report that contradicts the one of the same phone is kept beside it, and either can be removed', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const link = await reportOf(browser, lesson, { question: 'True?' });
  // As one would who saw the link: the same phone, tomorrow, and not one answer.
  const forged = altered(link, ({ day, items, practised }) => ({
    day: day + 1,
    asked: 0,
    firstAsked: 0,
    firstRight: 0,
    items: items.map(() => null),
    practised: practised.map(() => false),
    question: 'Forged?',
  }));
  await page.goto(forged);
  await expect(page.getByText('Kept on this device.')).toBeVisible();
  await page.goto(link);
  await expect(page.getByText('what they tell cannot both be true')).toBeVisible();
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  await page.goto('#/class');
  const rows = page.locator('.student');
  await expect(rows.getByText('Two reports of this phone do not agree')).toHaveCount(2);
  await rows.filter({ hasText: 'Forged?' }).getByRole('link').click();
  await page.getByRole('button', { name: 'Remove this report' }).click();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await page.getByRole('button', { name: 'Yes, remove' }).click();
  await expect(rows).toHaveCount(1);
  await reloadKept(page);
  await expect(rows).toHaveCount(1);
  await expect(rows).toContainText('True?');
  await expect(rows).not.toContainText('do not agree');
});

test('the same name from another phone is kept beside the other, and both say so', async ({
  page,
  browser,
}) => {
  const lesson = await makeLesson(page, LESSON);
  const link = await reportOf(browser, lesson, { name: 'Mareike' });
  const other = altered(link, ({ sender }) => ({ sender: sender ^ 1, name: 'mareike' }));
  await page.goto(link);
  await expect(page.getByText('Kept on this device.')).toBeVisible();
  await page.goto(other);
  await expect(page.getByText('bears the same name')).toBeVisible();
  await page.goto('#/class');
  await expect(page.locator('.student').getByText('bears the same name')).toHaveCount(2);
});

test('a report’s link can be pasted under Lessons', async ({ page, browser }) => {
  const lesson = await makeLesson(page, LESSON);
  const link = await reportOf(browser, lesson, { name: 'Ilse' });
  await page.goto('#/lessons');
  await page.getByLabel('A link from your teacher').fill(`Here it is: ${link}`);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Ilse' })).toBeVisible();
});
