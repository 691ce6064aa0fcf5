import { expect, test, type Locator, type Page } from '@playwright/test';
import { type KindName } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { INSTRUMENTS } from '../../src/neck/instrument.ts';
import { SCREENS as PICTURED } from '../pictures/screens.ts';
import { degreeSeen, dice, placesFor, type Place } from './musician.ts';
import {
  answerCards,
  answerOne,
  answerTo,
  axeOn,
  COLOUR_RULES,
  give,
  judged,
  lessonLink,
  makeLesson,
  next,
  openCard,
  phraseLesson,
  placeOn,
  plan,
  question,
  roundEnd,
  SMALL,
  startLesson,
  THREE,
  verdict,
} from './people.ts';
import { smallTargets } from './targets.ts';

/** Those that are drilled from the key and answered without the guitar. */
const KINDS = [...kindsOf('neck'), ...kindsOf('ear')];

let small: string;
let three: string;
const lessons = new Map<KindName, string>();

test.beforeAll(async ({ baseURL }) => {
  const floating = { ...SMALL, title: 'Everything that floats', note: 'Slowly.' };
  small = await lessonLink(floating, baseURL!);
  three = await lessonLink(THREE, baseURL!);
  for (const kind of KINDS) {
    const wishes = { chords: ['sevenths'], kinds: [kind], strings: ['5–4–3–2'] } as const;
    lessons.set(kind, await lessonLink(wishes, baseURL!));
  }
  for (const kind of kindsOf('phrase')) lessons.set(kind, await phraseLesson([kind], baseURL!));
});

/** Screens, and how one comes to them on a phone that has the small lesson. */
const SCREENS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'today, the first time': async (page) => {
    await page.goto('');
    await expect(page.locator('[data-do="start"]')).not.toHaveCount(0);
  },
  'a lesson’s link': async (page) => {
    await page.goto(small);
    await expect(page.locator('[data-do="start"]')).toBeVisible();
  },
  'a damaged link': async (page) => {
    await page.goto(small.slice(0, -5));
    await expect(page.getByRole('alert')).toBeVisible();
  },
  'today, with a lesson': async (page) => {
    await page.goto(small);
    await page.getByRole('button', { name: 'Keep for later' }).click();
    await expect(page.getByText('0 of 7 asked so far')).toBeVisible();
  },
  lessons: async (page) => {
    await page.goto(small);
    await page.getByRole('button', { name: 'Keep for later' }).click();
    await expect(page.getByText('0 of 7 asked so far')).toBeVisible();
    await page.goto('#/lessons');
    await page.getByRole('button', { name: 'Put away: Everything that floats' }).click();
    await page.getByText('Put away · 1').click();
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await expect(page.getByRole('alert')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Take it' })).not.toHaveCount(0);
  },
  'the teacher’s form': async (page) => {
    await plan(page, { tonic: 'C♭', scale: 'harmonic minor' });
  },
  'the teacher’s form with a fault': async (page) => {
    await plan(page, { kinds: [] });
    await expect(page.getByRole('button', { name: 'Share the link' })).toBeDisabled();
  },
  'a lesson’s link to share': async (page) => {
    await makeLesson(page, { title: 'Everything that floats' });
    await expect(page.getByRole('img', { name: 'QR code' })).toBeVisible();
  },
  settings: async (page) => {
    await page.goto('#/settings');
    await expect(page.getByRole('heading', { name: 'Sound and names' })).toBeVisible();
  },
  'looking back over a round': async (page) => {
    await startLesson(page, three);
    await answerCards(page, 2, false);
    await answerCards(page, 99);
    await page.getByRole('button', { name: 'Look back over the cards' }).click();
    await page.getByLabel('Missed only').check();
    await expect(page.getByRole('listitem')).toHaveCount(2);
  },
  'what is known': async (page) => {
    await startLesson(page, small);
    await answerCards(page, 1, false);
    await answerCards(page, 1);
    await page.goto('#/known');
    await expect(page.getByRole('heading', { name: 'What you know' })).toBeVisible();
  },
  'a report to send': async (page) => {
    await startLesson(page, small);
    await answerCards(page, 1);
    await page.goto('#/send');
    await expect(page.getByLabel('Your name, if you like')).toBeVisible();
  },
  'the end of a round': async (page) => {
    await startLesson(page, three);
    await answerCards(page, 2, false);
    await answerCards(page, 99);
    await expect(roundEnd(page)).toBeVisible();
  },
};

