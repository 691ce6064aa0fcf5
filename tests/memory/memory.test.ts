import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { learn, type Memory, emptyMemory, recall, replay } from '../../src/memory/memory.ts';
import { DAY, localDay } from '../../src/memory/day.ts';
import { tomorrowMorning } from '../../src/memory/morning.ts';
import { guessOf } from '../../src/decks/kinds.ts';
import type { Review } from '../../src/store/review.ts';
import { anyReview } from '../store/reviews.ts';
import { reviewOf } from './reviews.ts';

const NOON = Date.UTC(2026, 2, 2, 12);
const ITEM = reviewOf({}).item;

/** Reviews of one item, right, on these days from the first. */
const onDays = (days: readonly number[]): Review[] =>
  days.map((day, k) => reviewOf({ n: k + 1, at: NOON + day * DAY }));

describe('the memory', () => {
  it('knows nothing of what was never asked', () => {
    expect(recall(emptyMemory(), ITEM, NOON)).toBeNull();
  });

  it('counts right answers in a row, one a day, and begins again after a wrong one', () => {
    // The day, the answer, and the counts after it. A quarter of an hour is not apart enough to count.
    const answers: [
      day: number,
      right: boolean,
      row: number,
      firsts: number,
      firstsRight: number,
    ][] = [
      [0, true, 1, 1, 1],
      [2, true, 2, 2, 2],
      [2.01, true, 2, 2, 2],
      [5, true, 3, 3, 3],
      [5.01, false, 0, 3, 3],
      [8, true, 1, 4, 4],
      [12, false, 0, 5, 4],
      [16, true, 1, 6, 5],
    ];
    const memory = replay([]);
    const found = answers.map(([day, right], k) => {
      learn(memory, reviewOf({ n: k + 1, at: NOON + day * DAY, right }));
      const { row, firsts, firstsRight } = memory.items.get(ITEM)!;
      return [row, firsts, firstsRight];
    });
    expect(found).toEqual(answers.map(([, , ...counts]) => counts));
    expect(memory.items.get(ITEM)).toMatchObject({ asked: 8, right: 6, lastRight: true });
    expect(memory).toMatchObject({ asked: 8, firsts: 1, firstsRight: 1 });
  });

  it('keeps of answers half a day apart what was foretold of them, a lucky guess counted in', () => {
    const memory = replay(onDays([0, 0.4999]));
    expect([emptyMemory().trials, memory.trials]).toEqual([[], []]);
    for (const [item, right] of [
      [ITEM, true],
      [ITEM, false],
      ['place:x', true],
      ['place:x', false],
    ] as const) {
      const before = replay([...onDays([0]), reviewOf({ item: 'place:x', n: 2, at: NOON })]);
      const at = NOON + DAY / 2;
      const guess = guessOf(item.split(':')[0]!);
      const chance = guess + (1 - guess) * recall(before, item, at)!;
      learn(before, reviewOf({ item, n: 3, at, right }));
      expect(before.trials).toEqual([{ foretold: expect.closeTo(chance, 12), right }]);
    }
  });

  it('has a pace for each kind of card, from all its answers', () => {
    const memory = replay(
      ['spot:1', 'place:1', 'spot:2', 'spot:1'].map((item, n) =>
        reviewOf({ n, item, at: NOON + n, ms: 1000 * (n + 1) }),
      ),
    );
    const seconds = (kind: string) => memory.paces.get(kind)!.right.map((one) => one.seconds);
    expect([seconds('spot'), seconds('place')]).toEqual([[1, 3, 4], [2]]);
  });

  it('rises with every right answer on another day, and fades', () => {
    const chances = [[0], [0, 2], [0, 2, 7]].map((days) =>
      recall(replay(onDays(days)), ITEM, NOON + 10 * DAY)!,
    );
    expect(chances).toEqual(chances.toSorted((a, b) => a - b));
    const memory = replay(onDays([0, 2, 7]));
    const later = [8, 12, 30, 90].map((day) => recall(memory, ITEM, NOON + day * DAY)!);
    expect(later).toEqual(later.toSorted((a, b) => b - a));
    expect(later[0]! - later[3]!).toBeGreaterThan(0.2);
  });

  it('gives an item never answered right no more than the chance of guessing it', () => {
    const kinds = ['spot', 'place', 'trace', 'outline', 'follow', 'order', 'vary', 'fill'];
    for (const kind of kinds) {
      const item = `${kind}:x`;
      const wrong = [0, 1, 2].map((n) => reviewOf({ n, item, at: NOON + n * DAY, right: false }));
      for (const later of [1000, DAY, 7 * DAY]) {
        const chance = recall(replay(wrong), item, NOON + 2 * DAY + later)!;
        expect(chance).toBeLessThanOrEqual(guessOf(kind));
      }
      const right = reviewOf({ n: 3, item, at: NOON + 3 * DAY });
      expect(recall(replay([...wrong, right]), item, NOON + 3 * DAY + 60_000)).toBeGreaterThan(0.3);
    }
  });

  it('counts on more from who practised since, though something else', () => {
    const alone = replay([reviewOf({ n: 1, at: NOON })]);
    const since = replay([
      reviewOf({ n: 1, at: NOON }),
      reviewOf({ n: 2, item: 'spot:Bb major:5:triad:guitar:5-4:1-5', at: NOON + 9 * DAY }),
    ]);
    const [idle, busy] = [alone, since].map((of) => recall(of, ITEM, NOON + 10 * DAY)!);
    expect(busy! - idle!).toBeGreaterThan(0.01);
  });

  it('learns of a student who forgets sooner than others', () => {
    const items = Array.from({ length: 30 }, (_, k) => `place:${k}`);
    const log = (right: boolean) =>
      [0, 5, 10, 15].flatMap((day) =>
        items.map((item, k) =>
          reviewOf({ n: day * 30 + k, item, at: NOON + day * DAY + k, right: day === 0 || right }),
        ),
      );
    const [holds, forgets] = [true, false].map((right) =>
      recall(replay(log(right)), items[0]!, NOON + 20 * DAY)!,
    );
    expect(holds! - forgets!).toBeGreaterThan(0.4);
  });

  it('is the same in whatever parts the log is replayed', () => {
    fc.assert(
      fc.property(fc.array(anyReview, { maxLength: 40 }), fc.nat(40), (reviews, at) => {
        const memory = replay(reviews.slice(0, at));
        for (const review of reviews.slice(at)) learn(memory, review);
        expect(memory).toEqual(replay(reviews));
      }),
    );
  });

  it('stays within its bounds whatever the log says', () => {
    fc.assert(
      fc.property(fc.array(anyReview, { maxLength: 60 }), fc.nat(8.64e15), (reviews, now) => {
        const memory = replay(reviews);
        for (const [id, known] of memory.items) {
          const value = recall(memory, id, now)!;
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(1);
          expect(memory.leanings.every(Number.isFinite)).toBe(true);
          expect(Number.isFinite(known.ease.mean) && known.ease.variance > 0).toBe(true);
          expect(known.imprints.every(Number.isFinite)).toBe(true);
        }
      }),
    );
  });

  it('keeps what an item was taken for, and how often', () => {
    const wrong = [4, 4, 6].map((degree, n) =>
      reviewOf({ n, at: NOON + n, right: false, takenFor: String(degree) }),
    );
    expect([...replay(wrong).items.get(ITEM)!.takenFor]).toEqual([
      ['4', 2],
      ['6', 1],
    ]);
    const right = [1, 2].map((n) => reviewOf({ n, at: NOON + n }));
    expect(replay([...wrong, ...right]).items.get(ITEM)!.takenFor.size).toBe(2);
    expect(replay(right).items.get(ITEM)!.takenFor.size).toBe(0);
  });

  it('takes an item named after what every object has for one of no known kind', () => {
    for (const item of ['constructor', '__proto__', 'toString', 'hasOwnProperty:C major:1']) {
      const memory = replay([reviewOf({ item }), reviewOf({ item, n: 2, at: DAY, right: false })]);
      expect(recall(memory, item, 2 * DAY)).toBeGreaterThanOrEqual(0);
      expect(memory.ease.mean).not.toBeNaN();
    }
  });

  it("leaves the page's dates as they were", () => {
    const added: string[] = [];
    for (const name in new Date()) added.push(name);
    expect(added).toEqual([]);
  });
});

