/** Each bound that decides what is said of a student or asked next, just below and just above it. */
import { describe, expect, it } from 'vitest';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, learn, recall } from '../../src/memory/memory.ts';
import { timingOf, type Pace } from '../../src/memory/pace.ts';
import { choose } from '../../src/practice/choose.ts';
import { isEnough } from '../../src/practice/enough.ts';
import { expectedGains } from '../../src/practice/expectedGain.ts';
import { gradeOf } from '../../src/practice/grade.ts';
import type { Item } from '../../src/practice/item.ts';
import { shareOf } from '../../src/practice/known.ts';
import { usualSeconds } from '../../src/practice/shares.ts';
import { answerCard, nextCard } from '../../src/practice/next.ts';
import { owedAfterAnswer } from '../../src/practice/owed.ts';
import { pictureOf } from '../../src/practice/picture.ts';
import { reportOf } from '../../src/practice/report.ts';
import { startRound, type Round } from '../../src/practice/round.ts';
import { minutesADay } from '../../src/practice/untilReady.ts';
import { daysUntilKnown } from '../../src/practice/daysUntilKnown.ts';
import { summarise } from '../../src/practice/summary.ts';
import { timeTold } from '../../src/practice/timeTold.ts';
import { reviewOf } from '../memory/reviews.ts';
import { itemOn, itemsUpTo } from './items.ts';

const items = itemsUpTo(7);

const paceOf = (seconds: readonly number[]): Pace => ({
  right: seconds.map((one) => ({ seconds: one, taps: 1 })),
  seconds: { right: 3, wrong: 5 },
});
const gradeAt = (seconds: number, pace: Pace) =>
  gradeOf({ right: true, ms: 1000 * seconds, sounded: 0, taps: 1, hidden: false }, pace);

describe('a slow answer', () => {
  // Eight of 3 s exactly: no spread, so that e^.15 times the median counts as one deviation: 3.4855 s.
  it('is one deviation above the median, which is never below .15 of a logarithm', () => {
    const even = paceOf(Array.from({ length: 8 }, () => 3));
    expect(gradeAt(3.48, even)).toBe(3);
    expect(gradeAt(3.49, even)).toBe(2);
  });

  // Medians of logarithms 1 and 1 ± .2: one deviation is 1.48 · .2, e^1.296 = 3.6546 s.
  it('is told by the robust spread of the student’s own', () => {
    const spread = paceOf([1.2, 1.2, 0.8, 0.8, 1.2, 0.8, 1, 1, 1].map(Math.exp));
    expect(gradeAt(3.65, spread)).toBe(3);
    expect(gradeAt(3.66, spread)).toBe(2);
  });

  it('is not told before eight right answers', () => {
    expect(gradeAt(20, paceOf(Array.from({ length: 7 }, () => 3)))).toBe(3);
    expect(gradeAt(20, paceOf(Array.from({ length: 8 }, () => 3)))).toBe(2);
  });

  it('means nothing after more than half a minute', () => {
    const timed = (ms: number) => timingOf({ ms, sounded: 0, taps: 1, hidden: false });
    expect(timed(30_000)).not.toBeNull();
    expect(timed(30_001)).toBeNull();
  });
});

it('a pace is told from five right answers on', () => {
  expect(usualSeconds(paceOf([1, 2, 3, 4]))).toBeNull();
  expect(usualSeconds(paceOf([1, 2, 3, 4, 9]))).toBe(3);
});

describe('near wrong answers', () => {
  it('are asked for by an odd seed from a recall of .7 on, far ones below', () => {
    const memory = emptyMemory();
    for (const [k, { id }] of items.entries())
      for (let n = 0; n < 4; n++)
        learn(memory, reviewOf({ item: id, at: n * DAY + k, right: n > 0 || k < 4 }));
    const seen = new Set<number>();
    for (let hours = 0; hours < 24 * 60; hours += 12) {
      const now = 3 * DAY + hours * 3_600_000;
      const round = startRound({
        deck: 'lesson',
        goal: { cards: 1 },
        seed: hours,
        now,
        meets: false,
      });
      const next = nextCard(round, items, memory, now)!;
      const chance = recall(memory, next.item.id, now)!;
      expect(next.seed % 2, `${chance}`).toBe(chance >= 0.7 ? 1 : 0);
      seen.add(Math.round(10 * chance));
    }
    // On both sides of it.
    expect(seen.has(6) || seen.has(5)).toBe(true);
    expect([...seen].some((one) => one >= 8)).toBe(true);
  });
});

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