for (const [name, comeTo] of Object.entries(SCREENS)) {
  test(`${name}: no fault that axe knows of, targets of 44 px and more, and no scrolling sideways, with letters twice the size too`, async ({
    page,
  }) => {
    await comeTo(page);
    await isOpenToAll(page);
  });
}

for (const name of [
  'card-place-seven',
  'card-pulse',
  'card-spot-eight',
  'class',
  'lesson-offered',
  'lessons',
  'neck',
  'neck-eight',
  'neck-shape',
  'report',
  'try-a-card',
]) {
  test(`${name}, as pictured: targets of 44 px and more, no scrolling sideways, with letters twice the size too`, async ({
    page,
    baseURL,
  }) => {
    await PICTURED[name]!(page, baseURL!);
    expect(await smallTargets(page)).toEqual([]);
    await fits(page);
  });
}

// All that are pictured: `npm run pictures -- --targets`.
for (const name of [
  'card-vary-verdict',
  'drill-desk',
  'minute',
  'phrase-desk-change-this-note',
  'phrase-desk-variations',
  'phrases',
  'play-along',
  'teach-drills',
]) {
  test(`${name}, as pictured: targets of 44 px and more`, async ({ page, baseURL }) => {
    await PICTURED[name]!(page, baseURL!);
    expect(await smallTargets(page)).toEqual([]);
  });
}

// What is played or tapped in time is tried in specs of its own: guitar, guitar-in-hand and pulse.
for (const kind of [...KINDS, ...kindsOf('phrase')]) {
  test(`a ${kind} card before and after its verdict: all of it stands on a small phone with targets of 44 px and more, no fault that axe knows of, and no scrolling sideways`, async ({
    page,
  }) => {
    const asked = await firstCard(page, kind);
    expect(await outside(page)).toEqual([]);
    await isOpenToAll(page);
    await give(page, answerTo(asked, false, dice(3)));
    await judged(page);
    expect(await outside(page)).toEqual([]);
    await isOpenToAll(page);
  });

  test(`a ${kind} card stands whole on a phone that lies down`, async ({ page }) => {
    await page.setViewportSize({ width: 844, height: 390 });
    const asked = await firstCard(page, kind);
    expect(await sideways(page)).toEqual([]);
    expect(await outside(page)).toEqual([]);
    await give(page, answerTo(asked, true, dice(3)));
    await judged(page);
    expect(await sideways(page)).toEqual([]);
    await expect(page.locator('[data-do="next"]')).toBeInViewport();
    const [low, high] = await Promise.all([1, 6].map((string) => box(firstOn(page, string))));
    expect(low!.x).toBeCloseTo(high!.x, 0);
    expect(low!.y).toBeLessThan(high!.y);
  });
}

for (const [strings, width, height] of [
  [[2, 1], 360, 640],
  [[8, 7], 640, 360],
] as const)
  test(`a neck of eight strings begins where places may be tapped, ${width} × ${height}`, async ({
    page,
    baseURL,
  }) => {
    await page.setViewportSize({ width, height });
    const instrument = INSTRUMENTS.find(({ name }) => name === '8-string guitar')!;
    const wishes = { instrument, kinds: ['place'], strings: [strings.join('–')] } as const;
    await startLesson(page, await lessonLink(wishes, baseURL!));
    const { frets } = (await question(page))!;
    for (const string of strings)
      await expect(placeOn(page, { string, fret: frets[0]! })).toBeInViewport({ ratio: 0.99 });
    await expect(page.getByRole('grid').locator('[tabindex="0"]')).toHaveClass(/takes/);
  });

