import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect, test, type Browser, type Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { shellPath } from './engines.mjs';
import { PLAYED, writeLine, type Manner } from './guitar/recordings.ts';
import { faults, openCard, startLesson, verdict } from './people.ts';

/** Cards that are answered with the guitar, a file for the microphone. Node gives the same verdicts: `tests/cards/heard.test.ts`. */
test.describe.configure({ timeout: 120_000 });

/** The file has to come to its notes, and the card to its verdict. */
const PLAYED_BY = { timeout: 60_000 };

let folder: string;
let browser: Browser | undefined;
test.beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'skipwise-guitar-'));
});
test.afterEach(async () => {
  await browser?.close();
  browser = undefined;
});
test.afterAll(() => rm(folder, { recursive: true }));

/** A page that hears a line. The file begins with the microphone: before it come what is told first, and the card. */
async function pageHearing(midis: readonly number[], manner: Manner): Promise<Page> {
  const file = join(folder, 'microphone.wav');
  writeLine(file, midis, manner);
  browser = await chromium.launch({
    executablePath: shellPath() ?? '',
    args: [
      '--no-sandbox',
      '--autoplay-policy=no-user-gesture-required',
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${file}%noloop`,
    ],
  });
  const context = await browser.newContext({
    baseURL: test.info().project.use.baseURL!,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(40_000);
  return page;
}

/** A lesson of one item; more drills only so that Today has a switch for the guitar. */
async function lessonOf(drill: object, phrases: readonly object[] = []): Promise<string> {
  const read = readDeck({
    version: 2,
    title: 'Slack water',
    key: 'Bb major',
    drills: [drill],
    ...(phrases.length > 0 && { phrases }),
  });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, test.info().project.use.baseURL!);
}

/** Keeps the lesson, takes the guitar in hand and goes on to its card, tuning left out. */
async function takeUp(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.locator('[data-do="guitar"]').click();
  await page.locator('[data-do="start"]').click();
  await page.locator('[data-do="listen"]').click();
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Five clicks' }).waitFor();
  await page.locator('[data-do="skip"]').click();
  await openCard(page).waitFor();
}

const heard = (page: Page) =>
  page
    .locator('.heard [data-heard]')
    .evaluateAll((places) => places.map((place) => (place as HTMLElement).dataset.heard));

const LYING = { sizes: ['triad'], degrees: [2], strings: ['5-4'], frets: [1, 7] };
const PLAY = { kind: 'play', ...LYING, ways: ['up'] };
const TURN = { kind: 'play', ...LYING, ways: ['turn'] };
// Cm on strings 5 and 4.
const UP = [48, 51, 55];
const BACK = [48, 51, 55, 51, 48];

for (const [how, drill, line, begun, is, places, title] of [
  ['right', PLAY, PLAYED.right(UP), 14, 'right', 'right right right', 'Every note right'],
  [
    'with a wrong semitone',
    PLAY,
    PLAYED.semitone(UP),
    14,
    'wrong',
    'right wrong right',
    'E, not E♭',
  ],
  [
    'in a wrong octave',
    PLAY,
    PLAYED.octave(UP),
    14,
    'wrong',
    'right wrong right',
    'E♭ an octave too high',
  ],
  [
    'with a note missing',
    TURN,
    PLAYED.missing(BACK),
    14,
    'wrong',
    'right missing right right right',
    'E♭ was missing',
  ],
  ['begun late', PLAY, PLAYED.right(UP), 22, 'right', 'right right right', 'Every note right'],
] as const) {
  test(`an arpeggio played ${how} is told so`, async () => {
    const page = await pageHearing(line, { begun });
    await takeUp(page, await lessonOf(drill));
    const card = page.locator('[data-kind="play"]');
    await expect(card).toHaveAttribute('data-chord', 'Cm');
    await expect(card).toHaveAttribute('data-strings', '5 4');
    await expect(card).toHaveAttribute('data-frets', '1-7');
    await expect(card).not.toHaveAttribute('data-tempo', /./);
    await expect(verdict(page)).toHaveAttribute('data-verdict', is, PLAYED_BY);
    expect((await heard(page)).join(' ')).toBe(places);
    await expect(verdict(page)).toContainText(title);
  });
}

test('a line that was heard is played back', async () => {
  const phrase = {
    tempo: 120,
    notes: ['C4 for 1/3 on 3/5', 'Eb4 on 2/4', 'G4 on 1/3'],
    outline: ['1-3 ii'],
  };
  const page = await pageHearing([60, 63, 67], { begun: 24, step: 0.4 });
  await takeUp(page, await lessonOf({ kind: 'echo' }, [phrase]));
  const card = page.locator('[data-kind="echo"]');
  await expect(card).toHaveAttribute('data-tempo', '120');
  expect(await faults(page)).toEqual([]);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'right', PLAYED_BY);
  expect((await heard(page)).join(' ')).toBe('right right right');
  expect(await faults(page)).toEqual([]);
});

test('an arpeggio to be placed is answered by playing, in any order', async () => {
  const page = await pageHearing([55, 48, 51], { begun: 14 });
  await takeUp(page, await lessonOf({ kind: 'place', ...LYING }));
  await expect(page.getByText('tapped or played')).toBeVisible();
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'right', PLAYED_BY);
  await expect(verdict(page)).toContainText('Cm it is');
});

test('without the guitar its cards wait, and the lesson says what it wants', async () => {
  const page = await pageHearing(UP, {});
  const link = await lessonOf(PLAY);
  await page.goto(link);
  await expect(page.getByText('Some of its cards want the guitar in your hand.')).toBeVisible();
  await startLesson(page, link);
  await expect(page.locator('[data-kind]')).toHaveCount(0);
});