describe('a report’s picture', () => {
  it('names as weak what is below .8, the weakest first, and no more than three', () => {
    expect(pictureOf(reportWith([0.8, 0.79, 1, 0.81, 1, 1, 1]), items).weak).toEqual([2]);
    expect(pictureOf(reportWith([0.5, 0.4, 0.3, 0.2, 0.1, 1, 1]), items).weak).toEqual([5, 4, 3]);
  });

  it('calls no degree weak of which nothing was asked, but not asked yet', () => {
    const report = reportWith([0.8, 0.5, 1, 1, 1, 1, 1]);
    const unseen = { ...report, items: report.items.with(0, null).with(4, null) };
    expect(pictureOf(unseen, items)).toMatchObject({ weak: [2], untried: [1, 5] });
  });

  it('says that little stays where less than a quarter of much that was asked is known', () => {
    const stays = (recalled: number, asked: number) =>
      pictureOf(
        reportWith(
          items.map(() => recalled),
          { asked },
        ),
        items,
      ).littleStays;
    expect(stays(0.24, 140)).toBe(true);
    expect(stays(0.26, 140)).toBe(false);
    expect(stays(0.24, 10)).toBe(false);
  });
});

describe('what a student’s report tells', () => {
  const now = 40 * DAY;
  const told = (answers: readonly (readonly [right: boolean, takenFor: string | null])[]) => {
    const reviews = answers.map(([right, takenFor], n) =>
      reviewOf({ n, item: items[1]!.id, at: now - (answers.length - n) * DAY, right, takenFor }),
    );
    const memory = emptyMemory();
    for (const review of reviews) learn(memory, review);
    const sent = { deck: 7, sender: 9, question: '', name: '' };
    const all = { items, memory, reviews, questions: [], timings: {}, minutes: [], lesson: null };
    return reportOf(all, sent, now, 0).items[1]!;
  };

  it('are the misses of the last three answers', () => {
    const wrong = [false, '4'] as const;
    expect(told([wrong, wrong, wrong, wrong]).misses).toBe(3);
    expect(told([wrong, [true, null], [true, null], [true, null]]).misses).toBe(0);
    expect(told([wrong, wrong, [true, null], [true, null]]).misses).toBe(1);
  });

  it('are slow only where none of the last three was missed', () => {
    const slow = (...rights: boolean[]) => {
      const reviews = rights.map((right, n) =>
        reviewOf({ n, item: items[1]!.id, at: now - (9 - n) * DAY, right, grade: right ? 2 : 1 }),
      );
      const memory = emptyMemory();
      for (const review of reviews) learn(memory, review);
      const all = { items, memory, reviews, questions: [], timings: {}, minutes: [], lesson: null };
      return reportOf(all, { deck: 7, sender: 9, question: '', name: '' }, now, 0).items[1]!.slow;
    };
    expect([slow(true), slow(false, true), slow(false, true, true, true)]).toEqual([
      true,
      false,
      true,
    ]);
  });

  it('is what it was taken for more often than for any other: of two alike, neither', () => {
    expect(
      told([
        [false, '4'],
        [false, '4'],
        [false, '6'],
      ]).takenFor,
    ).toBe(4);
    expect(
      told([
        [false, '4'],
        [false, '6'],
        [true, null],
      ]).takenFor,
    ).toBeNull();
    expect(
      told([
        [false, '6'],
        [true, null],
        [true, null],
      ]).takenFor,
    ).toBe(6);
  });

  it('has the mean of the last five free minutes, and counts those of four weeks', () => {
    const minute = (daysAgo: number, reach: number) => ({
      at: now - daysAgo * DAY,
      leaping: 0.5,
      run: 4,
      outlined: 3,
      reach,
      spread: 0.02,
    });
    const minutes = [
      minute(28, 9000),
      minute(27, 9000),
      ...[6, 5, 4, 3, 2].map((ago) => minute(ago, 100 * ago)),
    ];
    const facts = timeTold(items, [], { timings: {}, minutes }, now).minutes!;
    expect([facts.count, facts.reach]).toEqual([6, 400]);
  });
});

