import { expect, test, type Page } from '@playwright/test';
import { ask as askVary } from '../../src/cards/vary/ask.ts';
import { read as readVary } from '../../src/cards/vary/items.ts';
import { readId } from '../../src/decks/readId.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { degreeSeen, dice, placesFor, type Place, type Question } from './musician.ts';
import {
  countSounds,
  give,
  judged,
  kept,
  next,
  phraseLesson,
  placeOn,
  question,
  startLesson,
  verdict,
} from './people.ts';

const EAR: readonly string[] = ['order', 'vary', 'fill'];
const DEGREES: Readonly<Record<string, string>> = { I: '1', ii: '2', V: '5', vi: '6', 'vii°': '7' };

/** Right or wrong as wished: worked out from what the card promises to tell of itself, and for an ear card from its id. */
function answerTo(asked: Question, right: boolean): string | Place[] {
  const pick = dice(Number(asked.seed));
  if (asked.kind === 'follow') return placesFor(asked, right, pick);
  const answer = rightAnswer(asked);
  return right ? answer : pick(asked.answers.filter((other) => other !== answer));
}

function rightAnswer(asked: Question): string {
  const [, , degree, , , words = ''] = asked.item.split(':');
  switch (asked.kind) {
    case 'outline':
      return degreeSeen(asked);
    case 'order':
      return words
        .split(' ')
        .flatMap((word) => DEGREES[word] ?? [])
        .join(' ');
    case 'fill':
      return degree!;
    default: {
      const { head, rest } = readId(asked.item)!;
      const item = readVary({ ...head, kind: 'vary' }, rest)!;
      return askVary(item, Number(asked.seed)).right.name;
    }
  }
}

/** Answers with the keyboard alone. */
async function giveByKeys(page: Page, answer: string | Place[]): Promise<void> {
  if (typeof answer === 'string') {
    await page.locator(`[data-answer="${answer}"]`).focus();
    await page.keyboard.press('Enter');
    return;
  }
  for (const place of answer) {
    await page.locator('[data-tuning] [tabindex="0"]').focus();
    const at = () =>
      page.evaluate(() => {
        const { string, fret } = (document.activeElement as HTMLElement).dataset;
        return { string: Number(string), fret: Number(fret) };
      });
    for (let from = await at(); from.fret !== place.fret; from = await at())
      await page.keyboard.press(from.fret < place.fret ? 'ArrowDown' : 'ArrowUp');
    for (let from = await at(); from.string !== place.string; from = await at())
      await page.keyboard.press(from.string < place.string ? 'ArrowLeft' : 'ArrowRight');
    await page.keyboard.press('Enter');
  }
}

/** Nothing that can be tapped lies beyond the screen or is smaller than a fingertip. */
async function expectInReach(page: Page) {
  const all = await page
    .locator('article [data-answer], article .buttons button')
    .evaluateAll((controls) =>
      controls.map((control) => {
        const { top, bottom, width, height } = control.getBoundingClientRect();
        const inside = top >= 0 && bottom <= window.innerHeight + 0.5;
        return { name: control.textContent, inside, large: Math.min(width, height) >= 43.5 };
      }),
    );
  expect(all.length).toBeGreaterThan(0);
  expect(all.filter(({ inside, large }) => !inside || !large)).toEqual([]);
}

/** What is heard is not to be seen before it is answered. */
async function expectNothingToSee(page: Page, asked: Question) {
  await expect(page.locator('article[data-kind]')).not.toHaveAttribute('data-notes');
  if (EAR.includes(asked.kind)) await expect(page.locator('article [data-tuning]')).toHaveCount(0);
}

for (const [number, kind] of kindsOf('phrase').entries()) {
  const colorScheme = number % 2 === 0 ? 'light' : 'dark';
  test(`a card to ${kind} is answered right by tap and wrong by keyboard, and looked back on, ${colorScheme}`, async ({
    page,
    baseURL,
  }) => {
    await page.emulateMedia({ colorScheme });
    await startLesson(page, await phraseLesson([kind], baseURL!));
    const first = (await question(page))!;
    expect(first).toMatchObject({ kind, key: 'Bb major' });
    expect(first.item.startsWith(`${kind}:Bb major:`)).toBe(true);
    await expectInReach(page);
    await expectNothingToSee(page, first);
    await give(page, answerTo(first, true));
    expect(await judged(page)).toBe('right');
    await expectInReach(page);
    await heardAndShown(page, first);

    await next(page);
    const second = (await question(page))!;
    expect(second.item).not.toBe(first.item);
    await giveByKeys(page, answerTo(second, false));
    expect(await judged(page)).toBe('wrong');
    await expect(verdict(page)).toContainText(/Wrong\. .+\./);
    await expectInReach(page);
    await expect(page.locator('[data-do="next"]')).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(verdict(page)).toHaveCount(0);

    // What is left is answered until the round is over; then the first card is looked at once more.
    for (let asked = await question(page); asked; asked = await question(page)) {
      await give(page, answerTo(asked, true));
      await judged(page);
      await next(page);
    }
    await page.getByRole('button', { name: 'Look back over the cards' }).click();
    await page.getByRole('listitem').first().getByRole('button').click();
    await expect(page.locator('article')).toHaveAttribute('data-item', first.item);
    expect(await judged(page)).toBe('right');
    await heardAndShown(page, first);
  });
}

