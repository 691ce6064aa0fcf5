/** What a next lesson takes from reports: which degrees are drilled again, and how hard items are marked. */
import { describe, expect, it } from 'vitest';
import type { Deck } from '../../src/decks/deck.ts';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import type { Item } from '../../src/practice/item.ts';
import { marksOf, weakDrills } from '../../src/practice/lesson.ts';

const items = [1, 2, 3, 4, 5, 6, 7].map((degree): Item => ({
  id: `spot:Bb major:${degree}:triad:guitar:5-4:1-5`,
  kind: 'spot',
  key: { tonic: 'Bb', scale: 'major' },
  size: 'triad',
  degree,
  strings: '5-4',
}));

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
