/** Time kept by taps at exact times: what the page says of them has to be what they were. */
import { expect, test, type CDPSession, type Page } from '@playwright/test';
import type { TimeDrill } from '../../src/decks/deck.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { deckIn } from '../cards/decks.ts';
import { askedSoFar, linkIn, openCard, question, startLesson, verdict } from './people.ts';

const TEMPO = 120;
const STEP = 60_000 / TEMPO / 3;
const DUE = Array.from({ length: 48 }, (_, i) => i * STEP);
const LATE_OF_ALL = 35;

const drill: TimeDrill = {
  kind: 'pulse',
  figures: ['triplets'],
  tempos: [TEMPO],
  clicks: ['beat'],
};
const lesson = (baseURL: string) =>
  deckLink({ ...deckIn('Bb major'), title: 'Wednesday: even', drills: [drill] }, `${baseURL}`);

/**
 * From when a context first runs, its clock goes with the page's: a machine with much else to do lets real sound stand
 * still, and then nothing is said of the taps. `slip` sets it back, as such a stand does.
 */
async function steadyClock(page: Page) {
  await page.addInitScript(() => {
    const ahead = new WeakMap<object, number>();
    const clock = BaseAudioContext.prototype;
    const { get } = Object.getOwnPropertyDescriptor(clock, 'currentTime')!;
    let slipped = 0;
    const slip = (seconds: number) => (slipped += seconds);
    Object.assign(globalThis, { slip });
    const seconds = (context: BaseAudioContext): number => {
      const real = get!.call(context) as number;
      if (context instanceof OfflineAudioContext || context.state !== 'running') return real;
      const now = performance.now() / 1000;
      if (!ahead.has(context)) ahead.set(context, real - now);
      return now + ahead.get(context)! - slipped;
    };
    Object.defineProperty(clock, 'currentTime', {
      get(this: BaseAudioContext) {
        return seconds(this);
      },
    });
    AudioContext.prototype.getOutputTimestamp = function () {
      return { contextTime: seconds(this), performanceTime: performance.now() };
    };
  });
}

/** Remembers when clicks are to sound, on the clock of sound, and which context they sound in. */
async function watchClicks(page: Page) {
  await page.addInitScript(() => {
    const clicks: { context: AudioContext; at: number }[] = [];
    Object.assign(globalThis, { clicks });
    const { start } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (at = 0, ...rest) {
      if (this.context instanceof AudioContext) clicks.push({ context: this.context, at });
      return start.call(this, at, ...rest);
    };
  });
}

/** When the bar line after the count-in is heard, in ms since 1970 as the page's clock counts them. */
async function zero(page: Page): Promise<number> {
  const counting = () => (globalThis as unknown as { clicks: unknown[] }).clicks.length > 3;
  await page.waitForFunction(counting);
  return page.evaluate(
    (bar) => {
      type Clicks = { context: AudioContext; at: number }[];
      const [first] = (globalThis as unknown as { clicks: Clicks }).clicks;
      const { contextTime, performanceTime } = first!.context.getOutputTimestamp();
      const heard = performanceTime! + 1000 * (first!.at + bar - contextTime!);
      return performance.timeOrigin + heard;
    },
    (4 * 60) / TEMPO,
  );
}

/** Presses and lets go of a mouse over the pad at these times, whenever the page comes to see it. */
async function tapAt(cdp: CDPSession, page: Page, times: readonly number[]) {
  const box = (await page.getByRole('button', { name: /Tap here/ }).boundingBox())!;
  const where = { x: box.x + box.width / 2, y: box.y + box.height / 2, button: 'left' } as const;
  for (const time of times) {
    await new Promise((resolve) => setTimeout(resolve, time - Date.now()));
    const pressed = { ...where, clickCount: 1, timestamp: time / 1000 };
    void cdp.send('Input.dispatchMouseEvent', { type: 'mousePressed', ...pressed });
    void cdp.send('Input.dispatchMouseEvent', { type: 'mouseReleased', ...pressed });
  }
}

/** The same by a key. */
async function keyAt(cdp: CDPSession, times: readonly number[]) {
  for (const time of times) {
    await new Promise((resolve) => setTimeout(resolve, time - Date.now()));
    const key = { key: 'j', code: 'KeyJ', timestamp: time / 1000 };
    void cdp.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key });
    void cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key });
  }
}

