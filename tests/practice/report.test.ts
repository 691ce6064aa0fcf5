import { beforeAll, describe, expect, it } from 'vitest';
import {
  MOST_TOLD,
  readReport,
  reportLink,
  type ItemFacts,
  type Report,
} from '../../src/decks/report.ts';
import { learn, emptyMemory, recall } from '../../src/memory/memory.ts';
import { DAY } from '../../src/memory/day.ts';
import { classOf, meanByDegree } from '../../src/practice/class.ts';
import type { Item } from '../../src/practice/item.ts';
import { marksOf, weakDrills } from '../../src/practice/lesson.ts';
import { daysAhead, fits, pictureOf, regionsOf } from '../../src/practice/picture.ts';
import { reportOf } from '../../src/practice/report.ts';
import { readiness } from '../../src/practice/readiness.ts';
import type { Deck, NeckDrill } from '../../src/decks/deck.ts';
import type { Review } from '../../src/store/review.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { itemsOf } from '../../src/cards/index.ts';
import { phraseDeck } from '../cards/phrases.ts';
import { seeded } from '../../src/theory/random.ts';
import { reviewOf } from '../memory/reviews.ts';

const sent = { deck: 7, sender: 9, question: 'Why is vii so hard?', name: '' };
const noon = Date.UTC(2026, 11, 3, 12);
const OFFSET = 60;

/** Every degree on two string sets, and by ear. */
const items: Item[] = [
  ...['5-4', '4-3'].flatMap((strings) =>
    [1, 2, 3, 4, 5, 6, 7].map((degree): Item => ({
      id: `spot:Bb major:${degree}:triad:guitar:${strings}:1-7`,
      kind: 'spot',
      key: { tonic: 'Bb', scale: 'major' },
      size: 'triad',
      degree,
      strings,
      frets: [1, 7],
    })),
  ),
  ...[1, 2, 3, 4, 5, 6, 7].map((degree): Item => ({
    id: `trace:Bb major:${degree}:triad:guitar:up:72`,
    kind: 'trace',
    key: { tonic: 'Bb', scale: 'major' },
    size: 'triad',
    degree,
    strings: '',
  })),
];
const idOf = (degree: number, strings = '5-4') =>
  items.find((item) => item.degree === degree && item.strings === strings)!.id;

/** A log of answers, each so many days before noon. */
function told(answers: readonly (Partial<Review> & { item: string; ago: number })[]) {
  const reviews = answers.map(({ ago, ...rest }, k) =>
    reviewOf({ n: k + 1, at: noon - ago * DAY, offset: OFFSET, ...rest }),
  );
  const memory = emptyMemory();
  for (const review of reviews) learn(memory, review);
  return {
    items,
    memory,
    reviews,
    timings: {},
    minutes: [],
    questions: [] as string[],
    lesson: noon + 5 * DAY,
  };
}

const wrong = (item: string, ago: number, takenFor: string) => ({
  item,
  ago,
  right: false,
  takenFor,
});

