import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemOf } from '../../src/cards/index.ts';
import { trace as traceKind } from '../../src/cards/trace/index.ts';
import { learn, emptyMemory, recall, replay } from '../../src/memory/memory.ts';
import { DAY } from '../../src/memory/day.ts';
import { noPace } from '../../src/memory/pace.ts';
import { degreeAnswered } from '../../src/practice/degreeAnswered.ts';
import { confusions } from '../../src/practice/confusions.ts';
import { type Item, itemDegree } from '../../src/practice/item.ts';
import { shareOf } from '../../src/practice/known.ts';
import { leastSure, readiness } from '../../src/practice/readiness.ts';
import { placesKnown, sharesBy, usualSeconds } from '../../src/practice/shares.ts';
import { recallByDay } from '../../src/practice/weeks.ts';
import type { Size } from '../../src/theory/chord.ts';
import { itemIn } from '../cards/items.ts';
import { reviewOf } from '../memory/reviews.ts';

const start = Date.UTC(2026, 10, 2, 18);
const spot = (degree: number, strings = '5-4') =>
  itemOf(`spot:Bb major:${degree}:triad:guitar:${strings}:1-7`)!;
const trace = (degree: number, size: Size = 'triad', contour = 'up') =>
  itemIn(traceKind, `trace:Bb major:${degree}:${size}:guitar:${contour}:72`)!;

const items = [1, 2, 3, 4].flatMap((degree) => [spot(degree), spot(degree, '4-3')]);
const reviews = [
  reviewOf({ n: 1, at: start, item: items[0]!.id }),
  reviewOf({ n: 2, at: start + 60_000, item: items[1]!.id, right: false, takenFor: '3' }),
  reviewOf({ n: 3, at: start + DAY, item: items[2]!.id }),
];
const memory = replay(reviews);

describe('how much is known', () => {
  it('is the mean recall, what was never asked counting as not known', () => {
    const now = start + 2 * DAY;
    const share = shareOf(items, memory, now);
    expect(share).toMatchObject({ asked: 3, of: 8 });
    const each = items.map(({ id }) => recall(memory, id, now) ?? 0);
    expect(share.recall).toBeCloseTo(each.reduce((sum, one) => sum + one, 0) / 8, 12);
    expect(shareOf([], memory, now)).toEqual({ recall: 0, asked: 0, of: 0 });
  });

  it('is told of each degree that there is, and how many of all were asked', () => {
    const now = start + 2 * DAY;
    const { overall, byDegree, asked, of } = readiness(items, memory, now);
    expect([overall, asked, of]).toEqual([shareOf(items, memory, now).recall, 3, 8]);
    expect(byDegree).toEqual(
      [1, 2, 3, 4, 5, 6, 7].map((degree) => {
        const some = items.filter((item) => item.degree === degree);
        return degree > 4 ? null : shareOf(some, memory, now).recall;
      }),
    );
    expect(readiness([], memory, now)).toMatchObject({ overall: 0, asked: 0, of: 0 });
  });

  it('is least sure of what is least likely to be known, of what was asked', () => {
    const now = start + 2 * DAY;
    const chances = [0, 1, 2].map((k) => recall(memory, items[k]!.id, now)!);
    expect(chances[1]).toBeLessThan(chances[0]!);
    expect(chances[0]).toBeLessThan(chances[2]!);
    const least = (count: number) =>
      leastSure(items, memory, now, count).map((item) => items.indexOf(item));
    expect([9, 2, 0].map(least)).toEqual([[1, 0, 2], [1, 0], []]);
  });

  it('of groups makes up what is known of all of them', () => {
    const now = start + 3 * DAY;
    const groups = sharesBy(items, ({ strings }) => strings, memory, now);
    expect([...groups.keys()]).toEqual(['5-4', '4-3']);
    const sum = [...groups.values()].reduce((all, { recall: one, of }) => all + one * of, 0);
    expect(sum / items.length).toBeCloseTo(shareOf(items, memory, now).recall, 12);
  });

  it('of a place is that of the items it belongs to, each once', () => {
    const place = { string: 5, fret: 3 };
    const other = { string: 4, fret: 1 };
    const known = placesKnown(
      [
        { id: items[0]!.id, places: [place, place, other] },
        { id: items[3]!.id, places: [place] },
      ],
      memory,
      start + 2 * DAY,
    );
    const asked = recall(memory, items[0]!.id, start + 2 * DAY)!;
    expect(known).toEqual([
      { ...place, recall: asked / 2, asked: 1, of: 2 },
      { ...other, recall: asked, asked: 1, of: 1 },
    ]);
  });

  it('tells a pace from five right answers on, the middle one', () => {
    const right = [3, 9, 4, 5].map((seconds) => ({ seconds, taps: 1 }));
    expect(usualSeconds({ ...noPace, right })).toBeNull();
    expect(usualSeconds({ ...noPace, right: [...right, { seconds: 30, taps: 1 }] })).toBe(5);
  });
});

