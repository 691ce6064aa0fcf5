/**
 * What a student and a teacher do, in every engine that phones have: Chromium, WebKit (in a window that cannot be narrower
 * than 447 px) and Firefox. `pulse` is answered by being shown, for its taps have to be in time (pulse.spec.ts).
 */
import { expect, test } from '@playwright/test';
import { KIND_NAMES } from '../../src/decks/deck.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { phraseDeck, STAIRS } from '../cards/phrases.ts';
import { chromiumPage, until, type EnginePage } from './engine.ts';
import { hasFirefox, hasWebKit } from './engines.mjs';
import { openFirefox } from './firefox.ts';
import { samplesOf } from './guitar/recordings.ts';
import { openHost } from './host.ts';
import { playSamples, takePlace } from './microphone.ts';
import { openWebKit } from './webkit.ts';

test.use({ serviceWorkers: 'allow' });

/** What is played in answer to the cards that want the guitar (MIDI): Cm. */
const PLAYED: Readonly<Record<string, readonly number[]>> = {
  play: [48, 51, 55],
  echo: [60, 63, 67],
};
const ASKED = KIND_NAMES.filter((kind) => !(kind in PLAYED)).toSorted();

/** From this kind on nobody answers any more. */
const OFFLINE_FROM = 3;

const ENGINES = {
  Chromium: { isThere: () => true, open: null },
  WebKit: { isThere: hasWebKit, open: openWebKit },
  Firefox: { isThere: hasFirefox, open: openFirefox },
} as const;

const TABLATURE = [
  'e|-------3-6-3-|',
  'B|-----4-------|',
  'G|---5---------|',
  'D|-------------|',
  'A|-------------|',
  'E|-------------|',
].join('\n');

for (const [name, { isThere, open }] of Object.entries(ENGINES)) {
  test(`in ${name} a lesson of every kind is answered, offline too, and the report read; a lesson is made with a phrase`, async ({
    page: chromium,
  }) => {
    test.setTimeout(300_000);
    test.skip(!isThere(), `There is no ${name} to be driven here.`);
    const host = await openHost();
    const page = open ? await open() : chromiumPage(chromium);
    try {
      await page.resize(447, 760);
      const links = await Promise.all(ASKED.map((kind) => lessonOf(kind, host.url)));
      for (const [k, kind] of ASKED.entries()) {
        if (k === OFFLINE_FROM) {
          await expect.poll(() => page.evaluate(isKept, null)).toBe(true);
          await host.fallSilent();
          // A round is open: it goes on where it was.
          await page.goto('about:blank');
          await page.goto(`${host.url}#/round`);
          await page.waitFor('[data-kind], .round-end');
        }
        await page.goto(links[k]!);
        await page.tap('[data-do="start"]');
        await answerOne(page, kind);
        await page.tap('[data-do="next"]');
      }

      for (const [k, kind] of Object.keys(PLAYED).entries()) {
        await page.goto(await lessonOf(kind, host.url));
        await page.evaluate(takePlace, null);
        if (k === 0) await takeInHand(page);
        await page.tap('[data-do="start"]');
        if (k === 0) await page.tap('[data-do="listen"]');
        await page.tap('[data-do="skip"]');
        await hasText(page, 'Five clicks');
        await page.tap('[data-do="skip"]');
        await playOne(page, kind);
        await page.tap('[data-do="next"]');
      }

      await page.goto(`${host.url}#/send`);
      await page.waitFor('#made-link');
      const report = await page.evaluate(linkMade, null);
      await page.goto(report);
      await hasText(page, 'Kept on this device.');

      await page.goto(`${host.url}#/teach`);
      await press(page, 'Add a phrase');
      await press(page, 'Text');
      await page.waitFor('textarea.tablature');
      await page.evaluate(write, TABLATURE);
      await press(page, 'Put it in');
      await press(page, 'Share the link');
      await expect.poll(() => page.evaluate(linkMade, null)).toContain('#/lesson/');
      await page.goto(await page.evaluate(linkMade, null));
      await hasText(page, 'to see, hear and play');
    } catch (error) {
      // What the page says tells more than what was waited for.
      console.log(`${name} stood at`, await page.evaluate(whereItStands, null).catch(String));
      throw error;
    } finally {
      await page.close();
      await host.close();
    }
  });
}

const NECK = { degrees: [1], sizes: ['triad'], strings: ['5-4'], frets: [1, 8] };

/** What a drill of a kind says beside it; nothing of those that are drilled from the phrase. */
const DRILLS: Readonly<Record<string, object>> = {
  ...Object.fromEntries(kindsOf('neck').map((kind) => [kind, NECK])),
  trace: { degrees: [1], sizes: ['triad'], contours: ['up'], tempo: 200 },
  pulse: { figures: ['eighths'], tempos: [120], clicks: ['beat'] },
  play: { degrees: [2], sizes: ['triad'], strings: ['5-4'], frets: [1, 7], ways: ['up'] },
};