/** An ear card tells once it is answered what was heard, and has every note of it on the neck. */
async function heardAndShown(page: Page, asked: Question) {
  await expect(page.locator('article [data-tuning]')).toBeVisible();
  if (!EAR.includes(asked.kind)) return;
  const heard = await page.locator('article').getAttribute('data-notes');
  expect(heard).toMatch(/^\d+@0( \d+@[\d/]+){5,}$/);
  // The excerpt in the id says where each note lies; a variation begins after it.
  const places = [...asked.item.matchAll(/ ([1-6])\/(\d+)/g)];
  const open = [64, 59, 55, 50, 45, 40];
  const midis = places.map(([, string, fret]) => open[Number(string) - 1]! + Number(fret));
  const told = heard!.split(' ').map((note) => Number(note.split('@')[0]));
  expect(told.slice(0, midis.length)).toEqual(midis);
  if (asked.kind === 'vary') expect(told.length).toBeGreaterThan(midis.length);
  else {
    expect(told).toHaveLength(midis.length);
    for (const [, string, fret] of places) {
      const dot = placeOn(page, { string: Number(string), fret: Number(fret) });
      await expect(dot).toHaveAttribute('data-dot');
    }
  }
}

test('where there is no sound, what is to be heard of a phrase is put off and what is seen is asked', async ({
  page,
  baseURL,
}) => {
  await page.addInitScript(() => {
    Object.assign(window, { AudioContext: undefined });
  });
  await startLesson(page, await phraseLesson(kindsOf('phrase'), baseURL!));
  for (let card = 0; card < 6; card++) {
    const asked = (await question(page))!;
    // The first card may be one for the ear: that there is no sound shows only when it is asked for.
    if (card > 0) expect(EAR).not.toContain(asked.kind);
    await give(page, answerTo(asked, true));
    await judged(page);
    await next(page);
  }
});

/** Longer than the key's cadence, or an arpeggio and another. */
const LONG = 5000;

test('a round that is left while the key sounds is silent, and so is a card that is gone', async ({
  page,
  baseURL,
}) => {
  const sounds = await countSounds(page);
  await startLesson(page, await phraseLesson(['order'], baseURL!));
  await expect.poll(sounds, { timeout: 20_000 }).toBeGreaterThan(3);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(page.locator('article')).toHaveCount(0);
  const left = await sounds();
  await page.waitForTimeout(LONG);
  expect(await sounds()).toBe(left);

  await startLesson(page, await phraseLesson(['outline'], baseURL!));
  const asked = (await question(page))!;
  await give(page, answerTo(asked, false));
  expect(await judged(page)).toBe('wrong');
  const silent = await sounds();
  await expect.poll(sounds).toBeGreaterThan(silent);
  await next(page);
  await question(page);
  await expect(verdict(page)).toHaveCount(0);
  const gone = await sounds();
  await page.waitForTimeout(LONG);
  expect(await sounds()).toBe(gone);
});

test('of the time to an answer only what was heard is listening, however often it was begun', async ({
  page,
  baseURL,
}) => {
  const sounds = await countSounds(page);
  await startLesson(page, await phraseLesson(['follow'], baseURL!));
  const asked = (await question(page))!;
  await expect.poll(sounds, { timeout: 20_000 }).toBeGreaterThan(0);
  // The last of these sounds for two seconds; then there is silence.
  for (let k = 0; k < 4; k++) await page.locator('[data-do="hear"]').click();
  await page.waitForTimeout(LONG);
  await give(page, answerTo(asked, true));
  expect(await judged(page)).toBe('right');
  // Of the log's line: from the right answer on, how long it took, and how much of that was listening.
  const [, ms, sounded] = /"follow:[^"]*",\d+,\d+,-?\d+,1,null,(\d+),(\d+),/.exec(
    (await kept(page)).replaceAll('\\', ''),
  )!;
  expect(Number(sounded)).toBeGreaterThan(1500);
  expect(Number(ms) - Number(sounded)).toBeGreaterThan(2000);
});
