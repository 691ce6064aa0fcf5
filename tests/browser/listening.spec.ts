import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium, expect, test, type Browser, type Page } from '@playwright/test';
import type { Expected, Performance } from '../../src/listening/listening.ts';
import { heardIn, words } from '../listening/hearing.ts';
import { RATE, inSteps, recordingOf, wavOf } from '../listening/played.ts';
import { chromiumPath } from './engines.mjs';
import { print, servePage, type Served } from './sound/serve.ts';

/** The room of listening in a real browser, with a file as its microphone. */
test.describe.configure({ mode: 'default' });

let served: Served;
let folder: string;
let browser: Browser | undefined;

test.beforeAll(async () => {
  served = await servePage(join(import.meta.dirname, 'listening'));
  folder = await mkdtemp(join(tmpdir(), 'skipwise-listening-'));
});

test.afterEach(async () => {
  await browser?.close();
  browser = undefined;
});

test.afterAll(async () => {
  await served.close();
  await rm(folder, { recursive: true });
});

/** A page whose microphone is a recording; or none, or one that is refused. */
async function pageWith(
  microphone: Float32Array | 'none' | 'refused',
  looping = '%noloop',
): Promise<Page> {
  const args = ['--no-sandbox', '--autoplay-policy=no-user-gesture-required'];
  if (microphone !== 'refused') args.push('--use-fake-ui-for-media-stream');
  if (microphone !== 'none') args.push('--use-fake-device-for-media-stream');
  if (microphone instanceof Float32Array) {
    const file = join(folder, 'microphone.wav');
    await writeFile(file, wavOf(microphone));
    args.push(`--use-file-for-fake-audio-capture=${file}${looping}`);
  }
  browser = await chromium.launch({ executablePath: chromiumPath() ?? '', args });
  const page = await browser.newPage();
  await page.goto(served.url);
  await page.waitForFunction(() => 'ears' in window);
  return page;
}

const followed = (page: Page, expected: Expected) =>
  page.evaluate(async (wanted) => {
    const level = await window.ears.open();
    const { performance, atOnce } = await window.ears.follow(wanted);
    return { performance, atOnce, level, rate: window.ears.context.sampleRate };
  }, expected);

const LINE = [58, 62, 65, 69, 65, 62, 58, 57];
const line: Expected = { notes: LINE, order: 'given' };
/** Where the phrase begins in the file: the browser needs a while to open the microphone. */
const START = 3;

/** Seconds between the notes that were heard. */
const steps = ({ notes }: Performance) => {
  const times = notes.flatMap((note) => (note && 'time' in note ? [note.time] : []));
  return times.slice(1).map((time, i) => time - times[i]!);
};

for (const [what, midis] of [
  ['played right', LINE],
  ['with a semitone wrong', LINE.map((midi, i) => (i === 3 ? 68 : midi))],
  ['with an octave wrong', LINE.map((midi, i) => (i === 2 ? midi + 12 : midi))],
  ['with a note missing', LINE.filter((_, i) => i !== 4)],
] as const) {
  test(`a phrase ${what} is judged as Node judges the same file`, async () => {
    const samples = recordingOf(inSteps(midis, START, 0.2), START + 4);
    const page = await pageWith(samples);
    const heard = await followed(page, line);
    expect(heard.rate).toBe(RATE);
    const node = heardIn(samples, line);
    expect(words(heard.performance)).toEqual(words(node));
    expect(heard.performance.extras.map((extra) => extra.heard)).toEqual(
      node.extras.map((extra) => extra.heard),
    );
    const own = steps(node);
    steps(heard.performance).forEach((step, i) => {
      expect(Math.abs(step - own[i]!)).toBeLessThan(0.004);
    });
    // At once only what is right is told.
    for (const index of heard.atOnce) expect(words(heard.performance)[index]).toBe('right');
    expect(await page.evaluate(() => window.ears.sentence())).toContain('microphone is on');
  });
}

test('a chord’s notes in any order are heard', async () => {
  const page = await pageWith(recordingOf(inSteps([65, 58, 62], START, 0.4), START + 4));
  const heard = await followed(page, { notes: [58, 62, 65], order: 'any' });
  expect(words(heard.performance)).toEqual(['right', 'right', 'right']);
});

