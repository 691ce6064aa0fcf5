import { expect, test } from '@playwright/test';
import { deckLink } from '../../src/decks/deckLink.ts';
import { phraseDeck, STAIRS } from '../cards/phrases.ts';
import { hasWebKit } from './engines.mjs';
import type { EnginePage } from './engine.ts';
import { openWebKit } from './webkit.ts';

/** The app in WebKit, the engine of iPhones: what Chromium forgives is seen here. */

test.skip(!hasWebKit(), 'There is no WebKit to be driven here.');

let page: EnginePage;
test.beforeEach(async () => {
  page = await openWebKit();
});
test.afterEach(() => page.close());

/** Drills whose cards draw a neck: five of the eight kinds. */
const DRILLS = [
  { kind: 'spot', sizes: ['seventh'], strings: ['5-4-3-2'], frets: [2, 10] },
  { kind: 'place', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] },
  { kind: 'trace', sizes: ['triad'], contours: ['up'], tempo: 132 },
  { kind: 'outline' },
  { kind: 'vary' },
];

/** Held upright with the bars of the browser there, without them, and lying down. */
const WINDOWS = [
  [447, 540],
  [447, 760],
  [740, 400],
] as const;

for (const drill of DRILLS) {
  test(`${drill.kind}: the neck is drawn where its places are, and nothing lies over anything else`, async ({
    baseURL,
  }) => {
    const deck = phraseDeck({ drills: [drill], phrases: [{ ...STAIRS, tempo: 132 }] });
    const link = await deckLink(deck, baseURL!);
    for (const [width, height] of WINDOWS) {
      await page.goto('about:blank');
      await page.resize(width, height);
      await page.goto(link);
      await page.tap('[data-do="start"]');
      await pastNew();
      expect(await page.evaluate(faultsOf, null)).toEqual([]);
      await answer(drill.kind);
      await page.waitFor('[data-verdict]');
      await page.waitFor('[data-tuning]');
      expect(await page.evaluate(faultsOf, null)).toEqual([]);
    }
  });
}

/** Goes past the cards that only show what is new, to the first that is asked. */
async function pastNew() {
  const newItem = () =>
    page.evaluate(() => document.querySelector<HTMLElement>('[data-new]')?.dataset.item, null);
  await page.waitFor('[data-kind]');
  for (let item = await newItem(); item; item = await newItem()) {
    const shown = item;
    await page.tap('[data-do="next"]');
    await expect.poll(newItem).not.toBe(shown);
    await page.waitFor('[data-kind]');
  }
}

async function answer(kind: string) {
  if (kind !== 'place') return page.tap('[data-answer]');
  for (const fret of [3, 5, 7]) await page.tap(`.cell.takes[data-string="5"][data-fret="${fret}"]`);
}

/** What of the open card lies where it should not. Runs in the page. */
function faultsOf(): string[] {
  const faults: string[] = [];
  const boxOf = (element: Element) => element.getBoundingClientRect();
  const near = (a: number, b: number) => Math.abs(a - b) < 1.5;
  const card = document.querySelector('[data-kind]')!;
  for (const neck of card.querySelectorAll<HTMLElement>('[data-tuning]')) {
    const cells = [...neck.querySelectorAll('[data-fret]')].map(boxOf);
    const [left, right] = [
      Math.min(...cells.map((cell) => cell.left)),
      Math.max(...cells.map((cell) => cell.right)),
    ];
    const [top, bottom] = [
      Math.min(...cells.map((cell) => cell.top)),
      Math.max(...cells.map((cell) => cell.bottom)),
    ];
    const lines = boxOf(neck.querySelector('svg')!);
    const strings = neck.dataset.tuning!.split(' ').length;
    const isLying = neck.matches('.lying');
    // From the middle of the first string's places to the middle of the last one's.
    const across = (isLying ? bottom - top : right - left) / strings / 2;
    const wanted = isLying
      ? [left, right, top + across, bottom - across]
      : [left + across, right - across, top, bottom];
    const drawn = [lines.left, lines.right, lines.top, lines.bottom];
    if (!wanted.every((side, k) => near(side, drawn[k]!))) {
      faults.push(`lines at ${drawn.map(Math.round)}, places at ${wanted.map(Math.round)}`);
    }
    // Of a neck in a frame only what the frame shows.
    const frame = boxOf(neck.closest('.heard-neck, .middle')!);
    const [end, side] = [Math.min(bottom, frame.bottom), Math.min(right, frame.right)];
    for (const other of card.querySelectorAll(':scope > .answers, :scope > .foot')) {
      const box = boxOf(other);
      const isBeside = box.left >= side || box.right <= left || box.height === 0;
      if (!isBeside && end > box.top + 1.5) {
        faults.push(`the neck ends at ${end}, ${other.className} begins at ${box.top}`);
      }
    }
  }
  const { scrollWidth } = document.documentElement;
  if (scrollWidth > innerWidth) faults.push(`the page is ${scrollWidth} wide`);
  return faults;
}