describe('what is taken for what', () => {
  it('is counted over string sets and contours, the most frequent first', () => {
    const of = emptyMemory();
    const misses = [
      [spot(2), '4'],
      [spot(2, '4-3'), '4'],
      [spot(5), '3'],
      [trace(2), '4 6 1 4 6 1'],
      [trace(2, 'triad', 'down'), '1 6 4'],
      [trace(2), '4 6 1'],
    ] as const;
    misses.forEach(([{ id }, takenFor], k) =>
      learn(of, reviewOf({ n: k + 1, item: id, at: start + k, right: false, takenFor })),
    );
    const all = [spot(2), spot(2, '4-3'), spot(5), trace(2), trace(2, 'triad', 'down')];
    expect(confusions(all, of)).toEqual([
      { kind: 'trace', size: 'triad', degree: 2, takenFor: 4, times: 3 },
      { kind: 'spot', size: 'triad', degree: 2, takenFor: 4, times: 2 },
      { kind: 'spot', size: 'triad', degree: 5, takenFor: 3, times: 1 },
    ]);
    expect(confusions([spot(5)], of)).toHaveLength(1);
    expect(confusions([spot(7), spot(5)], of)).toHaveLength(1);
  });

  it('is told of no kind whose answers name no arpeggio', () => {
    const order: Item = { ...spot(2), id: 'order:Bb major:2:triad:guitar:x', kind: 'order' };
    const of = replay([reviewOf({ item: order.id, right: false, takenFor: '4' })]);
    expect(confusions([order], of)).toEqual([]);
    expect(confusions([{ ...order, kind: 'spot' }], of)).toHaveLength(1);
  });

  it('is in the order of the degrees asked, then of those answered, where it was as often', () => {
    const of = emptyMemory();
    const misses = [
      [spot(5), '1'],
      [spot(2), '7'],
      [spot(2), '3'],
      [spot(4), '6'],
      [spot(4), '6'],
    ] as const;
    misses.forEach(([{ id }, takenFor], k) =>
      learn(of, reviewOf({ n: k + 1, item: id, at: start + k, right: false, takenFor })),
    );
    const told = confusions([spot(5), spot(4), spot(2)], of);
    expect(told.map(({ degree, takenFor }) => [degree, takenFor])).toEqual([
      [4, 6],
      [2, 3],
      [2, 7],
      [5, 1],
    ]);
  });

  it('leaves out a path that begins with the right arpeggio and one that begins with none', () => {
    const of = emptyMemory();
    for (const [k, takenFor] of ['2 4 6 5 7 1', '2 3 5', '2 4 2'].entries())
      learn(of, reviewOf({ n: k + 1, item: trace(2).id, at: start + k, right: false, takenFor }));
    expect(confusions([trace(2)], of)).toEqual([]);
  });

  it('reads the arpeggio of a triad or seventh from any phrase that walks three of its notes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }),
        fc.constantFrom<Size>('triad', 'seventh'),
        fc.constantFrom('up', 'down', 'skip'),
        fc.nat(),
        (degree, size, contour, seed) => {
          const card = traceKind.ask(trace(degree, size, contour), seed * 2);
          expect(degreeAnswered(card.path, size)).toBe(degree);
        },
      ),
    );
  });

  it('reads two notes a fourth apart as root and fifth, and does not guess at a third', () => {
    expect(degreeAnswered('5 1 5', 'triad')).toBe(1);
    expect(degreeAnswered('1 3 1', 'triad')).toBeNull();
    expect(degreeAnswered('6', 'ninth')).toBe(6);
    // Of a ninth all six notes tell: the first four alone would be of vii, 7 9.
    expect(degreeAnswered('7 1 7 1 3 2', 'ninth')).toBe(1);
    expect(degreeAnswered('7 1 7 1', 'ninth')).toBe(7);
  });
});

describe('recall over the weeks', () => {
  it('is there for the morning after every day since the first answer, practised or not, tomorrow the last', () => {
    const now = start + 4 * DAY;
    const days = recallByDay(reviews, items, now, 60);
    expect(days).toHaveLength(5);
    // Eight in the morning after each, local time, an hour ahead of UTC.
    expect(days.map(({ at }) => at)).toEqual(
      [3, 4, 5, 6, 7].map((day) => Date.UTC(2026, 10, day, 7)),
    );
    const known = (upTo: number, at: number) =>
      shareOf(items, replay(reviews.slice(0, upTo)), at).recall;
    expect(days.map(({ recall: value }) => value)).toEqual([
      known(2, days[0]!.at),
      known(3, days[1]!.at),
      known(3, days[2]!.at),
      known(3, days[3]!.at),
      known(3, days[4]!.at),
    ]);
  });

  it('is nothing before one of the items was asked', () => {
    expect(recallByDay(reviews, [spot(7)], start + DAY, 0)).toEqual([]);
  });

  it('over a long time keeps days that lie whole weeks apart', () => {
    const year = Array.from({ length: 400 }, (_, k) =>
      reviewOf({ n: k + 1, at: start + k * DAY, item: items[k % items.length]!.id }),
    );
    const days = recallByDay(year, items, start + 400 * DAY, 0);
    expect(days.length).toBeLessThan(60);
    const gaps = days.slice(1, -1).map(({ at }, k) => (at - days[k]!.at) / DAY);
    expect(new Set(gaps)).toEqual(new Set([14]));
  });

  it('stays bounded and between 0 and 1 whatever the clock does', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 2e12 }), fc.boolean()), { maxLength: 20 }),
        fc.integer({ min: 0, max: 2e12 }),
        (answers, now) => {
          const log = answers.map(([at, right], k) =>
            reviewOf({ n: k + 1, at, right, item: items[k % items.length]!.id }),
          );
          const days = recallByDay(log, items, now, -330);
          expect(days.length).toBeLessThan(60);
          for (const { recall: value } of days) {
            expect(value).toBeGreaterThanOrEqual(0);
            expect(value).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });
});

it('what asks for time alone stands on no degree, and anything else on its own', () => {
  expect(itemDegree({ kind: 'pulse', degree: 1 })).toBeNull();
  for (const kind of ['spot', 'play', 'echo', 'fill'] as const)
    expect(itemDegree({ kind, degree: 4 })).toBe(4);
});