test('a string 12 cents flat is read while tuning up', async () => {
  const samples = recordingOf([{ midi: 45, time: 1.5 }], 5, { cents: -12 });
  const page = await pageWith(samples);
  const tuning = await page.evaluate(async () => {
    await window.ears.open();
    return window.ears.tune([40, 45, 50, 55, 59, 64], 500);
  });
  expect(tuning).toMatchObject({ string: 1, state: 'near' });
  expect(Math.abs(tuning.cents + 12)).toBeLessThan(1);
});

test('sound that comes back late is measured within 3 ms', async () => {
  const page = await pageWith('none');
  const delays = await page.evaluate(async () => {
    const { ears } = window;
    const late = ears.hearItself();
    late.value = 0.05;
    await ears.open();
    const measured = [await ears.listening.measureDelay(ears.click())];
    late.value = 0.23;
    measured.push(await ears.listening.measureDelay(ears.click()));
    return measured;
  });
  // The way through the page's own stream takes a time of its own, the same both times.
  print('delay measured at 50 and 230 ms, s', delays);
  expect(Math.abs(delays[1]! - delays[0]! - 0.18)).toBeLessThan(0.003);
});

test('a microphone that is refused, or not there, is told and nothing waits', async () => {
  const refused = await pageWith('refused');
  expect(await refused.evaluate(() => window.ears.open())).toBeNull();
  expect(await refused.evaluate(() => window.ears.state())).toBe('refused');
  expect(await refused.evaluate(() => window.ears.sentence())).toContain('not allowed');
  await browser!.close();
  const none = await pageWith('none');
  expect(await none.evaluate(() => window.ears.open())).toBeNull();
  expect(await none.evaluate(() => window.ears.state())).toBe('none');
});

test('a microphone that goes away in the middle is told, and may be opened again', async () => {
  const page = await pageWith(recordingOf(inSteps(LINE, START, 0.3), START + 6));
  const states = await page.evaluate(async (expected) => {
    const { ears } = window;
    const stream = ears.watchStream();
    await ears.open();
    ears.listening.follow(expected, {});
    const before = ears.state();
    stream.take();
    const gone = ears.state();
    await ears.open();
    const again = ears.state();
    ears.listening.closeMicrophone();
    return [before, gone, again, ears.state()];
  }, line);
  expect(states).toEqual(['listening', 'gone', 'listening', 'off']);
});

/**
 * Minutes for which blocks are watched: a third of one, or as many as are asked for. The slowdown reaches the page alone;
 * neither the audio thread nor the Worker can be slowed down by itself.
 */
const MINUTES = Number(process.env.LISTEN_MINUTES ?? 1 / 3);

test('no block is lost while the page is four times as slow and the judge at work', async () => {
  test.setTimeout(60_000 * (MINUTES + 2));
  // A ramp: whatever is lost or doubled on the way breaks it.
  const ramp = Float32Array.from({ length: 32768 * 40 }, (_, n) => (n % 32768) / 16384 - 1);
  const page = await pageWith(ramp, '');
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const counted = await page.evaluate(async (ms) => {
    const { ears } = window;
    await ears.open();
    ears.listening.follow({ notes: [58, 62, 65], order: 'given' }, {});
    return ears.blocks(ms);
  }, 60_000 * MINUTES);
  print('blocks of 512 samples with the page at 4× slowdown', counted);
  // Breaks within the clock's own frames are the simulated microphone's, where the machine is busy.
  expect(counted.lost).toBe(0);
  expect(counted.blocks).toBeGreaterThan(3000 * MINUTES);
  expect(counted.blocks).toBe(Math.round((counted.audio * RATE) / 512));
});

test('collecting takes next to nothing of the audio thread’s time', async () => {
  const page = await pageWith('none');
  const share = await page.evaluate(() => window.ears.collecting());
  print('share of the audio thread’s time that collecting takes', { share });
  // A quarter at 4× slowdown, and far from it.
  expect(share).toBeLessThan(0.06);
});

test('what is fetched for it is at most 25 kB', async () => {
  const files = await readdir(join(served.folder, 'assets'));
  const sizes = await Promise.all(
    files
      .filter((file) => /microphone|worker|collector/.test(file))
      .map(async (file) => gzipSync(await readFile(join(served.folder, 'assets', file))).length),
  );
  print('bytes of the chunks, gzipped', sizes);
  expect(sizes).toHaveLength(3);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(25_000);
});
