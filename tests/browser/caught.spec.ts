import { expect, test, type Page } from '@playwright/test';
import { deckLink } from '../../src/decks/deckLink.ts';
import { readDeck } from '../../src/decks/document.ts';
import {
  answerCards,
  answerOne,
  askedSoFar,
  lessonLink,
  next,
  openCard,
  question,
  reloadKept,
  SMALL,
  startLesson,
} from './people.ts';

let small: string;

test.beforeAll(async ({ baseURL }) => {
  small = await lessonLink({ ...SMALL, title: 'Everything that floats' }, baseURL!);
});

/** Breaks what the next card of the neck needs, once: while it is drawn, or while its neck is put on the screen. */
async function breakable(page: Page): Promise<(when: 'drawn' | 'rendered') => Promise<unknown>> {
  await page.addInitScript(() => {
    const broken = { when: '' };
    Object.assign(globalThis, { broken });
    const throwing = (when: string) => {
      if (broken.when !== when) return;
      broken.when = '';
      throw new Error(`broken while ${when}`);
    };
    const { toSorted } = Array.prototype;
    // Only the places of an arpeggio's shapes say which member lies there.
    const breaking = function (this: { member?: number }[], ...by: []) {
      if (this[0]?.member) throwing('drawn');
      return toSorted.apply(this, by);
    };
    Object.assign(Array.prototype, { toSorted: breaking });
    const make = document.createElementNS.bind(document);
    document.createElementNS = ((space: string, name: string, ...more: []) => {
      if (name === 'line') throwing('rendered');
      return make(space, name, ...more);
    }) as typeof document.createElementNS;
  });
  return (when) =>
    page.evaluate((now) => {
      (globalThis as unknown as { broken: { when: string } }).broken.when = now;
    }, when);
}

for (const when of ['drawn', 'rendered'] as const) {
  test(`a card that throws while it is ${when} is left out, said which, and not logged`, async ({
    page,
  }) => {
    const breakNext = await breakable(page);
    await startLesson(page, small);
    const asked = await answerCards(page, 2);
    asked.push((await answerOne(page))!);
    await breakNext(when);
    await next(page);
    await expect(
      page.getByText(/^One card could not be asked: name .* frets 1 to 7/),
    ).toBeVisible();
    // The round goes on with what can be asked.
    asked.push(...(await answerCards(page, 2)));
    const items = new Set(asked.map(({ item }) => item));
    expect(items.size).toBeGreaterThan(3);
    await page.goto('#/today');
    await expect(askedSoFar(page)).toContainText(`${items.size} of 7 asked so far`);
  });
}

test('a lesson of which no card comes is not begun, and says what to change', async ({
  page,
  baseURL,
}) => {
  const read = readDeck({
    version: 1,
    title: 'Four strings alike',
    key: 'C major',
    instrument: {
      name: 'four strings',
      tuning: ['C4', 'C4', 'C4', 'C4'],
      frets: 12,
      scaleLength: 500,
      capo: 11,
    },
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['4-3-2-1'], frets: [0, 1] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  await page.goto(await deckLink(read.deck, baseURL!));
  await expect(page.getByRole('alert')).toContainText('or a lower capo');
  await expect(page.locator('[data-do="start"]')).toHaveCount(0);
  await page.getByRole('link', { name: 'Go on to today' }).click();
  await page.goto('#/lessons');
  await expect(page.getByText('Four strings alike')).toHaveCount(0);
});

test('a lesson is deleted by keyboard alone, asked twice, and its answers stay', async ({
  page,
}) => {
  await startLesson(page, small);
  await answerCards(page, 1);
  await page.goto('#/lessons');
  const press = async (name: string) => {
    await page.getByRole('button', { name }).first().focus();
    await page.keyboard.press('Enter');
  };
  await press('Put away: Everything that floats');
  await page.locator('summary').focus();
  await page.keyboard.press('Enter');
  await press('Delete: Everything that floats');
  // The focus goes to what leaves all as it is; from there the keys go on.
  await expect(page.getByRole('button', { name: 'Keep it' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Keep it' })).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Everything that floats' })).toHaveCount(0);
  await reloadKept(page);
  await expect(page.getByRole('heading', { name: 'Lessons' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Everything that floats' })).toHaveCount(0);
  await page.goto(small);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(askedSoFar(page)).toContainText('1 of 7 asked so far');
});

test('erasing in one window stops a round in another, which writes nothing more', async ({
  context,
}) => {
  const one = await context.newPage();
  await startLesson(one, small);
  await answerOne(one);
  const other = await context.newPage();
  await other.goto('#/settings');
  await other.getByRole('button', { name: 'Erase everything' }).click();
  await other.getByRole('button', { name: 'Erase', exact: true }).click();
  await other.getByRole('button', { name: 'Yes, erase everything' }).click();
  await expect(one.getByRole('heading', { name: 'Erased in another window' })).toBeVisible();
  await expect(openCard(one)).toHaveCount(0);
  await one.getByRole('button', { name: 'Begin anew' }).click();
  await expect(one.locator('[data-do="start"]')).not.toHaveCount(0);
  await one.goto(small);
  await one.getByRole('button', { name: 'Keep for later' }).click();
  await expect(askedSoFar(one)).toContainText('0 of 7 asked so far');
});

test('a store that never answers keeps nobody from practising, in memory, and is told of', async ({
  page,
}) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
  });
  await startLesson(page, small);
  expect(await question(page)).not.toBeNull();
  await expect(page.getByRole('alert')).toContainText('does not answer');
  await answerOne(page);
  await next(page);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(askedSoFar(page)).toContainText('1 of 7 asked so far');
});

test('a store that was only slow is read once it answers, where nothing was begun without it', async ({
  page,
}) => {
  await page.goto(small);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await expect(askedSoFar(page)).toBeVisible();
  await page.addInitScript(() => {
    if (sessionStorage.getItem('silent')) return;
    sessionStorage.setItem('silent', 'once');
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
    setTimeout(() => (IDBFactory.prototype.open = open), 8000);
  });
  await reloadKept(page);
  await expect(page.getByRole('alert')).toContainText('does not answer');
  await expect(askedSoFar(page)).toBeVisible({ timeout: 25_000 });
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a title that runs from right to left turns no control’s name around', async ({
  page,
  baseURL,
}) => {
  const read = readDeck({
    version: 1,
    title: 'שיעור ראשון',
    key: 'C major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 7] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  await page.goto(await deckLink(read.deck, baseURL!));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.goto('#/lessons');
  await expect(
    page.getByRole('button', { name: 'Put away: \u2068שיעור ראשון\u2069', exact: true }),
  ).toBeVisible();
  await expect(page.locator('h2 bdi').first()).toHaveText('שיעור ראשון');
});
