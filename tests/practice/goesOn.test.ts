import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_TOLD, type Report } from '../../src/decks/report.ts';
import { DAY } from '../../src/memory/day.ts';
import { learn, emptyMemory } from '../../src/memory/memory.ts';
import { goesOn } from '../../src/practice/goesOn.ts';
import { reportOf } from '../../src/practice/report.ts';
import { itemsUpTo } from './items.ts';

const items = itemsUpTo(4);

const START = 20_700 * DAY + 10 * 3_600_000;

/** Reports of one log after each of so many answers: to which item, right or not, hours later. */
function told(answers: readonly (readonly [number, boolean, number])[]): Report[] {
  const memory = emptyMemory();
  let now = START;
  const reviews = answers.map(([item, right, hours], n) => {
    now += hours * 3_600_000;
    const at = now;
    return {
      item: items[item]!.id,
      device: 'one',
      n,
      seed: 2,
      at,
      offset: 0,
      right,
      takenFor: null,
      ms: 2000,
      sounded: 0,
      taps: 1,
      hidden: false,
      grade: right ? (3 as const) : (1 as const),
    };
  });
  const sent = { deck: 1, sender: 2, question: '', name: '' };
  return reviews.map((review, n) => {
    learn(memory, review);
    const log = {
      items,
      memory,
      reviews: reviews.slice(0, n + 1),
      timings: {},
      minutes: [],
      questions: [],
      lesson: null,
    };
    return reportOf(log, sent, review.at, 0);
  });
}

const answers = fc.array(
  fc.tuple(fc.nat({ max: 3 }), fc.boolean(), fc.integer({ min: 0, max: 200 })),
  { minLength: 2, maxLength: 12 },
);

describe('reports of one log', () => {
  it('go on from one another in their order', () => {
    fc.assert(
      fc.property(answers, (drawn) => {
        const reports = told(drawn);
        reports.forEach((report, i) => {
          for (const before of reports.slice(0, i + 1)) expect(goesOn(report, before)).toBe(true);
        });
      }),
    );
  });
});

describe('a report that contradicts one before it', () => {
  const two = () =>
    told([
      [0, true, 0],
      [1, true, 30],
    ]) as [Report, Report];

  it.each<[string, (after: Report, before: Report) => Partial<Report>]>([
    ['has fewer answers', () => ({ asked: 0 })],
    ['has fewer first answers', () => ({ firstAsked: 0 })],
    ['has fewer right ones', () => ({ firstRight: 0 })],
    ['was never asked what the other was', (after) => ({ items: [null, ...after.items.slice(1)] })],
    [
      'did not practise on a day on which the other did',
      (after) => ({ practised: after.practised.map(() => false) }),
    ],
    [
      'is older',
      (after, before) => ({ day: before.day - 1, practised: after.practised.map(() => true) }),
    ],
    ['is on a lesson of other items', (after) => ({ items: after.items.slice(0, 2) })],
  ])('%s', (_, changed) => {
    const [before, after] = two();
    expect(goesOn(after, before)).toBe(true);
    expect(goesOn({ ...after, ...changed(after, before) }, before)).toBe(false);
  });

  it('does not where there are more answers than a report counts', () => {
    const [before, after] = two();
    const many = { asked: MOST_TOLD.count, firstAsked: MOST_TOLD.count, firstRight: 1 };
    expect(goesOn({ ...after, ...many }, { ...before, ...many })).toBe(true);
  });
});
