/** What one step of a round makes of it: which card is next, and what an answer leaves. */
import { describe, expect, it } from 'vitest';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, type Memory, replay } from '../../src/memory/memory.ts';
import { answerCard, caughtUp, metCard, nextCard, undecidedCard } from '../../src/practice/next.ts';
import { type Asked, type Goal, type Round, startRound } from '../../src/practice/round.ts';
import { reviewOf } from '../memory/reviews.ts';
import { itemsUpTo } from './items.ts';

const items = itemsUpTo(7);
const idOf = (degree: number) => items[degree - 1]!.id;

const started = (goal: Goal = { cards: 20 }, meets = true): Round =>
  startRound({ deck: 'lesson', goal, seed: 7, now: 0, meets });
const opened = (degree: number, seed = 2) => ({
  item: idOf(degree),
  seed,
  isNew: false,
  recall: 0.5,
  proven: false,
  meet: false,
});
const answered = (degree: number, right: boolean, seconds = 10): Asked => ({
  ...opened(degree),
  right,
  shown: false,
  takenFor: null,
  given: null,
  at: 0,
  seconds,
});
const missed = { right: false, takenFor: null };

/** What is left of so many right answers to an item, then so many wrong ones. */
const after = (degree: number, right: number, wrong: number): Memory =>
  replay(
    Array.from({ length: right + wrong }, (_, n) =>
      reviewOf({ n, item: idOf(degree), at: n, right: n < right }),
    ),
  );

describe('the open card', () => {
  it('stays the card, whatever was answered meanwhile', () => {
    const memory = after(2, 3, 0);
    for (const [degree, meet] of [
      [1, true],
      [4, false],
      [7, false],
    ] as const) {
      const round = { ...started(), open: { ...opened(degree, 90 + degree), meet } };
      const next = nextCard(round, items, memory, DAY);
      expect(next).toEqual({ round, item: items[degree - 1], seed: 90 + degree, meet });
    }
  });

  it('gives way where its item is asked no more', () => {
    const round = { ...started(), open: opened(4, 91) };
    const left = items.filter(({ degree }) => degree !== 4);
    const next = nextCard(round, left, emptyMemory(), 0)!;
    expect(left).toContain(next.item);
    expect(next.round.open).toMatchObject({ item: next.item.id, seed: next.seed });
  });

  it('is answered by what was answered to it, not by another with its seed', () => {
    const round = { ...started(), open: opened(4) };
    const reviews = [
      reviewOf({ n: 1, item: idOf(4), seed: 2, at: 4000 }),
      reviewOf({ n: 2, item: idOf(5), seed: 2, at: 9000, right: false, takenFor: '1' }),
    ];
    expect(caughtUp(round, items, reviews).asked).toEqual([
      { ...answered(4, true, 4), at: 4000, shown: false },
    ]);
  });
});

describe('a round ends', () => {
  // Seven items, all known for long: nothing is worth its seconds.
  const known = replay(
    [0, 1, 3, 7, 14, 28].flatMap((day) =>
      items.map(({ id }, n) => reviewOf({ n, item: id, at: day * DAY + n })),
    ),
  );
  const soon = 28 * DAY + 3_600_000;

  it.each<[Goal, Memory, boolean]>([
    ['enough', known, false],
    ['enough', emptyMemory(), true],
    ['enough', after(1, 1, 0), true],
    [{ cards: 20 }, known, true],
    [{ minutes: 5 }, known, true],
  ])('of %o as soon as that is reached, and not before (case %#)', (goal, memory, goesOn) => {
    expect(nextCard(started(goal), items, memory, soon) !== null).toBe(goesOn);
  });

  it.each<[Goal, number, number, boolean]>([
    [{ cards: 3 }, 2, 300, true],
    [{ cards: 3 }, 3, 1, false],
    [{ minutes: 1 }, 5, 10, true],
    [{ minutes: 1 }, 6, 10, false],
    [{ minutes: 1 }, 2, 30, false],
    ['enough', 60, 30, true],
  ])('of %o: after %i cards of %i s goes on: %s', (goal, cards, seconds, goesOn) => {
    const asked = Array.from({ length: cards }, () => answered(1, true, seconds));
    const owed = [{ item: idOf(5), from: 0 }];
    expect(nextCard({ ...started(goal), asked, owed }, items, emptyMemory(), 0) !== null).toBe(
      goesOn,
    );
  });
});

