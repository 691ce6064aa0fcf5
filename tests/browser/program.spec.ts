import { expect, test, type Page } from '@playwright/test';
import {
  chordOf,
  dice,
  midiOn,
  misnamed,
  pathOf,
  pitchesOf,
  thirdsOf,
  type NamedDot,
  type Place,
  type Question,
} from './musician.ts';
import { answerTo, lessonLink, question, startLesson, type Wishes } from './people.ts';

/** Keys easy and awkward; between them every size of chord, and string sets of two and of four. */
const LESSONS: Readonly<Record<string, Wishes>> = {
  'Bb major': {
    tonic: 'B♭',
    chords: ['triads', 'sevenths', 'ninths'],
    strings: ['5–4', '5–4–3–2'],
    frets: [1, 9],
  },
  'F# major': {
    tonic: 'F♯',
    chords: ['triads', 'sevenths'],
    strings: ['6–5', '3–2'],
    frets: [0, 8],
  },
  'Cb major': {
    tonic: 'C♭',
    chords: ['triads', 'ninths'],
    strings: ['4–3–2–1'],
    frets: [2, 12],
  },
  'G minor': {
    tonic: 'G',
    scale: 'minor',
    chords: ['triads', 'sevenths'],
    strings: ['4–3', '2–1'],
    frets: [5, 17],
  },
  'D# minor': {
    tonic: 'D♯',
    scale: 'minor',
    chords: ['sevenths', 'ninths'],
    strings: ['6–5–4–3'],
    frets: [0, 10],
  },
  'E harmonic minor': {
    tonic: 'E',
    scale: 'harmonic minor',
    chords: ['triads', 'sevenths'],
    strings: ['5–4', '4–3–2–1'],
    frets: [1, 12],
  },
};

/** Cards in each key: more than 250 in all. */
const CARDS = 44;

for (const [seed, [key, wishes]] of Object.entries(LESSONS).entries()) {
  test(`a program with music theory of its own answers ${CARDS} cards in ${key}, and every verdict agrees with it`, async ({
    page,
    baseURL,
  }) => {
    await hurry(page);
    await startLesson(page, await lessonLink(wishes, baseURL!));
    const pick = dice(seed);
    const counts: Record<string, number> = {};
    for (let card = 0; card < CARDS;) {
      const asked = await question(page);
      if (!asked) {
        await page.locator('[data-do="start"]').click();
        continue;
      }
      const verdict = await answerAndCheck(page, asked, pick);
      for (const what of [asked.kind, verdict]) counts[what] = (counts[what] ?? 0) + 1;
      expect(asked.key).toBe(key);
      card++;
      await page.locator('[data-do="next"]').dispatchEvent('click');
    }
    console.log(`${key}: ${JSON.stringify(counts)}`);
    for (const what of ['spot', 'place', 'trace', 'right', 'wrong'])
      expect(counts[what]).toBeGreaterThan(4);
  });
}

/** Lets the page's timers run twenty times as fast: how long a verdict takes is looked at elsewhere. */
async function hurry(page: Page) {
  await page.addInitScript(() => {
    const slow = window.setTimeout.bind(window);
    Object.assign(window, {
      setTimeout: (run: () => void, ms = 0) => slow(run, ms / 20),
    });
  });
}

async function answerAndCheck(page: Page, asked: Question, pick: ReturnType<typeof dice>) {
  const aim = pick([true, false]);
  const answer = answerTo(asked, aim, pick);
  const title = `${asked.item}, seed ${asked.seed}, answered ${JSON.stringify(answer)}`;
  return test.step(title, async () => {
    await tellsNothingYet(page, asked);
    const told = await answerInPage(page, answer);
    if (asked.kind === 'trace') heardRight(told, asked, answer as string);
    else expect(told.verdict).toBe(aim ? 'right' : 'wrong');
    namedRight(told, asked);
    return told.verdict;
  });
}

/** What an answered card says of itself. */
interface Told {
  readonly verdict: string;
  /** `62@0 66@1/3 69@2/3` */
  readonly notes: string | null;
  readonly tuning: readonly string[];
  readonly dots: readonly NamedDot[];
}

/** Presses the controls, each after the one before has taken, and reads the card once the verdict is there. */
function answerInPage(page: Page, answer: string | readonly Place[]): Promise<Told> {
  const controls =
    typeof answer === 'string'
      ? [`[data-answer="${answer}"]`]
      : answer.map(({ string, fret }) => `[data-string="${string}"][data-fret="${fret}"]`);
  return page.evaluate(async (selectors) => {
    const seen = (selector: string) =>
      new Promise<HTMLElement>((resolve) => {
        const look = () => {
          const found = document.querySelector<HTMLElement>(selector);
          if (found) resolve(found);
          return found;
        };
        const observer = new MutationObserver(() => look() && observer.disconnect());
        if (!look())
          observer.observe(document, { subtree: true, childList: true, attributes: true });
      });
    for (const selector of selectors) {
      document.querySelector<HTMLElement>(selector)!.click();
      if (selectors.length > 1) await seen(`${selector}[data-dot]`);
    }
    const status = await seen('[role="status"][data-verdict]');
    const card = document.querySelector<HTMLElement>('[data-kind]')!;
    return {
      verdict: status.dataset.verdict!,
      notes: card.dataset.notes ?? null,
      tuning: card.querySelector<HTMLElement>('[data-tuning]')!.dataset.tuning!.split(' '),
      dots: [...card.querySelectorAll<HTMLElement>('[data-dot][data-note]')].map(({ dataset }) => ({
        string: Number(dataset.string),
        fret: Number(dataset.fret),
        note: dataset.note!,
        degree: dataset.degree === undefined ? null : Number(dataset.degree),
      })),
    };
  }, controls);
}

/** Before the answer a card names no dot and gives no phrase away. */
async function tellsNothingYet(page: Page, asked: Question) {
  expect(await page.locator('[data-note], [data-degree], [data-notes]').count()).toBe(0);
  if (asked.kind === 'spot') expect(asked.answers).toEqual(['1', '2', '3', '4', '5', '6', '7']);
  if (asked.kind === 'place') expect(asked.dots).toEqual([]);
  if (asked.kind === 'trace') {
    expect(asked.tuning).toEqual([]);
    expect(new Set(asked.answers).size).toBe(4);
  }
}

/** After the answer the phrase is there: even triplets, its degrees the path that was right, its notes on the neck. */
function heardRight({ verdict, notes, tuning, dots }: Told, asked: Question, answer: string) {
  const path = pathOf(notes!, asked.key);
  expect(asked.answers).toContain(path);
  expect(verdict).toBe(answer === path ? 'right' : 'wrong');
  const thirds = thirdsOf(notes!);
  expect(thirds.length).toBeGreaterThanOrEqual(3);
  expect(thirds).toEqual(thirds.map((_, index) => index));
  expect(new Set(dots.map((dot) => midiOn(tuning, dot)))).toEqual(pitchesOf(notes!));
}

/** After the answer every named dot sounds what it says, and is the degree that it says. */
function namedRight({ dots, tuning }: Told, asked: Question) {
  const faults = dots.map((dot) => misnamed(dot, { key: asked.key, tuning }));
  expect(faults.filter(Boolean)).toEqual([]);
  if (asked.kind === 'spot') expect(dots).toHaveLength(asked.dots.length);
  if (asked.kind === 'place')
    expect(dots.length).toBeGreaterThanOrEqual(chordOf(asked.chord!).length);
}