interface Way {
  readonly slowed?: number;
  readonly by?: 'pad' | 'key';
  /** Whether the clock of sound is the device's own. */
  readonly real?: boolean;
}

const heldUp = (page: Page) => page.getByText('The sound was held up');
/** So many times a card is begun anew on the device's own clock. */
const TRIES = 4;

/** A card answered by taps at these ms of the plan; what is then said. */
async function said(page: Page, baseURL: string, taps: readonly number[], way: Way = {}) {
  const cdp = await page.context().newCDPSession(page);
  await watchClicks(page);
  if (!way.real) await steadyClock(page);
  await startLesson(page, await lesson(baseURL));
  await question(page);
  if (way.slowed) await cdp.send('Emulation.setCPUThrottlingRate', { rate: way.slowed });
  const begin = page.getByRole('button', { name: 'Count me in' });
  for (let tries = way.real ? TRIES : 1; tries > 0; tries--) {
    await page.evaluate(() => ((globalThis as unknown as { clicks: unknown[] }).clicks.length = 0));
    if (way.by === 'key') await begin.press('Enter');
    else await begin.click();
    const from = (await zero(page)) + LATE_OF_ALL;
    const times = taps.map((tap) => from + tap);
    await (way.by === 'key' ? keyAt(cdp, times) : tapAt(cdp, page, times));
    await verdict(page).or(heldUp(page)).waitFor();
    if (await verdict(page).isVisible()) break;
  }
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  const cells = await page
    .locator('.as-table tbody tr')
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent!)));
  return {
    verdict: await verdict(page).getAttribute('data-verdict'),
    text: await verdict(page).innerText(),
    steps: cells.slice(0, 3).map(([, mean, spread]) => ({ mean: ms(mean!), spread: ms(spread!) })),
  };
}

const ms = (cell: string) => Number(/^(\d+) ms$/.exec(cell)![1]);

function expectWithin2(found: number, wanted: number, why: string) {
  expect(Math.abs(found - wanted), `${found} for ${wanted}: ${why}`).toBeLessThanOrEqual(2);
}

for (const slowed of [1, 6]) {
  test(`even taps are even on the clock of the sound itself, on a page slowed ${slowed} times`, async ({
    page,
    baseURL,
  }) => {
    test.slow();
    const told = await said(page, baseURL!, DUE, { real: true, slowed });
    expect(told.verdict, told.text).toBe('right');
    for (const { mean } of told.steps) expectWithin2(mean, STEP, told.text);
  });
}

test('where the sound stands still for a moment nothing is said of the taps, and it is begun anew', async ({
  page,
  baseURL,
}) => {
  await watchClicks(page);
  await steadyClock(page);
  await startLesson(page, await lesson(baseURL!));
  await question(page);
  const begin = page.getByRole('button', { name: 'Count me in' });
  await begin.click();
  const cdp = await page.context().newCDPSession(page);
  const from = await zero(page);
  const [before, after] = [DUE.slice(0, 24), DUE.slice(24)];
  await tapAt(
    cdp,
    page,
    before.map((time) => from + time),
  );
  await page.evaluate(() => (globalThis as unknown as { slip(by: number): void }).slip(0.12));
  await tapAt(
    cdp,
    page,
    after.map((time) => from + time),
  );
  await expect(heldUp(page)).toBeVisible();
  await expect(verdict(page)).toHaveCount(0);
  await begin.click();
  await page.getByRole('button', { name: /Tap here/ }).waitFor();
  await expect(heldUp(page)).toHaveCount(0);
});