test('a card that is tried and the whole neck stand whole on a phone that lies down', async ({
  page,
}) => {
  await page.setViewportSize({ width: 640, height: 360 });
  await plan(page, { kinds: ['trace'] });
  await page.getByRole('button', { name: 'Try a card' }).click();
  await expect(page.locator('[data-do="next"]')).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole('navigation')).toBeHidden();
  await page.goto('#/neck');
  const places = await box(page.getByRole('navigation'));
  for (const part of ['.stair', '.told p']) {
    const { y, height } = await box(page.locator('.whole-neck').locator(part));
    expect(y + height).toBeLessThanOrEqual(places.y + 1);
  }
});

test('no string set is broken after its dash, on phones of any width', async ({
  page,
  baseURL,
}) => {
  const unbroken = async (sets: Locator, texts: readonly string[]) => {
    await expect(sets).toHaveText(texts);
    for (let width = 320; width <= 430; width += 11) {
      await page.setViewportSize({ width, height: 640 });
      const lines = await sets.evaluateAll((all) => all.map((set) => set.getClientRects().length));
      expect(lines).toEqual(texts.map(() => 1));
    }
  };
  await page.goto(await lessonLink({ ...SMALL, strings: ['5–4', '4–3', '4–3–2'] }, baseURL!));
  await unbroken(page.locator('.facts .unbroken'), ['5–4', '4–3', '4–3–2']);
  await page.goto('#/teach');
  await page.getByText(/^Drills one by one/).click();
  await unbroken(page.locator('.drill-list .unbroken'), ['5–4', '4–3', '5–4', '4–3']);
});

test('what gets the focus is never hidden behind the places at the bottom', async ({ page }) => {
  await plan(page, {});
  const places = (await box(page.getByRole('navigation'))).y;
  await page.getByRole('radio', { name: 'B♭' }).focus();
  const hidden: string[] = [];
  let last = '';
  for (let presses = 0; presses < 60 && !last.startsWith('<a href="#/today"'); presses++) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluate(() => {
      const { outerHTML } = document.activeElement!;
      return { html: outerHTML, bottom: document.activeElement!.getBoundingClientRect().bottom };
    });
    last = focused.html;
    if (!last.startsWith('<a href="#/') && focused.bottom > places + 1)
      hidden.push(last.slice(0, 100));
  }
  expect(last).toContain('Today');
  expect(hidden).toEqual([]);
});

test('a spot card is answered by keys alone, its dots read out without walking to them', async ({
  page,
}) => {
  const asked = await firstCard(page, 'spot');
  const dots = asked.dots.map(({ string, fret }) => `string ${string}, fret ${fret}`);
  await expect(page.getByRole('grid')).toHaveAccessibleName(/\. Dots: string/);
  const name = await page.getByRole('grid').getAttribute('aria-label');
  for (const dot of dots) expect(name).toContain(dot);
  await tabTo(page, page.locator(`[data-answer="${degreeSeen(asked)}"]`));
  await page.keyboard.press('Enter');
  await goesOn(page, 'right');
});

test('a place card is answered by keys alone, arrows moving over the neck', async ({ page }) => {
  const asked = await firstCard(page, 'place');
  await tabTo(page, page.locator('[data-string][tabindex="0"]'));
  for (const place of placesFor(asked, true, dice(5))) {
    await arrowsTo(page, place);
    await expect(page.locator(':focus')).toHaveAccessibleName(
      new RegExp(`^string ${place.string}, (fret ${place.fret}|open)`),
    );
    await page.keyboard.press('Enter');
    await expect(placeOn(page, place)).toHaveAttribute('data-dot');
  }
  await goesOn(page, 'right');
});

test('a trace card is heard and answered by keys alone', async ({ page }) => {
  const asked = await firstCard(page, 'trace');
  await tabTo(page, page.locator('[data-do="hear"]'));
  await page.keyboard.press('Enter');
  await tabTo(page, page.locator(`[data-answer="${asked.answers[2]}"]`));
  await page.keyboard.press('Enter');
  await goesOn(page);
});

for (const kind of ['spot', 'place'] as const) {
  for (const size of [
    { width: 360, height: 640 },
    { width: 390, height: 844 },
  ]) {
    test(`nothing of the neck moves when a ${kind} card's verdict comes, ${size.width} × ${size.height}`, async ({
      page,
    }) => {
      await page.setViewportSize(size);
      const asked = await firstCard(page, kind);
      const before = await neckBoxes(page);
      await give(page, answerTo(asked, false, dice(7)));
      await judged(page);
      expect(await neckBoxes(page)).toEqual(before);
    });
  }
}