describe('an item is shown before it is asked', () => {
  const drawn = (round: Round, memory: Memory) =>
    nextCard({ ...round, owed: [{ item: idOf(3), from: 0 }] }, items, memory, 1000)!;

  // Answers that it had in all, right then wrong.
  it.each([
    [0, 0, true],
    [0, 1, false],
    [0, 2, false],
    [0, 3, true],
    [0, 4, true],
    [1, 0, false],
    [1, 5, false],
    [4, 0, false],
  ])('after %i right and %i wrong answers: %s', (right, wrong, meet) => {
    const memory = after(3, right, wrong);
    expect(drawn(started(), memory).meet).toBe(meet);
    expect(drawn(started({ cards: 20 }, false), memory).meet).toBe(false);
  });

  it.each([
    [2, false],
    [3, true],
  ])('also one known before that was missed %i times in this round: %s', (misses, meet) => {
    const others = [answered(1, false), answered(2, false), answered(1, false)];
    const asked = [...others, ...Array.from({ length: misses }, () => answered(3, false))];
    expect(drawn({ ...started(), asked }, after(3, 1, 2)).meet).toBe(meet);
  });
});

describe('a miss need not come back', () => {
  const proven = (memory: Memory, now: number, some = items.slice(0, 2)) =>
    nextCard({ ...started(), owed: [{ item: idOf(1), from: 0 }] }, some, memory, now)!.round.open!
      .proven;

  it('once anything of the deck was begun a week ago, all else being new', () => {
    const memory = after(2, 0, 1);
    expect([6, 8].map((day) => proven(memory, day * DAY))).toEqual([false, true]);
    expect(proven(memory, 8 * DAY, items.slice(0, 1))).toBe(false);
  });

  it('by the clock as it is believed, not as the device has it', () => {
    const memory = after(2, 0, 1);
    expect(proven({ ...memory, shift: -30 * DAY }, 31 * DAY)).toBe(false);
    expect(proven({ ...memory, shift: 30 * DAY }, 1000)).toBe(true);
    expect(proven({ ...emptyMemory(), shift: 30 * DAY }, 1000)).toBe(false);
  });
});

describe('what is done with a card', () => {
  it('that was right leaves what is owed, and how many pairs there were', () => {
    const owed = [{ item: idOf(2), from: 9 }];
    const round = { ...started(), open: opened(3), owed, pairs: 1 };
    expect(answerCard(round, items, { right: true, takenFor: null }, 3000)).toEqual({
      ...round,
      open: null,
      asked: [{ ...answered(3, true, 3), at: 3000 }],
    });
  });

  it('that was near is as if it had not been asked, and is asked again two cards later', () => {
    const owed = [{ item: idOf(2), from: 9 }];
    const asked = [answered(1, true), answered(2, false)];
    const round = { ...started(), asked, owed, open: opened(3) };
    expect(undecidedCard(round)).toEqual({
      ...round,
      open: null,
      owed: [...owed, { item: idOf(3), from: 4 }],
    });
  });

  it('is refused where none is open, or the wrong one', () => {
    const shown = { ...started(), open: { ...opened(3), meet: true } };
    for (const round of [started(), shown]) {
      const refused = 'There is no open card to answer.';
      expect(() => answerCard(round, items, missed, 0)).toThrow(refused);
      expect(() => undecidedCard(round)).toThrow(refused);
    }
    for (const round of [started(), { ...started(), open: opened(3) }])
      expect(() => metCard(round, 0)).toThrow('There is no card being shown.');
  });
});