describe('a report', () => {
  it('tells of each item how likely it is to be known, of its last three answers the misses, and what it was taken for', () => {
    const of = told([
      wrong(idOf(2), 9, '5'),
      wrong(idOf(2), 5, '4'),
      wrong(idOf(2), 3, '4'),
      { item: idOf(2), ago: 2 },
      { item: idOf(3), ago: 1, grade: 2 },
      wrong(idOf(5, ''), 1, '7 2 4'),
    ]);
    const report = reportOf({ ...of, questions: [idOf(3), 'spot:C major:1'] }, sent, noon, OFFSET);
    const facts = (id: string) => report.items[items.findIndex((item) => item.id === id)];
    expect(facts(idOf(2))).toMatchObject({ answers: 4, misses: 2, takenFor: 4, slow: false });
    expect(facts(idOf(3))).toMatchObject({ answers: 1, misses: 0, takenFor: null, slow: true });
    expect(facts(idOf(5, ''))).toMatchObject({ misses: 1, takenFor: 7 });
    expect(facts(idOf(1))).toBeNull();
    expect(report).toMatchObject({ ...sent, asked: 6, firstAsked: 6, firstRight: 2 });
    expect(report.askedAbout).toEqual([2]);
  });

  it('is of a week from now where no lesson is known', () => {
    const of = told([{ item: idOf(2), ago: 1 }]);
    const recalled = (lesson: number | null) =>
      reportOf({ ...of, lesson }, sent, noon, OFFSET).items[1]!.recall;
    expect(recalled(null)).toBe(recall(of.memory, idOf(2), noon + 7 * DAY));
    expect(recalled(noon + 2 * DAY)).toBe(recall(of.memory, idOf(2), noon + 2 * DAY));
  });

  it('tells the pace of each kind that was answered right often enough, and of none kept in time', () => {
    const pulse: Item = { ...items[0]!, id: 'pulse:Bb major:1:triad:guitar:x', kind: 'pulse' };
    const answers = (item: string, count: number) =>
      Array.from({ length: count }, (_, k) => ({ item, ago: 9 - k, ms: 1000 * (k + 1) }));
    const of = told([...answers(idOf(1), 7), ...answers(pulse.id, 7), ...answers(idOf(1, ''), 4)]);
    const report = reportOf({ ...of, items: [...items, pulse] }, sent, noon, OFFSET);
    expect(report.seconds).toEqual({ spot: 4 });
  });

  it('names as taken for no degree that is none, and not its own', () => {
    const takenFor = (...given: string[]) => {
      const of = told(given.map((one, k) => wrong(idOf(3), 9 - k, one)));
      return reportOf(of, sent, noon, OFFSET).items[2]!.takenFor;
    };
    expect(['8', '0', '3', '1', '7', '4 6 1', '4 4'].map((one) => takenFor(one))).toEqual([
      null,
      null,
      null,
      1,
      7,
      4,
      null,
    ]);
    expect(takenFor('4', '6', '6')).toBe(6);
  });

  it('has no more items and questions than it has room for, and calls nothing slow that it has no answers of', () => {
    const many = Array.from({ length: MOST_TOLD.items + 2 }, (_, k) => ({
      ...items[0]!,
      id: `spot:${k}`,
    }));
    const of = told([{ item: 'spot:1', ago: 1, grade: 2 }]);
    const questions = many.slice(4, 40).map(({ id }) => id);
    const report = reportOf({ ...of, items: many, reviews: [], questions }, sent, noon, OFFSET);
    expect(report.items).toHaveLength(MOST_TOLD.items);
    expect(report.askedAbout).toEqual(
      Array.from({ length: MOST_TOLD.askedAbout }, (_, k) => k + 4),
    );
    expect(report.items[1]).toMatchObject({ slow: false, misses: 0 });
    const quick = told([{ item: idOf(1), ago: 1, grade: 3 }]);
    expect(reportOf(quick, sent, noon, OFFSET).items[0]!.slow).toBe(false);
  });

  it('counts days from four in the morning, as practice does', () => {
    const late = Date.UTC(2026, 11, 4, 1, 30);
    const of = told([
      { item: idOf(1), ago: 0 },
      { item: idOf(1), ago: 27 },
      { item: idOf(1), ago: 28 },
    ]);
    const report = reportOf(of, sent, late, OFFSET);
    expect(report.day).toBe(Math.floor(noon / DAY));
    expect(report.minute).toBe(22 * 60 + 30);
    expect(report.practised).toHaveLength(28);
    expect(report.practised.map((did, i) => (did ? i : -1)).filter((i) => i >= 0)).toEqual([0, 27]);
  });

  it('opens as a picture whose readiness is the student’s own, within a hundredth', () => {
    const of = told(
      items.slice(0, 18).flatMap(({ id }, k) => [
        { item: id, ago: 9 - (k % 3), right: k % 4 > 0, takenFor: k % 4 > 0 ? null : '3' },
        { item: id, ago: 2 + (k % 5) / 3 },
      ]),
    );
    const report = reportOf(of, sent, noon, OFFSET);
    const read = readReport(reportLink(report, 'https://quay.example/'));
    if ('fault' in read) throw new Error(read.fault);
    expect(fits(read.report, items)).toBe(true);
    const ahead = daysAhead(report, '2026-12-08');
    expect(ahead).toBe(5);
    const picture = pictureOf(read.report, items);
    const own = readiness(items, of.memory, noon + 5 * DAY);
    expect(Math.abs(picture.all.recall - own.overall)).toBeLessThan(0.01);
    own.byDegree.forEach((share, i) =>
      expect(Math.abs(picture.byDegree[i]!.recall - share!)).toBeLessThan(0.02),
    );
    expect(picture.all).toMatchObject({ seen: 18, of: 21 });
    expect(recall(of.memory, idOf(1), noon)).toBeGreaterThan(0);
  });
});

const facts = (some: Partial<ItemFacts> = {}): ItemFacts => ({
  recall: 0.9,
  ease: 0,
  answers: 4,
  slow: false,
  misses: 0,
  takenFor: null,
  ...some,
});