test('nothing moves by itself where less motion is asked for', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const asked = await firstCard(page, 'spot');
  await give(page, answerTo(asked, true, dice(1)));
  await judged(page);
  expect(await moving(page)).toEqual([]);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(page.getByText('asked so far')).toBeVisible();
  expect(await moving(page)).toEqual([]);
});

test('a dot settles, a step fills, a hop is drawn, a note hops onto the stair, each within 200 ms', async ({
  page,
}) => {
  await seeAllThatMoves(page);
  const motions = { settle: 150, fill: 200, hop: 200, transform: 200, height: 200 };
  await expect.poll(() => motionsSeen(page)).toEqual(motions);
});

test('where less motion is asked for nothing of it moves', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await seeAllThatMoves(page);
  expect(await motionsSeen(page)).toEqual({});
});

/** From a first visit through a round to what is known in a week, taking down each motion by its name with how long it lasts, ms. */
async function seeAllThatMoves(page: Page) {
  await page.addInitScript(() => {
    const seen: Record<string, unknown> = JSON.parse(sessionStorage.getItem('seen') ?? '{}');
    const look = () => {
      for (const motion of document.getAnimations()) {
        const { animationName, transitionProperty } = motion as CSSAnimation & CSSTransition;
        seen[animationName ?? transitionProperty] = motion.effect!.getComputedTiming().endTime;
      }
      sessionStorage.setItem('seen', JSON.stringify(seen));
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  await page.goto('');
  await expect(page.locator('.onto-the-stair .hop')).toHaveCount(3);
  await startLesson(page, three);
  for (let right = false; await answerOne(page, right); right = true) await next(page);
  await roundEnd(page).waitFor();
  await page.goto('#/known');
  await page.locator('.stair-hops').first().waitFor();
  await page.getByRole('radio', { name: 'in a week' }).check();
  await expect(page.getByText('in a week if nothing more were asked')).toBeVisible();
}

const motionsSeen = (page: Page) =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('seen')!) as object);

async function firstCard(page: Page, kind: KindName) {
  await startLesson(page, lessons.get(kind)!);
  const asked = (await question(page))!;
  expect(asked.kind).toBe(kind);
  return asked;
}

/** Every rule in light on the smaller size; in dark on the other those of colour, which alone depend on it. */
const WAYS = [
  { width: 360, height: 640, colorScheme: 'light' },
  { width: 390, height: 844, colorScheme: 'dark', rules: COLOUR_RULES },
] as const;

/** Phones upright and lying, a tablet, a desk: the smallest comes last and stays. */
const SIZES = [
  [1280, 800],
  [820, 1180],
  [412, 915],
  [390, 844],
  [640, 360],
  [360, 640],
] as const;

async function isOpenToAll(page: Page) {
  for (const { colorScheme, width, height: low, ...only } of WAYS) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: low });
    // All of the page at once: what the bar at the bottom covers now can be scrolled to.
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    await page.setViewportSize({ width, height });
    const axe = axeOn(page);
    const { violations } = await (
      'rules' in only
        ? axe.withRules([...only.rules])
        : axe.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    ).analyze();
    const faults = violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`),
    );
    expect(faults).toEqual([]);
  }
  expect(await smallTargets(page)).toEqual([]);
  await fits(page);
}

/** Nothing sticks out at any size, with letters twice the size too. */
async function fits(page: Page) {
  for (const text of ['100%', '200%']) {
    await page.evaluate((size) => (document.documentElement.style.fontSize = size), text);
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      const found = await sideways(page);
      expect(found, `${width} × ${height}, text at ${text}`).toEqual([]);
      expect(await torn(page), `${width} × ${height}, text at ${text}`).toEqual([]);
    }
  }
  await page.evaluate(() => (document.documentElement.style.fontSize = ''));
}

/** Words that stand on three lines and more, as in a column that is too narrow for them. */
function torn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const texts = document.createTreeWalker(document.querySelector('#app')!, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let text = texts.nextNode(); text; text = texts.nextNode())
      for (const { 0: word, index } of text.textContent!.matchAll(/\S+/g)) {
        const range = document.createRange();
        range.setStart(text, index);
        range.setEnd(text, index + word.length);
        const isRead = !text.parentElement!.closest('.unseen');
        if (isRead && range.getClientRects().length > 2) found.push(word);
      }
    return found;
  });
}

/** What sticks out to the left or right of the screen. */
function sideways(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    // What turns with the phone has turned.
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    /** Whether it lies in something that is scrolled by itself, as a table or a long neck is. */
    const scrollsInside = (element: Element | null): boolean =>
      element !== null &&
      (getComputedStyle(element).overflowX === 'auto' || scrollsInside(element.parentElement));
    const { scrollWidth, clientWidth } = document.documentElement;
    const out = [...document.querySelectorAll('#app *')].filter((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      const isOut = width > 0 && (left < -1 || right > clientWidth + 1);
      return isOut && !element.closest('.unseen') && !scrollsInside(element);
    });
    return [
      ...(scrollWidth > clientWidth ? [`the page is ${scrollWidth} wide`] : []),
      ...out.map((element) => element.outerHTML.slice(0, 120)),
    ];
  });
}

/** What of a card's controls lies outside the screen. */
function outside(page: Page): Promise<string[]> {
  return page.locator('[data-kind] button').evaluateAll((buttons) =>
    buttons
      .filter((button) => {
        const { left, top, right, bottom } = button.getBoundingClientRect();
        return left < -1 || top < -1 || right > innerWidth + 1 || bottom > innerHeight + 1;
      })
      .map((button) => button.outerHTML.slice(0, 120)),
  );
}

/** Where the neck and each of its places are. */
function neckBoxes(page: Page): Promise<string[]> {
  return page
    .locator('[data-tuning], [data-tuning] [data-string]')
    .evaluateAll((elements) =>
      elements.map((element) => JSON.stringify(element.getBoundingClientRect())),
    );
}

const firstOn = (page: Page, string: number) => page.locator(`[data-string="${string}"]`).first();

async function box(locator: Locator) {
  return (await locator.boundingBox())!;
}

/** Whatever has a transition or an animation of its own. */
function moving(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('*')].flatMap((element) =>
      [undefined, '::before', '::after'].flatMap((part) => {
        const { transitionDuration, animationName } = getComputedStyle(element, part);
        const still = /^0s(, 0s)*$/.test(transitionDuration) && animationName === 'none';
        return still ? [] : [`${element.className}${part ?? ''}`];
      }),
    ),
  );
}

/** Presses Tab until the control has the focus. */
async function tabTo(page: Page, control: Locator) {
  await expect(openCard(page)).toBeVisible();
  for (let presses = 0; presses < 30; presses++) {
    if (await control.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('Thirty presses of Tab do not reach it.');
}

/** Arrow keys from where the focus is to a place: frets downwards, strings across. */
async function arrowsTo(page: Page, place: Place) {
  const from = await page
    .locator(':focus')
    .evaluate(({ dataset }: HTMLElement) => [Number(dataset.string), Number(dataset.fret)]);
  const [across, along] = [from[0]! - place.string, place.fret - from[1]!];
  await pressTimes(page, across > 0 ? 'ArrowRight' : 'ArrowLeft', Math.abs(across));
  await pressTimes(page, along > 0 ? 'ArrowDown' : 'ArrowUp', Math.abs(along));
  await expect(placeOn(page, place)).toBeFocused();
}

async function pressTimes(page: Page, key: string, times: number) {
  for (let press = 0; press < times; press++) {
    const before = await page.locator(':focus').elementHandle();
    await page.keyboard.press(key);
    await page.waitForFunction((element) => document.activeElement !== element, before);
  }
}

/** The verdict comes, Next has the focus, and Enter brings the next card. */
async function goesOn(page: Page, wanted?: 'right') {
  if (wanted) await expect(verdict(page)).toHaveAttribute('data-verdict', wanted);
  await expect(page.locator('[data-do="next"]')).toBeFocused();
  const item = await page.locator('[data-kind]').getAttribute('data-item');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-kind]')).not.toHaveAttribute('data-item', item!);
}
