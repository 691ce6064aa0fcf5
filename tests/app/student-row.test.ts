/** What a teacher reads of each student of a class, drawn without a browser. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { beforeEach, expect, it, vi } from 'vitest';
import { itemOf } from '../../src/cards/index.ts';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { NO_TIME } from '../../src/decks/reportTime.ts';
import { classOf } from '../../src/practice/class.ts';

beforeEach(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  return () => vi.unstubAllGlobals();
});

const KEY = { tonic: 'Bb', scale: 'major' } as const;
const items = [1, 2, 3, 4, 5, 6, 7].map((degree) =>
  itemOf(`spot:Bb major:${degree}:triad:guitar:5-4:1-7`)!,
);

const facts = (recall: number, some: Partial<ItemFacts> = {}): ItemFacts => ({
  recall,
  ease: 0,
  answers: 4,
  slow: false,
  misses: 0,
  takenFor: null,
  ...some,
});

/** The second and the fifth degree are weak, of the seventh nothing was asked: 4.4 of 7 are known. */
const WEAK = [
  facts(0.9),
  facts(0.3, { misses: 2, takenFor: 4 }),
  facts(0.9),
  facts(0.9),
  facts(0.5),
  facts(0.9),
  null,
];

const report = (some: Partial<Report> = {}): Report => ({
  deck: 7,
  sender: 0xabcd1234,
  // 27 November 2026, from four in the morning on.
  day: 20_784,
  minute: 600,
  practised: [],
  asked: 60,
  firstAsked: 40,
  firstRight: 30,
  seconds: {},
  items: WEAK,
  time: NO_TIME,
  askedAbout: [],
  question: '',
  name: 'Mareike',
  ...some,
});

/** The row of the first student of these reports, as words. */
async function rowOf(
  reports: readonly Report[],
  { degree = null, late = true }: { degree?: number | null; late?: boolean } = {},
) {
  const { StudentRow } = await import('../../src/app/report/StudentRow.tsx');
  const filed = reports.map((one) => {
    const lesson = { id: 'd', deck: {} as never, away: false };
    const opened = { report: one, items, ahead: 7, link: `#/report/${one.day}`, lesson };
    const { sender, deck, day, minute } = one;
    return { sender, deck, day, minute, open: () => opened };
  });
  const [student] = classOf(filed, 7, degree);
  const row = { student: student!, musicKey: KEY, late, degree, taken: true, take() {} };
  const html = renderToString(h(StudentRow, row));
  const words = html.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');
  return { html, words: words.trim() };
}

it('names what is weak, what was never asked, and what is taken for what', async () => {
  expect((await rowOf([report()])).words).toBe(
    'Mareike 63 % Needs ii, V and vii° · ii seen as IV, twice · 75 % right at first · 27 November',
  );
});

it('is ready where nothing is weak', async () => {
  const ready = report({ items: items.map(() => facts(0.8)), firstAsked: 0, firstRight: 0 });
  expect((await rowOf([ready])).words).toBe('Mareike 80 % Ready · 27 November');
});

it('tells one degree where that is looked at', async () => {
  expect((await rowOf([report()], { degree: 2 })).words).toMatch(/^Mareike 30 % /);
  expect((await rowOf([report()], { degree: 7 })).words).toMatch(/^Mareike 0 % /);
});

it('says what is asked, and how it went over the weeks once there is time for that', async () => {
  const question = 'Why is vii so weak?';
  const before = report({ day: 20_777, items: items.map(() => facts(0.5)), deck: 6 });
  const both = [before, report({ question })];
  expect((await rowOf(both)).words).toMatch(/Over the weeks: 50 % → 63 % Why is vii so weak\?$/);
  expect((await rowOf(both, { late: false })).words).toContain('Over the weeks: … Why');
});

it('says where two reports of one phone do not agree, and where two phones bear one name', async () => {
  const [one, other] = [report(), report({ day: 20_785, asked: 10 })];
  expect((await rowOf([one, other])).words).toContain('Two reports of this phone do not agree');
  const namesake = report({ sender: 5, items: items.map(() => facts(0.8)) });
  expect((await rowOf([one, namesake])).words).toContain('Another phone’s report bears the same');
});

it('calls who gave no name by the phone, and leads to the report', async () => {
  const { words, html } = await rowOf([report({ name: '' })]);
  expect(words).toMatch(/^Student abcd 63 %/);
  expect(html).toContain('href="#/report/20784"');
  expect(html).toContain('aria-label="Use ');
});

it('says what limps and rushes, and who runs up and down scales', async () => {
  const figure = { figure: 'triplets', tempo: 84, spread: 0.12 } as const;
  const time = {
    figures: [{ ...figure, drift: -0.02, limps: { place: 2, late: 0.02 } }],
    minutes: null,
  };
  const { words } = await rowOf([report({ items: items.map(() => facts(0.9)), time })]);
  expect(words).toContain('Needs rushes triplets · second note of triplets limps');
});
