import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect, test, type Browser, type Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { recordingOf, wavOf } from '../listening/played.ts';
import { shellPath } from './engines.mjs';
import { hearing, playSamples } from './microphone.ts';
import { dice, midiOn } from './musician.ts';
import {
  answersKept,
  answerTo,
  axeOn,
  faults,
  give,
  judged,
  newCard,
  openCard,
  phraseLesson,
  question,
  reloadKept,
  startLesson,
  verdict,
} from './people.ts';

/** The guitar in hand, with a file as the microphone. */

let folder: string;
let browser: Browser | undefined;

test.beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'skipwise-hand-'));
});
test.afterEach(async () => {
  await browser?.close();
  browser = undefined;
});
test.afterAll(() => rm(folder, { recursive: true }));

/** Open strings from the lowest, as they are plucked while tuning up: the page needs a while before it listens. */
const OPEN = [40, 45, 50, 55, 59, 64];
const FIRST = 3;
const EACH = 1.2;

const plucked = (cents: number) =>
  recordingOf(
    OPEN.map((midi, i) => ({ midi, time: FIRST + i * EACH, until: FIRST + i * EACH + 1.1 })),
    FIRST + OPEN.length * EACH + 1,
    { cents },
  );

/** A page whose microphone plays a recording; or that is not allowed one. The stream it is given is kept. */
async function pageWith(microphone: Float32Array | 'refused'): Promise<Page> {
  const args = ['--no-sandbox', '--autoplay-policy=no-user-gesture-required'];
  args.push('--use-fake-device-for-media-stream');
  if (microphone !== 'refused') {
    const file = join(folder, 'microphone.wav');
    await writeFile(file, wavOf(microphone));
    args.push('--use-fake-ui-for-media-stream');
    args.push(`--use-file-for-fake-audio-capture=${file}%noloop`);
  }
  browser = await chromium.launch({ executablePath: shellPath() ?? '', args });
  const { baseURL } = test.info().project.use;
  const context = await browser.newContext({
    baseURL: baseURL!,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.addInitScript(() => {
    const tracks: MediaStreamTrack[] = [];
    Object.assign(globalThis, { tracks });
    const ask = navigator.mediaDevices?.getUserMedia.bind(navigator.mediaDevices);
    if (!ask) return;
    MediaDevices.prototype.getUserMedia = async (constraints) => {
      const stream = await ask(constraints);
      tracks.push(...stream.getTracks());
      return stream;
    };
  });
  return page;
}

const tracks = (page: Page) =>
  page.evaluate(() =>
    (globalThis as unknown as { tracks: MediaStreamTrack[] }).tracks.map(
      ({ readyState }) => readyState,
    ),
  );

/** The microphone goes away by itself, as by a cable. */
const takeAway = (page: Page) =>
  page.evaluate(() => {
    for (const track of (globalThis as unknown as { tracks: MediaStreamTrack[] }).tracks) {
      track.stop();
      track.dispatchEvent(new Event('ended'));
    }
  });

/** A lesson of cards that are placed, or only named. */
async function lesson(kind: 'place' | 'spot'): Promise<string> {
  const read = readDeck({
    version: 1,
    title: 'Harbour steps',
    key: 'Bb major',
    drills: [{ kind, sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, test.info().project.use.baseURL!);
}

const handSwitch = (page: Page) => page.locator('[data-do="guitar"]');

/** Takes the lesson, and the guitar in hand on Today; begins a round, up to what is told first. */
async function takeUp(page: Page): Promise<void> {
  await startLesson(page, await lesson('place'));
  await question(page);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await handSwitch(page).click();
  await expect(handSwitch(page)).toHaveAttribute('aria-checked', 'true');
  await page.locator('[data-do="start"]').click();
}

async function skipTuning(page: Page): Promise<void> {
  await page.locator('[data-do="listen"]').click();
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Five clicks' }).waitFor();
  await page.locator('[data-do="skip"]').click();
  await question(page);
}

test('without the guitar in hand nothing of it is asked, and the switch is kept', async () => {
  const page = await pageWith(plucked(0));
  await startLesson(page, await lesson('place'));
  await question(page);
  expect(await tracks(page)).toEqual([]);
  await expect(page.getByText('Listening')).toHaveCount(0);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(handSwitch(page)).toHaveAttribute('aria-checked', 'false');
  await handSwitch(page).click();
  await reloadKept(page);
  await expect(handSwitch(page)).toHaveAttribute('aria-checked', 'true');
  // A lesson with nothing to play has no switch.
  await startLesson(page, await lesson('spot'));
  await question(page);
  expect(await tracks(page)).toEqual([]);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect(page.locator('[data-do="start"]')).toBeVisible();
  await expect(handSwitch(page)).toHaveCount(0);
});

/** How wide the narrowest of the bars is on which cents are read, with letters of such a size. */
const barWidth = (page: Page, text: string) =>
  page.evaluate((size) => {
    document.documentElement.style.fontSize = size;
    const widths = [...document.querySelectorAll('[data-tune] svg')].map(
      (bar) => bar.getBoundingClientRect().width,
    );
    document.documentElement.style.fontSize = '';
    return Math.min(...widths);
  }, text);

test('a guitar 12 cents flat is tuned up, and may be left so', async () => {
  const page = await pageWith(plucked(-12));
  await takeUp(page);
  await expect(page.getByRole('heading', { name: 'With your guitar' })).toBeFocused();
  await expect(page.getByText('nothing leaves the phone')).toBeVisible();
  await expect(page.getByText('Stop as soon as playing hurts')).toBeVisible();
  expect(await tracks(page)).toEqual([]);
  const upright = page.viewportSize()!;
  await page.setViewportSize({ width: upright.height, height: upright.width });
  await expect(page.locator('[data-do="listen"]')).toBeInViewport({ ratio: 1 });
  await page.setViewportSize(upright);
  await page.locator('[data-do="listen"]').click();
  await expect(page.getByRole('heading', { name: 'Tune up' })).toBeVisible();
  await expect(page.getByText('Listening', { exact: true })).toBeVisible();
  await expect(page.locator('[data-tune][data-state="near"]')).toHaveCount(6, { timeout: 20_000 });
  for (const row of await page.locator('[data-tune]').all()) {
    await expect(row).toContainText(/−1[123].*↑ a little too low/);
  }
  await expect(page.getByText('as a whole 12 cents low')).toBeVisible();
  expect(await barWidth(page, '100%')).toBeGreaterThan(250);
  expect(await barWidth(page, '200%')).toBeGreaterThan(150);
  const axe = await axeOn(page).analyze();
  expect(axe.violations).toEqual([]);
  await page.locator('[data-do="tuned"]').click();
  // The file does not hear the clicks, as a microphone does not beside headphones.
  await expect(page.getByText('not whether you are early or late')).toBeVisible();
  await question(page);
  await expect(page.getByText('Listening', { exact: true })).toBeVisible();
  expect(await tracks(page)).toEqual(['live']);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await expect.poll(() => tracks(page)).toEqual(['ended']);
  // Later on the same day it need not be tuned again.
  await page.locator('[data-do="start"]').click();
  await page.locator('[data-do="in-tune"]').click();
  await question(page);
  expect(await tracks(page)).toEqual(['ended', 'live']);
});

test('a microphone that is not allowed costs no card', async () => {
  const page = await pageWith('refused');
  await takeUp(page);
  await page.locator('[data-do="listen"]').click();
  await expect(page.getByText('The microphone was not allowed.')).toBeVisible();
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByText('The microphone was not allowed.')).toBeVisible();
  await page.locator('[data-do="put-down"]').click();
  const asked = await question(page);
  await give(page, answerTo(asked!, true, dice(1)));
  expect(await judged(page)).toBe('right');
  await expect(page.getByText('Listening')).toHaveCount(0);
});

test('a microphone that goes away in mid-card is told, and the round goes on', async () => {
  const page = await pageWith(plucked(0));
  await takeUp(page);
  await skipTuning(page);
  const item = await openCard(page).getAttribute('data-item');
  await takeAway(page);
  await expect(page.getByText('The microphone went away')).toBeVisible();
  await expect(page.getByText('Listening', { exact: true })).toHaveCount(0);
  // The card is still there, and can be tapped.
  expect(await openCard(page).getAttribute('data-item')).toBe(item);
  await page.getByRole('button', { name: 'Try again' }).click();
  await question(page);
  await expect(page.getByText('Listening', { exact: true })).toBeVisible();
  expect(await tracks(page)).toEqual(['ended', 'live']);
  expect(await openCard(page).getAttribute('data-item')).toBe(item);
  await takeAway(page);
  await page.locator('[data-do="put-down"]').click();
  await expect(page.getByText('The microphone went away')).toHaveCount(0);
  const asked = await question(page);
  await give(page, answerTo(asked!, true, dice(1)));
  expect(await judged(page)).toBe('right');
  // Without the guitar nothing goes on by itself.
  await page.waitForTimeout(9000);
  await expect(page.locator('[data-do="next"]')).toBeVisible();
});

test('after a verdict the next card comes by itself, unless it is tapped', async () => {
  const page = await pageWith(plucked(0));
  await takeUp(page);
  await skipTuning(page);
  const pick = dice(2);
  const first = await question(page);
  await give(page, answerTo(first!, true, pick));
  await judged(page);
  await expect(page.getByText('Goes on: tap to stay')).toBeVisible();
  await openCard(page).waitFor({ timeout: 45_000 });
  const second = await question(page);
  expect(second!.item).not.toBe(first!.item);
  await give(page, answerTo(second!, true, pick));
  await judged(page);
  await page.locator('[role="status"][data-verdict]').click();
  await expect(page.getByText('Goes on: tap to stay')).toHaveCount(0);
  await page.waitForTimeout(9000);
  await expect(page.locator('[data-do="next"]')).toBeVisible();
});

test('by keyboard alone', async () => {
  const page = await pageWith(plucked(0));
  await startLesson(page, await lesson('place'));
  await question(page);
  await page.goto('#/today');
  await handSwitch(page).focus();
  await page.keyboard.press('Space');
  await expect(handSwitch(page)).toHaveAttribute('aria-checked', 'true');
  await page.locator('[data-do="start"]').focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'With your guitar' })).toBeFocused();
  const onTo = async (what: string) => {
    const wanted = page.locator(`[data-do="${what}"]`);
    for (let tabs = 0; tabs < 6; tabs++) {
      await page.keyboard.press('Tab');
      if (await wanted.evaluate((element) => element === document.activeElement)) break;
    }
    await expect(wanted).toBeFocused();
    await page.keyboard.press('Enter');
  };
  await onTo('listen');
  await expect(page.getByRole('heading', { name: 'Tune up' })).toBeFocused();
  await onTo('skip');
  await expect(page.getByRole('heading', { name: 'Five clicks' })).toBeFocused();
  await onTo('skip');
  await question(page);
  await expect(page.getByText('Listening', { exact: true })).toBeVisible();
});

/** Plays notes, one after another or several at once, to the page's microphone. */
async function playTo(
  page: Page,
  midis: readonly (number | readonly number[])[],
  step = 0.6,
): Promise<void> {
  const notes = midis.flatMap((together, i) =>
    [together].flat().map((midi: number) => {
      const time = 0.2 + i * step;
      return { midi, time, until: time + 0.92 * step };
    }),
  );
  await playSamples(page, recordingOf(notes, step * midis.length + 1.2, { noise: 0 }));
}

/** A lesson to be played, from the lowest note up. */
function playedLesson(): Promise<string> {
  return linkOf([
    { kind: 'play', sizes: ['triad'], strings: ['5-4'], frets: [1, 8], ways: ['up'] },
    { kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] },
  ]);
}