/** Three notes of a phrase to be played back. */
const SHORT = {
  tempo: 120,
  notes: ['C4 for 1/3 on 3/5', 'Eb4 on 2/4', 'G4 on 1/3'],
  outline: ['1-3 ii'],
};

/** A lesson with a few items of one kind. */
function lessonOf(kind: string, base: string): Promise<string> {
  const drills = [{ kind, ...DRILLS[kind] }];
  const phrase = kind === 'echo' ? SHORT : { ...STAIRS, tempo: 200 };
  const phrases = DRILLS[kind] ? [] : [phrase];
  return deckLink(phraseDeck({ title: `Tuesday: ${kind}`, drills, phrases }), base);
}

/** Goes past the cards that only show what is new to the first that is asked, and answers it. */
async function answerOne(page: EnginePage, kind: string): Promise<void> {
  await page.waitFor(`[data-kind="${kind}"]`);
  for (let shown = await page.evaluate(cardShown, null); shown.isNew;) {
    const { card } = shown;
    await page.tap('[data-do="next"]');
    await until(async () => {
      shown = await page.evaluate(cardShown, null);
      return shown.card !== null && shown.card !== card;
    });
  }
  await answer(page, kind);
  await page.waitFor('[data-verdict]');
}

async function answer(page: EnginePage, kind: string): Promise<void> {
  if (kind === 'pulse') return page.tap('[data-do="show"]');
  if (!['place', 'follow'].includes(kind)) return page.tap('[data-answer]');
  // Any places will do, as many as the chord has notes: a verdict comes to wrong ones too.
  for (let taps = 1; taps < 12; taps++) {
    await page.tap('.cell.takes:not([data-dot])');
    if (taps >= 3 && (await page.evaluate(judgedSoon, null))) return;
  }
}

/** Keeps the lesson that is offered, and takes the guitar in hand: it stays there. */
async function takeInHand(page: EnginePage): Promise<void> {
  await press(page, 'Keep for later');
  await page.tap('[data-do="guitar"]');
}

/** Plays what the card asks for as soon as it listens, and sees it told right. */
async function playOne(page: EnginePage, kind: string): Promise<void> {
  await page.waitFor(`[data-kind="${kind}"]`);
  // The key and a line are heard first.
  await hasText(page, 'Listening. Play when you like.', 30_000);
  await playSamples(page, samplesOf(PLAYED[kind]!));
  await page.waitFor('[data-verdict="right"]');
}

/** Presses a button by its words. */
async function press(page: EnginePage, words: string): Promise<void> {
  await until(() => page.evaluate(mark, words));
  await page.tap('[data-found]');
}

async function hasText(page: EnginePage, text: string, timeout = 10_000): Promise<void> {
  await expect
    .poll(() => page.evaluate(() => document.querySelector('main')?.textContent ?? '', null), {
      timeout,
    })
    .toContain(text);
}

// What follows runs in the page.

function cardShown() {
  const root = document.querySelector<HTMLElement>('[data-kind]');
  const isNew = root?.dataset.new !== undefined;
  return { isNew, card: root && `${root.dataset.item} ${root.dataset.seed} ${isNew}` };
}

/** Whether the card is judged: that is half a second after enough notes stand, and the verdict half a one later. */
async function judgedSoon(): Promise<boolean> {
  const isJudged = () => document.querySelector('[data-verdict]') !== null;
  for (let times = 0; times < 100 && !isJudged(); times++) {
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return isJudged();
}

async function isKept(): Promise<boolean> {
  const { active } = await navigator.serviceWorker.ready;
  return active !== null && navigator.serviceWorker.controller !== null;
}

function whereItStands(): string {
  return `${location.href}, ${document.readyState}: ${document.body.innerText}`;
}

function linkMade(): string {
  return document.querySelector<HTMLTextAreaElement>('#made-link')?.value ?? '';
}

function write(text: string): void {
  const field = document.querySelector<HTMLTextAreaElement>('textarea.tablature')!;
  field.value = text;
  field.dispatchEvent(new InputEvent('input', { bubbles: true }));
}

/** Marks the button with these words; whether there is one that can be pressed. */
function mark(words: string): boolean {
  for (const old of document.querySelectorAll('[data-found]'))
    delete (old as HTMLElement).dataset.found;
  const button = [...document.querySelectorAll('button')].find(
    ({ textContent, disabled }) => textContent.trim() === words && !disabled,
  );
  if (button) button.dataset.found = '';
  return button !== undefined;
}