describe('a round', () => {
  const asked = (item: Item, right: boolean, isNew: boolean) => ({
    item: item.id,
    seed: 2,
    isNew,
    recall: null,
    proven: false,
    meet: false,
    right,
    shown: false,
    takenFor: null,
    given: null,
    at: 0,
    seconds: 10,
  });
  const round: Round = {
    ...startRound({ deck: 'lesson', goal: { cards: 9 }, seed: 1, now: 0 }),
    asked: [
      asked(items[0]!, true, true),
      asked(items[1]!, false, true),
      asked(items[1]!, true, false),
      asked(items[2]!, true, false),
      asked(items[3]!, false, false),
      asked(items[4]!, true, true),
      asked(items[4]!, false, false),
    ],
  };

  it('ends with what is known for the first time, what grew, and what was missed last', () => {
    const { fresh, grown, missed, ...counts } = summarise(round, items, emptyMemory());
    const degrees = (some: readonly Item[]) => some.map(({ degree }) => degree);
    expect(degrees(fresh)).toEqual([1, 2]);
    expect(degrees(grown)).toEqual([3]);
    expect(degrees(missed)).toEqual([4, 5]);
    expect(counts).toMatchObject({ cards: 7, asked: 5, rightFirst: 3, unseen: 7 });
    const memory = emptyMemory();
    for (const { id } of items.slice(0, 5)) learn(memory, reviewOf({ item: id }));
    expect(summarise(round, items, memory).unseen).toBe(2);
    // Of an item that the lesson has no more nothing is said but that it was asked.
    const fewer = summarise(round, items.slice(0, 4), memory);
    expect(degrees(fewer.missed)).toEqual([4]);
    expect(fewer).toMatchObject({ asked: 5, unseen: 0 });
  });

  it('says of what was missed eight times that it is left, unless it was right after all', () => {
    const misses = Array.from({ length: 8 }, () => asked(items[3]!, false, false));
    const left = (more: Round['asked']) =>
      summarise({ ...round, asked: [...misses, ...more] }, items, emptyMemory()).left;
    expect(left([asked(items[1]!, false, false)])).toEqual([items[3]]);
    expect(left([asked(items[3]!, true, false)])).toEqual([]);
  });

  it('leaves an item for another day at its eighth miss', () => {
    const missing = (times: number): Round => ({
      ...round,
      asked: Array.from({ length: times }, () => asked(items[3]!, false, false)),
      open: { item: items[3]!.id, seed: 2, isNew: false, recall: null, proven: false, meet: false },
    });
    const comesAgain = (times: number) =>
      owedAfterAnswer(missing(times), items, { right: false, takenFor: null }).owed.length;
    expect([comesAgain(6), comesAgain(7)]).toEqual([1, 0]);
    expect(answerCard(missing(1), items, { right: false, takenFor: null }, 0).asked).toHaveLength(
      2,
    );
  });
});

describe('enough for today', () => {
  const learned = (days: number) => {
    const memory = emptyMemory();
    for (const { id } of items)
      for (let day = 0; day < days; day++) learn(memory, reviewOf({ item: id, at: day * DAY }));
    return memory;
  };
  const standing = (days: number) => {
    const memory = learned(days);
    const now = (days - 1) * DAY + 1000;
    const tomorrow = items.map(({ id }) => recall(memory, id, now + DAY)!);
    const mean = tomorrow.reduce((sum, one) => sum + one, 0) / tomorrow.length;
    return { mean, enough: isEnough(items, memory, now, null) };
  };

  it('is never said below .8 of what was asked, and is said of what is known for long', () => {
    for (let days = 1; days < 6; days++) {
      const { mean, enough } = standing(days);
      if (enough) expect(mean).toBeGreaterThanOrEqual(0.8);
    }
    expect(standing(30).enough).toBe(true);
    expect(isEnough(items, emptyMemory(), 0, null)).toBe(false);
  });

  it('minutes are counted until the chance is .9', () => {
    const memory = learned(12);
    const last = 11 * DAY;
    let [before, after] = [0, 0];
    for (let ahead = 1; ahead < 200; ahead++) {
      const lesson = last + ahead * DAY;
      const ready = items.every(({ id }) => recall(memory, id, lesson)! >= 0.9);
      const minutes = minutesADay(items, memory, last, lesson);
      expect(minutes === 0, `${ahead} days ahead`).toBe(ready);
      if (ready) before++;
      else after++;
    }
    expect(Math.min(before, after)).toBeGreaterThan(0);
  });
});

describe('what a miss brings back in the same round', () => {
  // What was right twice is proven; so is all that a student began more than a week ago.
  it.each([
    [1, 0, false],
    [2, 0, true],
    [1, 6.9, false],
    [1, 7.1, true],
  ])(
    'is what was right once, not what was right twice or began long ago: %i, %f days',
    (right, days, proven) => {
      const memory = emptyMemory();
      const one = items.slice(0, 1);
      for (let n = 0; n < right; n++)
        learn(memory, reviewOf({ item: one[0]!.id, at: n, right: true }));
      const round = startRound({ deck: 'd', goal: { cards: 1 }, seed: 1, now: 0, meets: false });
      const next = nextCard(round, one, memory, days * DAY)!;
      expect(next.round.open!.proven).toBe(proven);
    },
  );

  // After so many cards: two behind a first miss, nine behind another, one and four where a pair is told apart.
  it('comes after two cards, missed again after nine', () => {
    const open = (item: Item) => ({
      item: item.id,
      seed: 1,
      isNew: false,
      recall: 0.5,
      proven: false,
      meet: false,
    });
    const missed = { right: false, takenFor: null };
    const begun = startRound({ deck: 'd', goal: { cards: 20 }, seed: 1, now: 0, meets: false });
    const [a, b] = [items[0]!, items[1]!];
    const once = answerCard({ ...begun, open: open(a) }, items, missed, 1000);
    expect(once.owed).toEqual([{ item: a.id, from: 3 }]);
    const twice = answerCard({ ...once, owed: [], open: open(a) }, items, missed, 2000);
    expect(twice.owed).toEqual([{ item: a.id, from: 11 }]);
    const taken = { right: false, takenFor: '2' };
    const pair = answerCard({ ...begun, open: { ...open(a), proven: true } }, items, taken, 1000);
    expect(pair.owed).toEqual([
      { item: b.id, from: 2 },
      { item: a.id, from: 5 },
    ]);
    // One such pair a round.
    const other = answerCard(
      { ...pair, owed: [], open: { ...open(items[4]!), proven: true } },
      items,
      { right: false, takenFor: '6' },
      2000,
    );
    expect([pair.pairs, other.pairs, other.owed]).toEqual([1, 1, []]);
  });
});