async function linkOf(drills: readonly object[]): Promise<string> {
  const read = readDeck({ version: 2, title: 'Slack water', key: 'Bb major', drills });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, test.info().project.use.baseURL!);
}

/** Takes the guitar in hand and goes on to the first card, with nothing tuned. */
async function beginPlaying(page: Page, link?: string): Promise<void> {
  await hearing(page);
  await startLesson(page, link ?? (await playedLesson()));
  await question(page);
  await page.getByRole('button', { name: 'Leave the round' }).click();
  await handSwitch(page).click();
  await page.locator('[data-do="start"]').click();
  await skipTuning(page);
}

/** Goes on, answering what is tapped, until a card is to be played. */
async function toPlayed(page: Page) {
  const pick = dice(3);
  for (;;) {
    const asked = await question(page);
    if (asked!.kind === 'play') return asked!;
    await give(page, answerTo(asked!, true, pick));
    await judged(page);
    await page.locator('[data-do="next"]').click();
  }
}

test('what is played is judged, and the next card comes with no hand on the phone', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  await beginPlaying(page);
  const asked = await toPlayed(page);
  const line = asked.dots.map((dot) => midiOn(asked.tuning, dot)).toSorted((a, b) => a - b);
  await playTo(page, line);
  expect(await judged(page)).toBe('right');
  await expect(page.locator('[data-heard="right"]')).toHaveCount(line.length);
  await expect(openCard(page)).not.toHaveAttribute('data-item', asked.item, { timeout: 45_000 });
});

