/** What comes again in a round, and when. */
import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/practice/item.ts';
import { isLeft, nextOwed, owedAfterAnswer } from '../../src/practice/owed.ts';
import { type Asked, type Round, startRound } from '../../src/practice/round.ts';
import { itemOn, itemsUpTo } from './items.ts';

const items = itemsUpTo(3);
const [one, two, three] = items.map(({ id }) => id) as [string, string, string];

const open = (item: string, proven = false) => ({
  item,
  seed: 2,
  isNew: false,
  recall: null,
  proven,
  meet: false,
});
const missed = (item: string): Asked => ({
  ...open(item),
  right: false,
  shown: false,
  takenFor: null,
  given: null,
  at: 0,
  seconds: 5,
});
const round: Round = startRound({ deck: 'lesson', goal: { cards: 50 }, seed: 1, now: 0 });

describe('what comes again', () => {
  it('is what is due first, and none before its turn but where it is asked for early', () => {
    const asked = [missed(three), missed(three)];
    const owed = [
      { item: one, from: 9 },
      { item: two, from: 4 },
      { item: three, from: 6 },
    ];
    const next = (cards: number, early?: boolean) =>
      nextOwed({ ...round, owed, asked: asked.slice(0, cards) }, items, early)?.id;
    expect([next(2), next(2, true)]).toEqual([undefined, two]);
    const due = owed.map(({ item, from }) => ({ item, from: from - 4 }));
    expect(nextOwed({ ...round, asked, owed: due }, items)?.id).toBe(two);
  });

  it('is the next of it where what is due first can be asked no more', () => {
    const owed = [
      { item: two, from: 1 },
      { item: 'spot:gone', from: 0 },
    ];
    expect(nextOwed({ ...round, owed, asked: [missed(one)] }, items)?.id).toBe(two);
    expect(nextOwed({ ...round, owed: owed.slice(1) }, items, true)).toBeNull();
  });
});

describe('after a miss', () => {
  const missing = (item: string, asked: readonly Asked[], takenFor: string | null = null) =>
    owedAfterAnswer({ ...round, asked, open: open(item) }, items, { right: false, takenFor }).owed;

  it('two cards come between the first time, though others were missed before, then nine', () => {
    const others = [missed(two), missed(two), missed(three)];
    expect(missing(one, others)).toEqual([{ item: one, from: 6 }]);
    expect(missing(one, [...others, missed(one)])).toEqual([{ item: one, from: 14 }]);
  });

  it('is for another day at the eighth of its own', () => {
    const misses = (count: number) => Array.from({ length: count }, () => missed(one));
    const left = (asked: readonly Asked[]) => isLeft({ ...round, asked }, one);
    expect([[], misses(7), [...misses(7), missed(two)], misses(8)].map(left)).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });

  // What was answered, of items on the first three degrees.
  it.each([
    [one, '2', two],
    [two, '1', one],
    [three, '2', two],
    [two, '2', null],
    [two, '7', null],
    [two, null, null],
    [two, '5 9', null],
    ['spot:gone', '1', null],
  ])('of %s taken for %s a pair is made with %s', (item, takenFor, other) => {
    const [first] = missing(item, [], takenFor);
    expect(first).toEqual(other === null ? { item, from: 3 } : { item: other, from: 2 });
  });

  it('a path is read by the size of the item that was asked', () => {
    const heard = (degree: number, size: Item['size'] = 'triad') =>
      itemOn(degree, { kind: 'trace', size });
    // Of a seventh the four notes tell, of a triad the first three.
    const some = [heard(2, 'seventh'), heard(2), heard(4)];
    const taken = { right: false, takenFor: '4 6 1 4' };
    const [first] = owedAfterAnswer({ ...round, open: open(some[1]!.id) }, some, taken).owed;
    expect(first!.item).toBe(some[2]!.id);
  });
});