describe('a clock that is wrong for a while', () => {
  const YEAR = 365 * DAY;
  /** Two items by turns every day for twenty days, the clock of the middle ten off by so much. */
  const log = (off: number): Review[] =>
    Array.from({ length: 20 }, (_, day) =>
      ['one', 'two'].map((item, k) =>
        reviewOf({
          n: 2 * day + k + 1,
          item: `spot:${item}`,
          at: NOON + day * DAY + k * 60_000 + (day >= 5 && day < 15 ? off : 0),
        }),
      ),
    ).flat();
  const eases = (memory: Memory) => [...memory.items.values()].map(({ ease }) => ease.mean);
  const soon = NOON + 25 * DAY;

  it.each([
    ['a year behind', -YEAR],
    ['an hour behind', -3_600_000],
    ['a year ahead', YEAR],
    ['an hour ahead', 3_600_000],
  ])('%s, leaves no such time in what is remembered', (_, off) => {
    const [right, wrong] = [replay(log(0)), replay(log(off))];
    eases(wrong).forEach((ease, k) => expect(ease).toBeCloseTo(eases(right)[k]!, 0));
    for (const item of right.items.keys()) {
      expect(recall(wrong, item, soon)!).toBeCloseTo(recall(right, item, soon)!, 1);
    }
  });

  // Days on the device's clock, and then on the memory's: how far it was set back, and what is taken off since it was set right.
  it('goes on from where it was once it was set right again, as if there had been no leap', () => {
    const steps: [device: number, clock: number, owed: number, shift: number][] = [
      [100, 100, 0, 0],
      [101, 101, 0, 0],
      [71, 71, 30, 0],
      [72, 72, 30, 0],
      [101.5, 101.5, 30, 0],
      [132, 102, 0, -30],
      [133, 103, 0, -30],
      [60, 30, 73, -30],
      [134, 31, 0, -103],
      [138, 35, 0, -103],
      [137, 34, 1, -103],
      [138, 34, 0, -104],
      [138, 34, 0, -104],
      [142, 38, 0, -104],
    ];
    const memory = replay([]);
    steps.forEach(([device, clock, owed, shift], n) => {
      learn(memory, reviewOf({ n, item: `spot:${n}`, at: device * DAY }));
      const found = [memory.clock, memory.owed, memory.shift].map((ms) => ms / DAY);
      expect(found, `day ${device}`).toEqual([clock, owed, shift]);
    });
    // What was asked last is as if it had just been asked.
    const just = replay([reviewOf({ n: 1, item: 'spot:13', at: 142 * DAY })]);
    for (const days of [0.1, 1, 9]) {
      const at = (142 + days) * DAY;
      expect(memory.items.get('spot:13')!.last + days * DAY).toBe(at + memory.shift);
      expect(Math.abs(recall(memory, 'spot:13', at)! - recall(just, 'spot:13', at)!)).toBeLessThan(
        0.05,
      );
    }
  });

  it('takes nothing for asked later than now once the clock was set back', () => {
    const [yesterday, ahead] = [NOON - DAY, NOON + YEAR];
    const memory = replay([
      reviewOf({ n: 1, item: 'spot:one', at: yesterday }),
      reviewOf({ n: 2, item: 'spot:one', at: ahead }),
      reviewOf({ n: 3, item: 'spot:two', at: NOON }),
    ]);
    const { first, last, imprints } = memory.items.get('spot:one')!;
    expect([first, last, imprints[0], imprints[3]]).toEqual([yesterday, NOON, yesterday, NOON]);
    expect(memory.clock).toBe(NOON);
  });

  it('counts the day by the local clock, from four in the morning', () => {
    const lateEvening = Date.UTC(2026, 2, 3, 1);
    expect(localDay(lateEvening, 60)).toBe(localDay(NOON, 60));
    expect(localDay(lateEvening, 180)).toBe(localDay(NOON, 180) + 1);
  });

  it('does not heed the time zone or daylight saving', () => {
    const moved = log(0).map((review, k) => ({ ...review, offset: k < 20 ? -480 : 540 }));
    expect(eases(replay(moved))).toEqual(eases(replay(log(0))));
  });
});

describe('tomorrow morning', () => {
  it('is eight o’clock after the night, also for who is up past midnight', () => {
    const evening = Date.UTC(2026, 2, 2, 20);
    const night = Date.UTC(2026, 2, 3, 1);
    for (const now of [NOON, evening, night])
      expect(tomorrowMorning(now, 60)).toBe(Date.UTC(2026, 2, 3, 7));
  });
});