test('a card to be played is let go when the microphone goes, and nothing is logged', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  await beginPlaying(page);
  const asked = await toPlayed(page);
  await takeAway(page);
  await expect(page.getByText('The microphone went away')).toBeVisible();
  await expect(openCard(page).or(newCard(page))).toHaveAttribute('data-kind', 'spot');
  await page.locator('[data-do="put-down"]').click();
  const next = await question(page);
  expect(next!.kind).toBe('spot');
  await give(page, answerTo(next!, true, dice(4)));
  expect(await judged(page)).toBe('right');
  await expect.poll(() => answersKept(page)).toContain(next!.item);
  expect(await answersKept(page)).not.toContain(asked.item);
});

/** Cards that are tapped, beside those to be played. */
const TAPPED = { kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] };
/** Cm on strings 5 and 4. */
const MINOR = [48, 51, 55];

test('what could not be told is asked once more, then left by itself, and nothing is logged', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  const lying = { sizes: ['seventh'], degrees: [2], strings: ['5-4-3'], frets: [1, 7] };
  await beginPlaying(page, await linkOf([{ kind: 'play', ...lying, ways: ['turn'] }, TAPPED]));
  const asked = await toPlayed(page);
  expect(await faults(page)).toEqual([]);
  const up = asked.dots.map((dot) => midiOn(asked.tuning, dot)).toSorted((a, b) => a - b);
  // A rest where a note should be, as long as that note: it may have been there and not been heard.
  const resting = [...up, ...up.slice(0, -1).toReversed()].map((midi, i) => (i === 4 ? [] : midi));
  await playTo(page, resting);
  await expect(page.getByText('Not heard for sure. Play it once more.')).toBeVisible();
  await playTo(page, resting);
  await expect(page.locator('[data-verdict="unheard"]')).toContainText('It goes on by itself');
  await expect(page.locator('[data-do="leave"]')).toBeVisible();
  expect(await faults(page)).toEqual([]);
  await expect(page.getByText('it counts for nothing')).toBeVisible({ timeout: 20_000 });
  await expect(openCard(page).or(newCard(page))).toHaveAttribute('data-kind', 'spot');
  expect(await answersKept(page)).not.toContain(asked.item);
});