it('enough is said where no item brings a 120th a second, and not before', () => {
  const memory = emptyMemory();
  for (const [k, { id }] of items.entries())
    for (const day of [0, 1, 3, 7, 15, 30, 60])
      learn(memory, reviewOf({ item: id, at: day * DAY + k * 9000, right: true }));
  const between = new Set<string>();
  for (let hours = 1; hours < 24 * 400; hours += 10) {
    const now = 60 * DAY + hours * 3_600_000;
    const most = Math.max(...expectedGains(items, memory, now, null).map(({ gain }) => gain));
    const sure = shareOf(items, memory, now + DAY).recall >= 0.8;
    expect(isEnough(items, memory, now, null), `${hours}`).toBe(sure && most < 1 / 120);
    if (sure) between.add(most < 1 / 120 ? 'below' : most < 1 / 60 ? 'just above' : 'above');
  }
  expect(between.has('below') && between.has('just above')).toBe(true);
});

describe('something new', () => {
  const round = (seconds: number, meets = true): Round => ({
    ...startRound({ deck: 'd', goal: { minutes: 1 }, seed: 1, now: 0, meets }),
    asked: [
      {
        item: 'spot:other',
        seed: 1,
        isNew: false,
        recall: 1,
        proven: true,
        meet: false,
        right: true,
        shown: false,
        takenFor: null,
        given: '1',
        at: 0,
        seconds,
      },
    ],
  });
  const before = () => {
    const memory = emptyMemory();
    for (let n = 0; n < 20; n++)
      learn(memory, reviewOf({ item: `spot:other:${n}`, at: n, right: true }));
    return memory;
  };

  it('is begun while more than forty seconds are left, for it is shown and asked two cards later', () => {
    const one = items.slice(0, 1);
    const begins = (seconds: number, meets?: boolean) =>
      choose(round(seconds, meets), one, before(), 1000) !== null;
    expect([19, 19.9, 20, 30].map((seconds) => begins(seconds))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(begins(30, false)).toBe(true);
  });

  it('that comes after another waits until that was right the last time', () => {
    const later: Item = { ...itemOn(2), after: items[0]!.id };
    const comes = (...answers: boolean[]) => {
      const memory = before();
      answers.forEach((right, n) =>
        learn(memory, reviewOf({ item: items[0]!.id, at: 100 + n, right })),
      );
      return choose(round(0), [later], memory, 1000) !== null;
    };
    expect([comes(), comes(false), comes(true), comes(true, false), comes(false, true)]).toEqual([
      false,
      false,
      true,
      false,
      true,
    ]);
  });
});

// Of one who answered nothing yet: three asks an item, as even chances cost 4.5 and sure ones 1.5; 8 s a right answer with
// its verdict and 15 s a wrong one, 11.5 on the mean. Seven items: 241.5 s, 4.025 minutes.
describe('how long it takes until seven new items are known', () => {
  it.each([
    [null, 1],
    [DAY, 5],
    [2 * DAY, 3],
    [4 * DAY, 2],
    [-DAY, 1],
  ])('by a lesson %s ms ahead it is %i minutes a day', (lesson, minutes) => {
    expect(minutesADay(items, emptyMemory(), 1e9, lesson && 1e9 + lesson)).toBe(minutes);
  });

  // Days grow by a twenty-fifth of themselves a day, for what fades meanwhile; something new takes five at least.
  it.each([
    [10, 5],
    [1, 5],
    [0.5, 11],
    [0.1, 106],
  ])('with %f minutes a day it is %i days', (minutes, days) => {
    expect(daysUntilKnown(items, emptyMemory(), 0, minutes)).toBe(days);
    expect(daysUntilKnown([], emptyMemory(), 0, minutes)).toBe(0);
  });
});
