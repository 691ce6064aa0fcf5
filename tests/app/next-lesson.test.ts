/** The next lesson that is made from reports: what it says it took, and what it is. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { NO_TIME, type MinuteFacts } from '../../src/decks/reportTime.ts';
import { deckOf, PLAIN_DRAFT } from '../../src/making/draft.ts';

const deck = {
  ...deckOf({ ...PLAIN_DRAFT, drills: ['spot'], note: 'Slowly.' }),
  lessonDay: '2026-11-24',
};
const items = itemsOf(deck);
const NOW = new Date(2026, 10, 28, 15).getTime();

/** Strings 4–3 are known; on 5–4 the second, the fifth and the seventh degree are known least, in this order. */
const WEAK: Readonly<Record<number, number>> = { 2: 0.3, 5: 0.5, 7: 0.8 };
const facts = (change: (i: number) => Partial<ItemFacts> = () => ({})): ItemFacts[] =>
  items.map(({ degree, strings }, i) => ({
    recall: strings === '4-3' ? 0.95 : (WEAK[degree] ?? 0.9),
    ease: null,
    answers: 4,
    slow: false,
    misses: 0,
    takenFor: null,
    ...change(i),
  }));
const onDegree = (degree: number) => items.findIndex((item) => item.degree === degree);

const reportWith = (change: Partial<Report>): Report => ({
  deck: 1,
  sender: 2,
  day: 20_784,
  minute: 600,
  practised: Array.from({ length: 28 }, () => false),
  asked: 100,
  firstAsked: 50,
  firstRight: 40,
  seconds: {},
  time: NO_TIME,
  items: facts(),
  askedAbout: [],
  question: '',
  name: '',
  ...change,
});

async function made(changes: readonly Partial<Report>[], now = NOW, of = deck) {
  const { makeNext } = await import('../../src/app/report/next.ts');
  const { draft } = await import('../../src/app/teach/kept/openDraft.ts');
  const lesson = { id: 'd1', deck: of, away: false };
  await makeNext(
    changes.map((change) => ({ report: reportWith(change), items, lesson, link: '', ahead: 7 })),
    now,
  );
  return draft.value;
}
const says = (draft: Awaited<ReturnType<typeof made>>) =>
  draft.taken?.findings.map((one) => one.says) ?? null;

beforeEach(() => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
  vi.stubGlobal('location', { hash: '' });
  vi.stubGlobal('addEventListener', () => {});
});

describe('the next lesson', () => {
  const taken = (degree: number, takenFor: number, misses: number) => ({
    items: facts((i) => (i === onDegree(degree) ? { misses, takenFor } : {})),
  });

  it('drills what is known least, and says so', async () => {
    const next = await made([{}]);
    expect(says(next)).toEqual(['ii, V and vii° least known', 'Least known on strings 5–4']);
    expect(next).toMatchObject({
      title: 'Arpeggios of B♭ major: once more',
      note: '',
      degrees: [2, 5, 7],
      strings: [[5, 4]],
      drills: ['spot'],
    });
  });

  it('does not count up the degrees where all are weak', async () => {
    const next = await made([{ items: facts(() => ({ recall: 0.1 })) }]);
    expect(says(next)).toEqual(['Every degree once more']);
    expect(next.degrees).toHaveLength(7);
  });

  it('drills both of what was taken for one another twice and more, not what once was', async () => {
    const next = await made([taken(2, 4, 2)]);
    expect(says(next)).toEqual([
      'ii seen as IV, twice',
      'V and vii° least known',
      'Least known on strings 5–4',
    ]);
    expect(next.degrees).toEqual([2, 4, 5, 7]);
    expect(says(await made([taken(2, 4, 1)]))![0]).toBe('ii, V and vii° least known');
    expect(says(await made([taken(2, 4, 1), taken(2, 4, 1)]))![0]).toBe('ii seen as IV, twice');
  });

  it('names the three that were taken most often, the most often first', async () => {
    const next = await made([
      taken(6, 2, 2),
      taken(1, 3, 3),
      taken(3, 1, 2),
      taken(4, 6, 2),
      taken(1, 3, 2),
    ]);
    expect(says(next)!.slice(0, 4)).toEqual([
      'I seen as iii, 5 times',
      'vi seen as ii, twice',
      'iii seen as I, twice',
      'V and vii° least known',
    ]);
  });

  it('has time to keep and arpeggios to play where free minutes were uneven and ran', async () => {
    const minutes: MinuteFacts = {
      count: 3,
      leaping: 0.2,
      run: 8,
      outlined: 2,
      reach: 100,
      spread: 0.05,
    };
    const next = await made([{ time: { figures: [], minutes } }]);
    expect(says(next)!.slice(-2)).toEqual([
      'Free minutes uneven: triplets to be kept even',
      'Free minutes run up and down the scale: arpeggios to play',
    ]);
    const kinds = deckOf(next).drills.map(({ kind }) => kind);
    expect(kinds).toEqual(['spot', 'pulse', 'play']);
  });

  it('marks how hard items came', async () => {
    const easy = facts((i) => (i === 0 ? { ease: 0.9, answers: 20 } : {}));
    const next = await made([{ items: easy }]);
    expect(says(next)!.at(-1)).toBe('1 item marked easy or hard');
    expect(next.marks).toEqual({ [items[0]!.id]: 1 });
  });

  it.each([
    ['2026-11-24', 28, '2026-12-01'],
    ['2026-11-21', 28, '2026-11-28'],
    ['2026-11-03', 28, '2026-12-01'],
    ['2026-11-30', 28, '2026-12-07'],
    [null, 28, null],
  ])('after that of %s, seen on the %ith, is on %s', async (lessonDay, day, on) => {
    const now = new Date(2026, 10, day, 15).getTime();
    expect((await made([{}], now, { ...deck, lessonDay: lessonDay! })).lessonDay).toBe(on);
  });

  it('is called once more once only, and is never too long', async () => {
    const title = async (of: string) => (await made([{}], NOW, { ...deck, title: of })).title;
    expect(await title('Quay: once more')).toBe('Quay: once more');
    expect(await title('x'.repeat(80))).toBe(`${'x'.repeat(69)}: once more`);
  });

  it('is made of no report where there is none', async () => {
    expect(await made([])).toBe((await import('../../src/making/draft.ts')).PLAIN_DRAFT);
  });
});