for (const slowed of [1, 6]) {
  test.describe(`on a page slowed ${slowed} times`, () => {
    test('even taps are even, each step within 2 ms', async ({ page, baseURL }) => {
      const told = await said(page, baseURL!, DUE, { slowed });
      expect(told.verdict, told.text).toBe('right');
      expect(told.text).toContain(`Even at ${TEMPO}`);
      for (const { mean, spread } of told.steps) {
        expectWithin2(mean, STEP, told.text);
        expectWithin2(spread, 0, told.text);
      }
    });

    test('a bent triplet is named by its second note', async ({ page, baseURL }) => {
      const bent = DUE.map((time, i) => (i % 3 === 1 ? time - 20 : time));
      const told = await said(page, baseURL!, bent, { slowed });
      const [, early] = /Your second note comes (\d+) ms early\./.exec(told.text) ?? [];
      expectWithin2(Number(early), 20, told.text);
      const steps = [STEP - 20, STEP + 20, STEP];
      told.steps.forEach(({ mean }, i) => expectWithin2(mean, steps[i]!, told.text));
    });

    test('a drift is told, and asked again without being kept', async ({ page, baseURL }) => {
      const told = await said(
        page,
        baseURL!,
        DUE.map((time) => time * 1.02),
        { slowed },
      );
      expect(told.verdict, told.text).toBe('near');
      const [, share] = /fell behind the click by ([\d.]+) %/.exec(told.text) ?? [];
      expect(Math.abs(Number(share) - 2), told.text).toBeLessThan(0.06);
      await page.locator('[data-do="next"]').click();
      await expect(openCard(page).getByRole('button', { name: 'Count me in' })).toBeVisible();
      await page.getByRole('button', { name: 'Leave the round' }).click();
      await expect(askedSoFar(page)).toContainText('0 of 1 asked so far');
    });

    test('one that is late is pointed at', async ({ page, baseURL }) => {
      const one = DUE.map((time, i) => (i === 19 ? time + 60 : time));
      const told = await said(page, baseURL!, one, { slowed });
      const late = /The second note of beat 3 in bar 2 came (\d+) ms late\./.exec(told.text) ?? [];
      expectWithin2(Number(late[1]), 60, told.text);
      expect(told.verdict).toBe('right');
    });
  });
}

test('keys alone keep time, and reduced motion changes nothing', async ({ page, baseURL }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const told = await said(page, baseURL!, DUE, { by: 'key' });
  expect(told.verdict, told.text).toBe('right');
  await expect(page.locator('[data-do="next"]')).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /Done for now|Keep triplets/ })).toBeVisible();
});

test('anywhere in the lower half of the screen is tapped, and nothing there is pressed instead', async ({
  page,
  baseURL,
}) => {
  await startLesson(page, await lesson(baseURL!));
  await question(page);
  await page.getByRole('button', { name: 'Count me in' }).click();
  const pad = page.getByRole('button', { name: /Tap here/ });
  const { width, height } = page.viewportSize()!;
  for (let row = 0; row < 5; row++)
    for (const x of [2, width / 2, width - 2])
      await page.mouse.click(x, height / 2 + 2 + (row * (height / 2 - 4)) / 4);
  await expect(pad).toHaveText('15 of 48');
  await page.mouse.click(width / 2, height / 4);
  await expect(pad).toHaveText('15 of 48');
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('button', { name: 'Count me in' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Show me' })).toBeVisible();
});

test('who stops begins anew, and nothing is said', async ({ page, baseURL }) => {
  await startLesson(page, await lesson(baseURL!));
  await question(page);
  const begin = page.getByRole('button', { name: 'Count me in' });
  await begin.click();
  await page.getByRole('button', { name: /Tap here/ }).waitFor();
  await page.keyboard.press('Escape');
  await expect(begin).toBeVisible();
  await expect(verdict(page)).toHaveCount(0);
  // The space bar sounds a card, and with it this one begins; from then on it is a tap.
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: /Tap here/ }).waitFor();
  await page.keyboard.press('Escape');
  await expect(begin).toBeVisible();
});

test('what was sure of the last card goes into the report, and to the teacher', async ({
  page,
  baseURL,
}) => {
  const bent = DUE.map((time, i) => (i % 3 === 1 ? time - 20 : time));
  await said(page, baseURL!, bent);
  await page.goto('#/send');
  const link = await linkIn(page.getByLabel('The report’s link'));
  expect(link.length).toBeLessThanOrEqual(500);
  await page.goto(link);
  await expect(page.getByRole('heading', { name: 'In time, and playing freely' })).toBeVisible();
  const told = page.getByText(/^Triplets: not yet even at any tempo/);
  await expect(told).toContainText('the second note 20 ms early');
  await page.goto('#/class');
  await expect(page.locator('[data-need="second note of triplets limps"]')).toHaveText(
    '1 student: second note of triplets limps',
  );
});