function tellingOf(of: (item: Item) => ItemFacts | null, some: Partial<Report> = {}): Report {
  return {
    ...sent,
    day: 20_790,
    minute: 600,
    practised: Array<boolean>(28).fill(false),
    asked: 50,
    firstAsked: 50,
    firstRight: 40,
    seconds: {},
    items: items.map(of),
    time: { figures: [], minutes: null },
    askedAbout: [],
    ...some,
  };
}

describe('the picture of a report', () => {
  it('names the weak degrees, what is taken for what, and where nothing was seen', () => {
    const report = tellingOf(
      ({ degree, strings }) =>
        strings === '4-3'
          ? null
          : degree === 7
            ? facts({ recall: 0.4, misses: 2, takenFor: 2 })
            : facts({ slow: strings === '' }),
      { askedAbout: [0] },
    );
    const picture = pictureOf(report, items);
    expect(picture.weak[0]).toBe(7);
    expect(picture.confusions).toEqual([
      { kind: 'spot', size: 'triad', degree: 7, takenFor: 2, times: 2 },
      { kind: 'trace', size: 'triad', degree: 7, takenFor: 2, times: 2 },
    ]);
    expect(
      regionsOf(report, items).map(({ strings, frets, seen, slow }) => [
        strings,
        frets,
        seen,
        slow,
      ]),
    ).toEqual([
      ['5-4', '1-7', 7, 0],
      ['4-3', '1-7', 0, 0],
      ['', '', 7, 6],
    ]);
    expect(picture.askedAbout).toEqual([items[0]]);
  });

  it('has what was missed most first, and of as many misses the lower degree', () => {
    const misses: Record<number, number> = { 2: 1, 3: 2, 5: 1, 6: 2, 7: 3 };
    const report = tellingOf(({ degree, kind }) =>
      kind === 'spot' && misses[degree]
        ? facts({ recall: 0.4, misses: misses[degree], takenFor: 1 })
        : facts(),
    );
    const most = pictureOf(report, items).confusions.map(({ degree, times }) => [degree, times]);
    const sets = items.filter(({ kind, degree }) => kind === 'spot' && degree === 2).length;
    expect(most).toEqual([
      [7, 3 * sets],
      [3, 2 * sets],
      [6, 2 * sets],
      [2, sets],
      [5, sets],
    ]);
  });

  it('counts what a phrase has on a string set there, on the frets of all of it, beside the drills', () => {
    const seen = itemsOf(
      phraseDeck({
        drills: [
          { kind: 'spot', sizes: ['triad'], strings: ['3-2-1'], frets: [1, 5] },
          { kind: 'outline', phrases: [1] },
          { kind: 'fill', phrases: [1] },
        ],
      }),
    );
    const made = { ...tellingOf(() => null), items: seen.map(() => facts()) };
    const regions = regionsOf(made, seen);
    const counted = regions.map(({ strings, frets, inPhrases, of }) => [
      strings,
      frets,
      inPhrases,
      of,
    ]);
    expect(counted).toEqual([
      ['3-2-1', '1-5', false, seen.filter(({ kind }) => kind === 'spot').length],
      ['3-2-1', '3-5', true, 1],
      ['2-1', '1-5', true, 1],
      // I on fret 3 and vi on frets 3 to 5.
      ['4-3-2', '3-5', true, 2],
      ['4-2', '1-5', true, 1],
      ['3-2', '2-5', true, 1],
      ['', '', false, seen.filter(({ kind }) => kind === 'fill').length],
    ]);
    expect(regions.reduce((sum, { of }) => sum + of, 0)).toBe(seen.length);
  });

  it('counts what of a phrase is played where its arpeggios are named', () => {
    const named = { kind: 'outline', phrases: [1] } as const;
    const played = { kind: 'play', phrases: [1] } as const;
    const lying = (drills: readonly object[]) => {
      const seen = itemsOf(phraseDeck({ drills }));
      const made = { ...tellingOf(() => null), items: seen.map(() => facts()) };
      return regionsOf(made, seen).map(({ strings, inPhrases }) => `${strings} ${inPhrases}`);
    };
    expect(lying([played]).length).toBeGreaterThan(0);
    expect(lying([named, played])).toEqual(lying([named]));
  });

  it('is of a lesson of as many items, and of no other', () => {
    const made = tellingOf(() => facts());
    expect([items, items.slice(1), [...items, items[0]!]].map((some) => fits(made, some))).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('says nothing of first answers where there were none, and that little stays only of much', () => {
    const of = (some: Partial<Report>) =>
      pictureOf(
        tellingOf(() => facts({ recall: 0.1 }), some),
        items,
      );
    expect(of({ firstAsked: 0, firstRight: 0 }).firstRight).toBeNull();
    expect(of({ firstAsked: 8, firstRight: 2 }).firstRight).toBe(0.25);
    expect([19, 20].map((asked) => of({ asked }).littleStays)).toEqual([false, true]);
    expect(pictureOf({ ...tellingOf(() => null), items: [] }, []).all.recall).toBe(0);
  });

  it('has what is kept in time apart, of no degree, and taken for nothing', () => {
    const pulse: Item = { ...items[1]!, id: 'pulse:x', kind: 'pulse', strings: '' };
    const { frets: _, ...still } = pulse;
    const some = [...items.slice(0, 2), still, { ...still, id: 'pulse:y' }];
    const made = {
      ...tellingOf(() => null),
      items: [facts({ takenFor: 1, misses: 1 }), facts(), facts({ takenFor: 5 }), facts()],
    };
    expect(regionsOf(made, some).map(({ inTime, strings, of }) => [inTime, strings, of])).toEqual([
      [false, '5-4', 2],
      [true, '', 2],
    ]);
    const { byDegree, confusions } = pictureOf(made, some);
    expect(byDegree.map((one) => one?.of)).toEqual([1, 1, ...Array<undefined>(5).fill(undefined)]);
    // The first was told as taken for itself, which is nothing either.
    expect(confusions).toEqual([]);
  });

  it('tells string sets apart that lie on other frets', () => {
    const some = items.slice(0, 3).map((item, k) => ({
      ...item,
      id: `${k}`,
      frets: [k === 2 ? 5 : 1, 7] as const,
    }));
    const made = { ...tellingOf(() => null), items: some.map(() => facts()) };
    expect(regionsOf(made, some).map(({ frets, of }) => [frets, of])).toEqual([
      ['1-7', 2],
      ['5-7', 1],
    ]);
  });

  it('looks a week ahead where the lesson day is past or none', () => {
    const made = tellingOf(() => facts());
    expect(daysAhead(made, null)).toBe(7);
    expect(daysAhead(made, '2026-12-02')).toBe(7);
    expect(daysAhead(made, '2026-12-06')).toBe(3);
  });
});

describe('a class', () => {
  const place = (made: Report) => ({ ...made, open: () => ({ report: made, items, ahead: 7 }) });
  const strong = (sender: number) => tellingOf(() => facts({ recall: 0.98 }), { sender });
  const weakOn = (degree: number, sender: number, some: Partial<Report> = {}) =>
    tellingOf((item) => facts({ recall: item.degree === degree ? 0.1 : 0.9 }), {
      sender,
      ...some,
    });

  it('has those who need most first, over all or on one degree', () => {
    const all = [strong(1), weakOn(7, 2), tellingOf(() => null, { sender: 3 })].map(place);
    expect(classOf(all, 7).map(({ sender }) => sender)).toEqual([3, 2, 1]);
    const others = [weakOn(7, 2), weakOn(5, 4)].map(place);
    expect(classOf(others, 7, 5)[0]!.sender).toBe(4);
    expect(classOf(others, 7, 7)[0]!.sender).toBe(2);
    const means = meanByDegree(classOf(others, 7));
    expect(means[0]).toBeGreaterThan(means[4]!);
  });

  it('shows of a student the newest report on the lesson, the name typed last, and all weeks', () => {
    const old = weakOn(7, 2, { deck: 5, day: 20_780, name: 'Ilse' });
    const now = weakOn(7, 2, { name: '' });
    const [student, ...more] = classOf([now, old].map(place), 7);
    expect(more).toEqual([]);
    expect(student).toMatchObject({ sender: 2, name: '' });
    expect(student!.lastName()).toBe('Ilse');
    expect(student!.latest.report).toBe(now);
    expect(student!.weeks().map(({ day }) => day)).toEqual([20_780, 20_790]);
  });
});

const deck: Deck = {
  title: 'Quay side',
  note: '',
  lessonDay: '2026-12-08',
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' },
  drills: [
    {
      kind: 'spot',
      degrees: [1, 2, 3, 4, 5, 6, 7],
      sizes: ['triad'],
      strings: [
        [5, 4],
        [4, 3],
      ],
      frets: [1, 7],
    },
    {
      kind: 'trace',
      degrees: [1, 2, 3, 4, 5, 6, 7],
      sizes: ['triad'],
      contours: ['up'],
      tempo: 72,
    },
  ],
  phrases: [],
};

describe('the next lesson', () => {
  it('asks the degrees and string sets that are weak, in the frets of the last one', () => {
    const one = tellingOf(({ degree, strings }) =>
      facts({ recall: [2, 7].includes(degree) && strings !== '4-3' ? 0.1 : 0.97 }),
    );
    const drills = weakDrills(deck, items, [one]);
    expect(drills).toHaveLength(2);
    expect(drills[0]).toMatchObject({ kind: 'spot', strings: [[5, 4]], frets: [1, 7] });
    const { degrees } = drills[0] as NeckDrill;
    expect(degrees).toHaveLength(3);
    expect(degrees).toEqual(expect.arrayContaining([2, 7]));
  });

  it('keeps everything where nothing was seen', () => {
    expect(weakDrills(deck, items, [tellingOf(() => null)])).toEqual(deck.drills);
  });

  it('marks an item the harder the less easily it comes to the class, and one report moves no mark far', () => {
    const eases = ({ degree }: Item) =>
      facts({ ease: degree === 7 ? -0.9 : degree === 1 ? 0.9 : 0, answers: 1 });
    const alone = marksOf([tellingOf(eases)], items);
    const class12 = Array.from({ length: 12 }, (_, sender) => tellingOf(eases, { sender }));
    const together = marksOf(class12, items);
    expect(alone.marks[idOf(7)]).toBe(4);
    expect(Object.values(alone.marks).every((mark) => mark > 1 && mark < 5)).toBe(true);
    expect(together.marks[idOf(7)]).toBe(5);
    expect(together.marks[idOf(1)]).toBe(1);
    expect(together.marks[idOf(4)]).toBeUndefined();
  });

  it('says how many answers stand behind the marks', () => {
    const some = [tellingOf(() => facts({ answers: 4 })), tellingOf(() => facts({ answers: 2 }))];
    const { answers, answersTo } = marksOf(some, items);
    expect(answersTo.get(idOf(3))).toBe(6);
    expect(answers).toBe(6 * items.length);
  });

  it('marks nothing where nothing is hard, nothing was asked, or ease was not told', () => {
    for (const some of [facts(), null, facts({ ease: null, misses: 3 })])
      expect(marksOf([tellingOf(() => some)], items).marks).toEqual({});
  });
});

describe('two students over the same cards', () => {
  type Student = ReturnType<typeof studentOf>;
  /** Five days on which every item was asked, such a share of the answers right. */
  function studentOf(share: number, sender: number) {
    const random = seeded(sender);
    const answers = [9, 7, 5, 3, 1].flatMap((ago) =>
      items.map(({ id }) => ({ item: id, ago, right: random.next() < share })),
    );
    const of = told(answers.toSorted((a, b) => b.ago - a.ago));
    const report = reportOf(of, { ...sent, sender }, noon, OFFSET);
    const read = readReport(reportLink(report, 'https://quay.example/'));
    if ('fault' in read) throw new Error(read.fault);
    const right = answers.filter((one) => one.right).length / answers.length;
    return { of, report: read.report, right };
  }
  let [able, lost] = [] as unknown as [Student, Student];
  beforeAll(() => {
    [able, lost] = [studentOf(0.7, 21), studentOf(0.2, 22)];
  });

  it('are shown 25 points or more apart and in the right order, tomorrow, on lesson day and in the class', () => {
    for (const days of [0.8, 5]) {
      const [one, other] = [able, lost].map(({ of }) =>
        readiness(items, of.memory, noon + days * DAY),
      );
      expect(one!.overall - other!.overall).toBeGreaterThanOrEqual(0.25);
    }
    const [one, other] = [able, lost].map(({ report }) => pictureOf(report, items));
    expect(one!.all.recall - other!.all.recall).toBeGreaterThanOrEqual(0.25);
    const filed = [able, lost].map(({ report }) => ({
      ...report,
      open: () => ({ report, items, ahead: 5 }),
    }));
    const [first, second] = classOf(filed, sent.deck);
    expect([first!.sender, second!.sender]).toEqual([22, 21]);
    expect(second!.picture.all.recall - first!.picture.all.recall).toBeGreaterThanOrEqual(0.25);
  });

  it('have the share right at first asking beside it', () => {
    for (const { report, right } of [able, lost])
      expect(pictureOf(report, items).firstRight).toBeCloseTo(right, 10);
  });

  it('have a word for the teacher where little stays', () => {
    expect(pictureOf(lost.report, items).littleStays).toBe(true);
    expect(pictureOf(able.report, items).littleStays).toBe(false);
  });
});
