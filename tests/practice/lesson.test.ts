/** What a next lesson takes from reports: which degrees are drilled again, and how hard items are marked. */
import { describe, expect, it } from 'vitest';
import type { Deck, Drill } from '../../src/decks/deck.ts';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { marksOf, weakDrills } from '../../src/practice/lesson.ts';
import { itemsUpTo } from './items.ts';

const items = itemsUpTo(7);

/** A report on the seven items with these chances. */
function reportWith(chances: readonly number[], part: Partial<Report> = {}, answers = 4): Report {
  const facts = (recalled: number): ItemFacts => ({
    recall: recalled,
    ease: 0,
    answers,
    slow: false,
    misses: 0,
    takenFor: null,
  });
  return {
    deck: 7,
    sender: 9,
    day: 20_000,
    minute: 0,
    practised: Array.from({ length: 28 }, () => false),
    asked: 40,
    firstAsked: 20,
    firstRight: 10,
    seconds: {},
    time: { figures: [], minutes: null },
    items: chances.map(facts),
    askedAbout: [],
    question: '',
    name: '',
    ...part,
  };
}

describe('the next lesson for a class', () => {
  const deck = deckWith([1, 2, 3, 4, 5, 6, 7]);
  function deckWith(degrees: readonly number[]): Deck {
    return {
      title: '',
      note: '',
      lessonDay: null,
      instrument: GUITAR,
      key: { tonic: 'Bb', scale: 'major' },
      drills: [{ kind: 'spot', degrees, sizes: ['triad'], strings: [[5, 4]], frets: [1, 5] }],
      phrases: [],
    };
  }

  // Known is .85 and more on the mean of the reports; three degrees are drilled at least.
  it.each([
    [
      [0.1, 0.2, 0.3, 0.84, 0.85, 0.86, 0.99],
      [1, 2, 3, 4],
    ],
    [
      [0.9, 0.95, 0.91, 0.99, 0.92, 1, 1],
      [1, 3, 5],
    ],
    [
      [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1],
      [1, 2, 3, 4, 5, 6, 7],
    ],
  ])('of %o drills degrees %o', (chances, degrees) => {
    expect(weakDrills(deck, items, [reportWith(chances)])).toEqual(deckWith(degrees).drills);
    const other = chances.map((chance) => Math.min(1, chance + 0.001));
    expect(weakDrills(deck, items, [reportWith(chances), reportWith(other)])[0]).toMatchObject({
      kind: 'spot',
    });
  });

  it('drills string sets that are weak, and what lies on none, is of phrases or in time as it was', () => {
    const sets = [
      [5, 4],
      [4, 3],
    ];
    const neck = { degrees: [1, 2, 3, 4, 5, 6, 7], sizes: ['triad'], frets: [1, 5] } as const;
    const heard = {
      kind: 'trace',
      degrees: neck.degrees,
      sizes: ['triad'],
      contours: ['up'],
      tempo: 72,
    } as const;
    const asItWas: Drill[] = [
      { kind: 'fill' },
      { kind: 'pulse', figures: ['triplets'], tempos: [60], clicks: ['beat'] },
    ];
    const lesson: Deck = {
      ...deckWith([]),
      drills: [
        { kind: 'spot', ...neck, strings: sets },
        { kind: 'place', ...neck, strings: sets.slice(1) },
        { kind: 'place', ...neck, degrees: [6, 7], strings: sets },
        heard,
        ...asItWas,
      ],
    };
    // The first three degrees are weak, on strings 5 and 4 alone.
    const all = [...items, ...items.map((item) => ({ ...item, strings: '4-3' }))];
    const chances = [0.1, 0.1, 0.1, 0.9, 0.9, 0.9, 0.9];
    const report = reportWith([...chances, ...chances.map((chance) => Math.max(chance, 0.9))]);
    const drilled = weakDrills(lesson, all, [report]);
    expect(drilled).toEqual([
      { kind: 'spot', ...neck, degrees: [1, 2, 3], strings: [[5, 4]] },
      { ...heard, degrees: [1, 2, 3] },
      ...asItWas,
    ]);
    // What more than these items a report tells of is not looked at.
    const longer = { ...report, items: [...report.items, ...report.items] };
    expect(weakDrills(lesson, all, [longer, longer])).toEqual(drilled);
  });

  it('marks nothing by reports that do not tell of ease, or of the item', () => {
    const [untold] = reportWith([1]).items;
    const reports = [
      reportWith([1], { items: [{ ...untold!, ease: null, answers: 50 }] }),
      reportWith([1], { items: [null] }),
    ];
    const { marks, answers, answersTo } = marksOf(reports, items.slice(0, 1));
    expect([marks, answers, answersTo.size]).toEqual([{}, 0, 0]);
    const sure = reportWith([1], { items: [{ ...untold!, ease: 0.6, answers: 6 }] });
    expect(marksOf([...reports, sure], items.slice(0, 1))).toEqual(
      marksOf([sure], items.slice(0, 1)),
    );
  });

  // Ease is drawn to the middle by six answers more, and marked in steps of .15, two either way.
  it.each([
    [[[0.2, 6]], 2],
    [[[0.2, 2]], 3],
    [[[0.6, 6]], 1],
    [[[1, 60]], 1],
    [[[-0.2, 6]], 4],
    [[[-0.6, 6]], 5],
    [
      [
        [0.4, 4],
        [-0.4, 2],
      ],
      3,
    ],
    [
      [
        [0.3, 3],
        [0.3, 3],
      ],
      2,
    ],
    [[[0.9, 0]], 2],
  ])('eases and answers %o are marked %i', (told, mark) => {
    const reports = told.map(([ease, answers]) =>
      reportWith([1], {
        items: [{ ...reportWith([1]).items[0]!, ease: ease!, answers: answers! }],
      }),
    );
    const one = items.slice(0, 1);
    const { marks, answers, answersTo } = marksOf(reports, one);
    expect(marks).toEqual(mark === 3 ? {} : { [one[0]!.id]: mark });
    const all = told.reduce((sum, [, count]) => sum + Math.max(1, count!), 0);
    expect([answers, answersTo.get(one[0]!.id)]).toEqual([all, all]);
  });
});
