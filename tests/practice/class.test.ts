import { describe, expect, it } from 'vitest';
import type { ItemFacts, Report } from '../../src/decks/report.ts';
import {
  classConfusions,
  classOf,
  classWeeks,
  meanByDegree,
  nameKey,
  newer,
  type Filed,
} from '../../src/practice/class.ts';
import { itemsUpTo } from './items.ts';

const items = itemsUpTo(4);

const facts = (some: Partial<ItemFacts> = {}): ItemFacts => ({
  recall: 0.9,
  ease: 0,
  answers: 4,
  slow: false,
  misses: 0,
  takenFor: null,
  ...some,
});

const missed = (takenFor: number) => facts({ recall: 0.3, misses: 2, takenFor });

let reads = 0;

function filed(sender: number, deck: number, day: number, some: Partial<Report> = {}): Filed {
  const report: Report = {
    deck,
    sender,
    day,
    minute: 0,
    practised: [],
    asked: 8,
    firstAsked: 8,
    firstRight: 6,
    seconds: {},
    items: items.map(() => facts()),
    time: { figures: [], minutes: null },
    askedAbout: [],
    question: '',
    name: '',
    ...some,
  };
  const open = () => {
    reads++;
    return { report, items, ahead: 7 };
  };
  return { sender, deck, day, minute: 0, open };
}