test('what is played on a card to be placed and cannot be told is asked once more, then tapped', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  await beginPlaying(page, await lesson('place'));
  const asked = await question(page);
  await expect(page.getByText('tapped or played')).toBeVisible();
  // Between two notes: it can be told for neither.
  const between = recordingOf([{ midi: 52, time: 0.2, until: 1 }], 1.4, { noise: 0, cents: 50 });
  await playSamples(page, between);
  await expect(page.locator('[data-verdict="unheard"]')).toContainText(
    'play it once more, or tap it',
  );
  expect(await openCard(page).getAttribute('data-item')).toBe(asked!.item);
  await playSamples(page, between);
  await expect(page.locator('[data-verdict="unheard"]')).toContainText('tap it this time');
  await expect(page.getByText('tapped or played')).toHaveCount(0);
  expect(await answersKept(page)).not.toContain(asked!.item);
  await give(page, answerTo(asked!, true, dice(1)));
  await expect(page.locator('[data-kind] [data-verdict]')).toHaveAttribute('data-verdict', 'right');
  await expect(page.locator('[data-verdict="unheard"]')).toHaveCount(0);
  await expect.poll(() => answersKept(page)).toContain(asked!.item);
});

test('at a tempo it is counted in, and judged by its notes', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  const lying = { sizes: ['triad'], degrees: [2], strings: ['5-4'], frets: [1, 7] };
  const played = { kind: 'play', ...lying, ways: ['up'], tempo: 72 };
  await beginPlaying(page, await linkOf([played, TAPPED]));
  const asked = await toPlayed(page);
  await expect(openCard(page)).toHaveAttribute('data-tempo', '72');
  await expect(page.getByText('After the count.')).toBeVisible();
  await expect(page.getByText('Listening. Play when you like.')).toBeVisible();
  await expect(openCard(page)).toContainText('two notes a beat at 72');
  await playTo(page, MINOR, 60 / 72 / 2);
  expect(await judged(page)).toBe('right');
  await expect(verdict(page)).not.toContainText('asked was');
  await expect(page.locator('[data-heard="right"]')).toHaveCount(MINOR.length);
  expect(await faults(page)).toEqual([]);
  await expect.poll(() => answersKept(page)).toContain(asked.item);
});

