/** How one comes to the screens on which the guitar is heard: the page's microphone hears what is played to it here. */
import type { Page } from '@playwright/test';
import { deckLink } from '../../src/decks/deckLink.ts';
import { readDeck } from '../../src/decks/document.ts';
import { inSteps, recordingOf } from '../listening/played.ts';
import { samplesOf } from '../browser/guitar/recordings.ts';
import { hearing, playSamples } from '../browser/microphone.ts';
import { openCard, verdict } from '../browser/people.ts';

const LYING = { sizes: ['triad'], degrees: [2], strings: ['5-4'], frets: [1, 7] };
const PLAY = { kind: 'play', ...LYING, ways: ['up'] };
const ECHO = { kind: 'echo' };

/** Three notes to be played back, and the sixths that a free minute is advised to try. */
const PHRASES = [
  {
    tempo: 120,
    notes: ['C4 for 1/3 on 3/5', 'Eb4 on 2/4', 'G4 on 1/3'],
    outline: ['1-3 ii'],
  },
];

/** Takes up a lesson of one drill with the guitar in hand: what is told first stands on the screen. */
async function takeUp(page: Page, base: string, drill: object): Promise<void> {
  const read = readDeck({
    version: 2,
    title: 'Slack water',
    key: 'Bb major',
    drills: [drill],
    phrases: PHRASES,
  });
  if ('fault' in read) throw new Error(read.fault);
  await hearing(page);
  await page.goto(await deckLink(read.deck, base));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.locator('[data-do="guitar"]').click();
}

const tell = async (page: Page, base: string, drill: object) => {
  await takeUp(page, base, drill);
  await page.locator('[data-do="start"]').click();
  await page.locator('[data-do="listen"]').waitFor();
};

const tune = async (page: Page, base: string, drill: object) => {
  await tell(page, base, drill);
  await page.locator('[data-do="listen"]').click();
  await page.getByRole('heading', { name: 'Tune up' }).waitFor();
};

const click = async (page: Page, base: string, drill: object) => {
  await tune(page, base, drill);
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Five clicks' }).waitFor();
};

const ask = async (page: Page, base: string, drill: object) => {
  await click(page, base, drill);
  await page.locator('[data-do="skip"]').click();
  await openCard(page).waitFor();
  await page.getByText('Listening. Play when you like.').waitFor({ timeout: 60_000 });
};

/** Plays a line, sees the verdict and stays at it. */
const play = async (page: Page, base: string, drill: object, line: readonly number[]) => {
  await ask(page, base, drill);
  await playSamples(page, samplesOf(line));
  await verdict(page).click({ timeout: 60_000 });
};

const beginMinute = async (page: Page, base: string) => {
  await takeUp(page, base, PLAY);
  await page.getByRole('link', { name: 'A free minute' }).click();
  await page.locator('[data-do="begin"]').waitFor();
};

/** A free minute, with a line played in eighths at its tempo. */
const playFreely = async (page: Page, base: string) => {
  await beginMinute(page, base);
  await page.locator('[data-do="begin"]').click();
  await page.locator('[data-do="listen"]').click();
  for (const title of ['Tune up', 'Five clicks']) {
    await page.getByRole('heading', { name: title }).waitFor();
    await page.locator('[data-do="skip"]').click();
  }
  await page.getByRole('heading', { name: 'Play what you like' }).waitFor();
  const line = [57, 58, 60, 62, 63, 65, 67, 69, 72, 77, 72, 69, 65, 60, 63, 67, 72, 67, 63, 60];
  const notes = inSteps(line, 0.1, 1 / 3).map((note) => ({ ...note, until: note.time + 0.3 }));
  await playSamples(page, recordingOf(notes, 8, { noise: 0 }), '[data-beat="6"]');
  await page.getByText(`${line.length} plucks heard`).waitFor({ timeout: 30_000 });
};

export const WITH_GUITAR: Readonly<Record<string, (page: Page, base: string) => Promise<void>>> = {
  'guitar-told': (page, base) => tell(page, base, PLAY),
  'guitar-closed': async (page, base) => {
    await tell(page, base, PLAY);
    await page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = () =>
        Promise.reject(new DOMException('', 'NotAllowedError'));
    });
    await page.locator('[data-do="listen"]').click();
    await page.getByRole('heading', { name: 'The phone does not hear you' }).waitFor();
  },
  'guitar-tune': async (page, base) => {
    await tune(page, base, PLAY);
    await playSamples(page, recordingOf(inSteps([40], 0.2, 1), 8, { cents: 12 }));
    await page
      .getByText(/too high/)
      .first()
      .waitFor({ state: 'attached' });
  },
  'guitar-clicks': (page, base) => click(page, base, PLAY),
  'card-play': (page, base) => ask(page, base, PLAY),
  'card-play-verdict': (page, base) => play(page, base, PLAY, [48, 52, 55]),
  'card-echo': (page, base) => ask(page, base, ECHO),
  'card-echo-verdict': (page, base) => play(page, base, ECHO, [60, 64, 67]),
  'minute-with-guitar': beginMinute,
  'minute-playing': playFreely,
  'minute-told': async (page, base) => {
    await playFreely(page, base);
    await page.locator('[data-do="finish"]').click();
    await page.getByRole('heading', { name: 'Your minute' }).waitFor();
  },
};