describe('a class', () => {
  const reports = [
    filed(1, 9, 20_693, { name: 'Tomke' }),
    filed(1, 10, 20_700),
    filed(2, 10, 20_701, { items: [facts(), missed(4), facts(), missed(2)], name: 'Mareike' }),
    filed(3, 10, 20_702, { items: [facts(), missed(4), facts(), null] }),
    filed(4, 9, 20_694),
  ];

  it('has those first who need most, of all or of one degree', () => {
    expect(classOf(reports, 10).map(({ sender }) => sender)).toEqual([3, 2, 1].toSorted(byNeed()));
    expect(classOf(reports, 10, 4)[0]!.sender).toBe(3);
    expect(classOf(reports, 10, 4).at(-1)!.sender).toBe(1);
  });

  function byNeed() {
    const recall = new Map(
      classOf(reports, 10).map(({ sender, picture }) => [sender, picture.all.recall]),
    );
    return (a: number, b: number) => recall.get(a)! - recall.get(b)!;
  }

  it('is read no further than the first picture needs: names of other lessons come when asked for', () => {
    reads = 0;
    const students = classOf(reports, 10);
    expect(reads).toBe(3);
    const first = students.find(({ sender }) => sender === 1)!;
    expect(first.name).toBe('');
    expect(first.lastName()).toBe('Tomke');
  });

  it('tells what is taken for what, by how many', () => {
    const [most, next] = classConfusions(classOf(reports, 10));
    expect(most).toMatchObject({ pair: { degree: 2, takenFor: 4, times: 4 } });
    expect(most!.students.toSorted()).toEqual([2, 3]);
    expect(next).toMatchObject({ pair: { degree: 4, takenFor: 2 }, students: [2] });
  });

  it('has what most students take for another first, then what was missed most', () => {
    const six = (takenFor: number) => facts({ recall: 0.3, misses: 3, takenFor });
    const one = (takenFor: number) => facts({ recall: 0.3, misses: 1, takenFor });
    const some = [
      filed(1, 10, 20_700, { items: [one(5), six(6), facts(), one(3)] }),
      filed(2, 10, 20_700, { items: [one(5), facts(), facts(), missed(3)] }),
    ];
    const told = classConfusions(classOf(some, 10)).map(
      ({ pair: { degree, takenFor, times }, students }) => [
        degree,
        takenFor,
        times,
        students.length,
      ],
    );
    expect(told).toEqual([
      [4, 3, 3, 2],
      [1, 5, 2, 2],
      [2, 6, 3, 1],
    ]);
  });

  it('has the name that was typed last, on whatever lesson, of the last five reports', () => {
    const named = (day: number, name: string, deck = 9) => filed(1, deck, day, { name });
    const lastName = (...all: Filed[]) => classOf(all, 10)[0]!.lastName();
    const latest = filed(1, 10, 20_710);
    expect(lastName(named(20_701, 'Tom'), named(20_703, 'Tomke'), latest)).toBe('Tomke');
    expect(lastName(named(20_703, 'Tomke'), named(20_701, 'Tom'), latest)).toBe('Tomke');
    const nameless = [1, 2, 3, 4].map((k) => named(20_703 + k, ''));
    expect(lastName(named(20_701, 'Tom'), ...nameless.slice(1), latest)).toBe('Tom');
    expect(lastName(named(20_701, 'Tom'), ...nameless, latest)).toBe('');
  });

  it.each([
    ['Mareike', ' mareike '],
    ['Zoë', 'Zoe\u0308'],
    ['Ｊａｎ', 'Jan'],
    ['JÖRG', 'jörg'],
  ])('takes %s and %s for one name', (one, other) => {
    expect(nameKey(one)).toBe(nameKey(other));
    const some = [filed(1, 10, 20_700, { name: one }), filed(2, 10, 20_700, { name: other })];
    expect(classOf(some, 10).map(({ doubt }) => doubt)).toEqual(['same name', 'same name']);
  });

  it('has reports of one phone that do not agree side by side, and says so; as of one name on two phones', () => {
    const beside = filed(1, 10, 20_701, { asked: 2, firstAsked: 2, firstRight: 0 });
    const namesake = filed(5, 10, 20_699, { name: ' mareike' });
    const doubts = (of: readonly Filed[]) =>
      classOf(of, 10)
        .map(({ sender, doubt }) => `${sender} ${doubt}`)
        .toSorted();
    expect(doubts(reports)).toEqual(['1 null', '2 null', '3 null']);
    expect(doubts([...reports, beside, namesake])).toEqual([
      '1 same phone',
      '1 same phone',
      '2 same name',
      '3 null',
      '5 same name',
    ]);
    const weeks = (of: readonly Filed[]) => classWeeks(classOf(of, 10));
    expect(weeks([reports[1]!, beside])).toHaveLength(1);
    const missing = { items: [facts(), missed(4), facts(), missed(2)] };
    const twice = classOf([filed(2, 10, 20_700, missing), filed(2, 10, 20_701, missing)], 10);
    expect(classConfusions(twice)[0]!.students).toEqual([2]);
  });

  it('is told from week to week, of the students of this lesson', () => {
    const weeks = classWeeks(classOf(reports, 10));
    // Days 20,689 and 20,696 are Mondays.
    expect(weeks.map(({ day }) => day)).toEqual([20_689, 20_696]);
    expect(new Date(20_689 * 86_400_000).getUTCDay()).toBe(1);
    expect(weeks[0]!.recall).toBeGreaterThan(weeks[1]!.recall);
  });

  it('counts each student once in a week as in the mean, and five weeks at most', () => {
    const at = (sender: number, day: number, recall: number) =>
      filed(sender, 10, day, { items: items.map(() => facts({ recall })) });
    // From Monday to Sunday, and the Monday after.
    const some = [
      at(1, 20_696, 0.2),
      at(2, 20_702, 0.4),
      at(3, 20_703, 0.8),
      { ...at(1, 20_703, 0.6), deck: 9 },
    ];
    const told = (of: readonly Filed[]) => classWeeks(classOf(of, 10));
    expect(told(some)).toEqual([
      { day: 20_696, recall: expect.closeTo(0.3, 9) },
      { day: 20_703, recall: expect.closeTo(0.7, 9) },
    ]);
    const long = [1, 2].flatMap((sender) =>
      [0, 1, 2, 3, 4, 5].map((week) => at(sender, 20_696 + 7 * (week + sender), week / 10)),
    );
    expect(told(long).map(({ day }) => (day - 20_696) / 7)).toEqual([3, 4, 5, 6, 7]);
    expect(classOf(long, 10)[0]!.reports).toBe(5);
  });

  it('is as ready on a degree as those are on the mean whose lesson has it', () => {
    const half = items.slice(0, 2);
    const some = [
      filed(1, 10, 20_700, { items: [0.2, 0.4, 0.6, 0.8].map((recall) => facts({ recall })) }),
      filed(2, 10, 20_700, { items: [facts({ recall: 0.6 }), null, null, null] }),
    ];
    const mean = (of: readonly Filed[]) => meanByDegree(classOf(of, 10));
    const close = (...values: number[]) => values.map((value) => expect.closeTo(value, 9));
    expect(mean(some)).toEqual([...close(0.4, 0.2, 0.3, 0.4), null, null, null]);
    const fewer: Filed = {
      ...some[0]!,
      sender: 3,
      open: () => ({
        report: { ...some[0]!.open()!.report, sender: 3, items: [facts({ recall: 1 }), facts()] },
        items: half,
        ahead: 7,
      }),
    };
    expect(mean([some[0]!, fewer]).slice(1)).toEqual([...close(0.65, 0.6, 0.8), null, null, null]);
    expect(mean([])).toEqual([null, null, null, null, null, null, null]);
  });

  it('leaves out a report that cannot be read, and has none where there is no lesson', () => {
    const broken: Filed = { ...filed(7, 10, 20_700), open: () => null };
    expect(classOf([broken, filed(1, 10, 20_700)], 10).map(({ sender }) => sender)).toEqual([1]);
    expect(classOf(reports, 99)).toEqual([]);
    const beside = classOf([{ ...broken, sender: 1 }, filed(1, 10, 20_701)], 10);
    expect(beside.map(({ doubt }) => doubt)).toEqual([null]);
    expect(beside[0]!.weeks()).toHaveLength(1);
  });

  it('puts the newer report of one day last', () => {
    const early = { day: 4, minute: 500 };
    const [late, next] = [
      { day: 4, minute: 501 },
      { day: 5, minute: 0 },
    ];
    expect([next, late, early].toSorted(newer)).toEqual([early, late, next]);
  });

  it('has those last, by one degree, whose lesson has nothing on it', () => {
    const known = (sender: number, recall: number) =>
      filed(sender, 10, 20_700, { items: items.map(() => facts({ recall })) });
    const order = (degree: number | null) =>
      classOf([known(1, 0.9), known(2, 0.3), known(3, 0.6)], 10, degree).map(
        ({ sender }) => sender,
      );
    expect([order(null), order(2), order(7)]).toEqual([
      [2, 3, 1],
      [2, 3, 1],
      [1, 2, 3],
    ]);
  });
});