test('the next arpeggio of a phrase is answered by playing', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  const { baseURL } = test.info().project.use;
  await beginPlaying(page, await phraseLesson(['follow'], baseURL!));
  const asked = await question(page);
  expect(asked!.kind).toBe('follow');
  const places = answerTo(asked!, true, dice(5));
  if (typeof places === 'string') throw new Error('It is not placed.');
  const notes = places.map((place) => midiOn(asked!.tuning, place));
  // While the card itself sounds nobody is listened to: then it is played once more.
  await expect(async () => {
    await playTo(page, notes);
    await verdict(page).waitFor({ timeout: 8000 });
  }).toPass({ timeout: 60_000 });
  expect(await judged(page)).toBe('right');
  await expect.poll(() => answersKept(page)).toContain(asked!.item);
});

test('a page that is put away lets go of the microphone', async () => {
  const page = await pageWith('refused');
  await beginPlaying(page);
  expect(await tracks(page)).toEqual(['live']);
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expect.poll(() => tracks(page)).toEqual(['ended']);
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'visible', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await page.getByRole('button', { name: 'Try again' }).click();
  await question(page);
  expect(await tracks(page)).toEqual(['ended', 'live']);
});

/** From now on the page has two voices, one of them the phone's own, and keeps what they say. */
async function withVoices(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const said: string[] = [];
    const voices = [
      { lang: 'en-US', localService: false, name: 'away' },
      { lang: 'en-GB', localService: true, name: 'here' },
    ];
    Object.assign(globalThis, {
      said,
      SpeechSynthesisUtterance: class extends EventTarget {
        voice: unknown;
        constructor(readonly text: string) {
          super();
        }
      },
    });
    Object.defineProperty(globalThis, 'speechSynthesis', {
      value: {
        getVoices: () => voices,
        cancel() {},
        speak(utterance: EventTarget & { text: string; voice: { name: string } }) {
          said.push(`${utterance.voice.name}: ${utterance.text}`);
          setTimeout(() => utterance.dispatchEvent(new Event('end')), 200);
        },
      },
    });
  });
  return () => page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
}

test('questions are spoken, by a voice of the phone itself alone', async () => {
  const page = await pageWith('refused');
  const said = await withVoices(page);
  await hearing(page);
  await startLesson(page, await lesson('place'));
  await question(page);
  await page.goto('#/settings');
  await page.getByRole('checkbox', { name: 'Questions are spoken' }).check({ force: true });
  await page.goto('#/today');
  await handSwitch(page).click();
  await page.locator('[data-do="start"]').click();
  await skipTuning(page);
  const asked = await question(page);
  await expect.poll(said).toHaveLength(1);
  const name = asked!
    .chord!.replace('b', ' flat')
    .replace(/dim$/, ' diminished')
    .replace(/(?<=[A-Gt])m$/, ' minor');
  expect((await said())[0]).toContain(`here: Place ${name}`);
});

/** A figure that is kept on the strings. */
function struckLesson(): Promise<string> {
  const read = readDeck({
    version: 2,
    title: 'Slack water',
    key: 'Bb major',
    drills: [{ kind: 'pulse', figures: ['triplets'], tempos: [60], clicks: ['beat'] }],
  });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, test.info().project.use.baseURL!);
}

test('muted strings keep time as taps do, and the bar before is counted aloud', async () => {
  test.setTimeout(120_000);
  const page = await pageWith('refused');
  const said = await withVoices(page);
  await hearing(page);
  await startLesson(page, await struckLesson());
  await question(page);
  await page.goto('#/settings');
  await page.getByRole('checkbox', { name: 'Questions are spoken' }).check({ force: true });
  await page.goto('#/today');
  await handSwitch(page).click();
  await page.locator('[data-do="start"]').click();
  await skipTuning(page);
  // From the second beat on: the first is not to be met from here. The count is over a third of a beat before the first.
  const strokes = Array.from({ length: 45 }, (_, i) => ({
    midi: 52,
    time: 4 / 3 + i / 3,
    until: 4 / 3 + 0.04 + i / 3,
  }));
  await playSamples(page, recordingOf(strokes, 18, { noise: 0 }), '.count-words.past');
  await page.getByRole('button', { name: 'Count me in' }).click();
  await expect.poll(said).toEqual(['here: 1', 'here: 2', 'here: 3', 'here: 4']);
  await verdict(page).waitFor({ timeout: 30_000 });
  expect(await judged(page)).toBe('right');
  await expect(verdict(page)).toContainText('Even at 60');
});
