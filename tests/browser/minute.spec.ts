import { expect, test, type Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { recordingOf } from '../listening/played.ts';
import { hearing, playSamples } from './microphone.ts';
import { axeOn, kept, linkIn, reloadKept } from './people.ts';

/** A free minute, with what is played handed to the page's microphone. */
test.use({ viewport: { width: 360, height: 640 } });

const TEMPO = 90;
const BEAT = 60 / TEMPO;

/**
 * Nine steps up the scale, then V and ii as arpeggios up and down, in eighths: long enough that they are outlined
 * whichever half of the beat they begin on, as a page that is slow to begin has it.
 */
const PLAYED = [
  57, 58, 60, 62, 63, 65, 67, 69, 70, 72, 65, 69, 72, 77, 72, 69, 65, 60, 63, 67, 72, 67, 63, 60,
];

async function lesson(baseURL: string): Promise<string> {
  const read = readDeck({
    version: 1,
    title: 'Slack water',
    key: 'Bb major',
    drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
    phrases: [
      {
        tempo: TEMPO,
        notes: ['Bb3 for 1/3', 'G4', 'F4', 'D4', 'Bb4', 'A4', 'F4', 'D5'],
      },
    ],
  });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, baseURL);
}

async function take(page: Page, baseURL: string): Promise<void> {
  await page.goto(await lesson(baseURL));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.getByRole('link', { name: 'A free minute' }).click();
  await expect(page.getByRole('heading', { name: 'A free minute' })).toBeFocused();
}

/** From the chosen minute to its first beat. */
async function begin(page: Page): Promise<void> {
  await page.locator('[data-do="begin"]').click();
  await page.locator('[data-do="listen"]').click();
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Five clicks' }).waitFor();
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Play what you like' }).waitFor();
}

/** The beats that lines may be played from: what is played is handed over before one of them, so that it comes on time. */
const BEGINS = [6, 10, 14, 18, 22, 26, 30];

/** Plays a line in eighths. */
async function playLine(page: Page, midis: readonly number[]): Promise<void> {
  const notes = midis.map((midi, i) => ({
    midi,
    time: 0.1 + (i * BEAT) / 2,
    until: 0.1 + (i * BEAT) / 2 + 0.3,
  }));
  const seconds = 0.1 + (midis.length * BEAT) / 2 + 0.6;
  const beats = BEGINS.map((beat) => `[data-beat="${beat}"]`).join();
  await playSamples(page, recordingOf(notes, seconds, { noise: 0 }), beats);
}

/** Counts the strings that begin to sound: buffers of more than a second, as no click's is. */
async function countStrings(page: Page): Promise<() => Promise<number>> {
  await page.addInitScript(() => {
    const started = { strings: 0 };
    Object.assign(globalThis, { started });
    const { start } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (...when) {
      if (this.buffer && this.buffer.duration > 1) started.strings++;
      return start.apply(this, when);
    };
  });
  return () =>
    page.evaluate(
      () => (globalThis as unknown as { started: { strings: number } }).started.strings,
    );
}

test('a line is heard, told, sounded again and kept', async ({ page, baseURL }) => {
  test.setTimeout(120_000);
  await hearing(page);
  await take(page, baseURL!);
  await expect(page.getByText('It needs your guitar in hand')).toBeVisible();
  await page.locator('[data-do="guitar"]').click();
  await expect(page.getByLabel('the tonic held')).toBeDisabled();
  expect((await axeOn(page).analyze()).violations).toEqual([]);

  await begin(page);
  await expect(page.getByText('Listening', { exact: true })).toBeVisible();
  expect((await axeOn(page).analyze()).violations).toEqual([]);
  await playLine(page, PLAYED);
  await expect(page.getByText(`${PLAYED.length} plucks heard`)).toBeVisible({ timeout: 30_000 });
  await page.locator('[data-do="finish"]').click();

  await expect(page.getByRole('heading', { name: 'Your minute' })).toBeFocused();
  await expect(page.getByText('Listening', { exact: true })).toHaveCount(0);
  const fact = (name: string) => page.locator(`[data-fact="${name}"]`);
  await expect(fact('Leaps')).toContainText('61 % 14 leaps and 9 steps');
  await expect(fact('Longest run')).toContainText('9 steps up from A to C');
  await expect(fact('Arpeggios outlined')).toContainText('ii');
  await expect(fact('Arpeggios outlined')).toContainText('V');
  await expect(fact('Along the neck')).toContainText('A to F, 20 semitones');
  await expect(fact('Pauses')).toContainText('none');
  await expect(fact('In time')).toContainText(/within 6 ms|± \d ms/);
  await expect(page.locator('[data-advice]')).toHaveText(
    'You ran nine steps up: try the sixths in the phrase.',
  );
  await expect(page.locator('.strip [data-index]')).toHaveCount(PLAYED.length);
  expect((await axeOn(page).analyze()).violations).toEqual([]);

  await page.locator('[data-do="hear"]').click();
  await expect(page.locator('.strip .sounding')).toHaveCount(1);
  await page.locator('[data-do="hear"]').click();
  await page.locator('[data-index="10"]').click();
  await page.locator('[data-index="13"]').click();
  await expect(page.getByText('Notes 11 to 14')).toBeVisible();
  await page.locator('[data-do="keep"]').click();
  await expect(page.locator('[data-do="keep"]')).toBeDisabled();

  await page.goto('#/minute');
  await reloadKept(page);
  await page.getByRole('link', { name: '4 notes' }).click();
  await expect(page.getByText('It outlines V (F)')).toBeVisible();
  await page.getByRole('button', { name: 'Make a lesson of it' }).click();
  await expect(page.getByLabel('Title')).toHaveValue(/Your line of/);
  await page.goto('#/send');
  const link = await linkIn(page.locator('[data-line] input'));
  expect(link.length).toBeLessThan(300);
  const teacher = await page.context().browser()!.newPage();
  await teacher.goto(link);
  await expect(teacher.getByText(/^Line of/).first()).toBeVisible();
  await teacher.close();
  // Nothing of the sound is kept: what is stored is a few lines of text.
  expect((await kept(page)).length).toBeLessThan(20_000);
});

test('a minute over a round of chords, and of too little, says so, and the next one goes on from the tuned guitar', async ({
  page,
  baseURL,
}) => {
  test.setTimeout(120_000);
  const strings = await countStrings(page);
  await hearing(page);
  await take(page, baseURL!);
  await page.locator('[data-do="guitar"]').click();
  await page.getByLabel('I wear headphones').check({ force: true });
  await page.getByLabel('a round of').check({ force: true });
  await begin(page);
  expect(await strings()).toBe(0);
  // The round's first chord, of three voices and more.
  await expect.poll(strings).toBeGreaterThanOrEqual(3);
  await playLine(page, [58, 62, 65]);
  await expect(page.getByText('3 plucks heard')).toBeVisible();
  await page.locator('[data-do="finish"]').click();
  await expect(page.getByText('Fewer than twelve single notes were heard')).toBeVisible();
  await page.locator('[data-do="begin"]').click();
  await page.getByRole('heading', { name: 'Play what you like' }).waitFor();
});
