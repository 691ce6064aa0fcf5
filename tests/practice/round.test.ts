import { describe, expect, it } from 'vitest';
import { DAY } from '../../src/memory/day.ts';
import { emptyMemory, learn, type Memory, replay } from '../../src/memory/memory.ts';
import type { Item } from '../../src/practice/item.ts';
import { answerCard, caughtUp, metCard, nextCard } from '../../src/practice/next.ts';
import { spacer } from '../../src/practice/owed.ts';
import {
  canGoOn,
  cardsInOrder,
  type Goal,
  progress,
  type Round,
  secondsLeft,
  startRound,
} from '../../src/practice/round.ts';
import { readRound } from '../../src/practice/storedRound.ts';
import { summarise } from '../../src/practice/summary.ts';
import { reviewOf } from '../memory/reviews.ts';
import { itemOn } from './items.ts';

const MINUTE = 60_000;
const start = Date.UTC(2026, 10, 2, 18);

/** Every degree on two string sets. */
const items = ['5-4', '4-3'].flatMap((strings) =>
  [1, 2, 3, 4, 5, 6, 7].map((degree) => itemOn(degree, { strings })),
);

type Answers = (item: Item, count: number) => { right: boolean; takenFor: string | null };

interface Options {
  readonly memory?: Memory;
  readonly at?: number;
  readonly meets?: boolean;
  readonly some?: readonly Item[];
  /** After so many cards the device's clock goes back by an hour. */
  readonly setBack?: number;
}

/** Plays a round to its end, a card every ten seconds; `shown` are the cards in their order, met or asked. */
function play(goal: Goal, answers: Answers, options: Options = {}) {
  const { memory = emptyMemory(), at = start, meets = false, some = items, setBack } = options;
  let round: Round = startRound({ deck: 'lesson', goal, seed: 7, now: at, meets });
  const shown: { item: Item; seed: number; meet: boolean }[] = [];
  let [now, count] = [at, 0];
  for (let n = 1; shown.length < 300; n++) {
    const next = nextCard(round, some, memory, now);
    if (!next) break;
    shown.push({ item: next.item, seed: next.seed, meet: next.meet });
    if (shown.length === setBack) now -= 60 * MINUTE;
    now += 10_000;
    if (next.meet) round = metCard(next.round, now);
    else {
      const verdict = answers(next.item, count++);
      learn(memory, reviewOf({ n, item: next.item.id, at: now, seed: next.seed, ...verdict }));
      round = answerCard(next.round, some, verdict, now);
    }
    // A reload between any two cards changes nothing.
    round = readRound(JSON.parse(JSON.stringify(round)))!;
  }
  return { round, shown, memory, now };
}

const right: Answers = () => ({ right: true, takenFor: null });
const wrong: Answers = () => ({ right: false, takenFor: null });

/** Someone who has begun: a card of another lesson was answered. */
const begun = () => replay([reviewOf({ item: 'place:other', at: start - 1000 })]);

describe('a round', () => {
  it('asks every item once and then ends, the same from the same seed', () => {
    const { shown } = play({ cards: 50 }, right, { memory: begun() });
    expect(new Set(shown.map(({ item }) => item.id)).size).toBe(14);
    expect(shown).toHaveLength(14);
    expect(play({ cards: 50 }, right, { memory: begun() }).shown).toEqual(shown);
  });

  it('never asks the same degree twice running while there is another to ask', () => {
    const { shown } = play({ cards: 50 }, right, { memory: begun() });
    shown.slice(1).forEach(({ item }, k) => expect(item.degree).not.toBe(shown[k]!.item.degree));
  });

  it('asks a missed item again with two cards between, and missed again with nine', () => {
    const first: { id?: string } = {};
    const { shown } = play(
      { cards: 50 },
      (item, n) => {
        if (n === 0) first.id = item.id;
        return { right: item.id !== first.id || n > 4, takenFor: null };
      },
      { memory: begun() },
    );
    const places = shown.flatMap(({ item }, k) => (item.id === first.id ? [k] : []));
    expect(places).toEqual([0, 3, 13]);
  });

  it.each([Infinity, 1, 3, 10, 15])(
    'shows what was missed three times once more, and leaves it for another day after eight, the clock set back after %s',
    (setBack) => {
      const { shown } = play({ cards: 200 }, wrong, { memory: begun(), meets: true, setBack });
      for (const { id } of items) {
        const cards = shown.filter(({ item }) => item.id === id).map(({ meet }) => meet);
        if (cards.length > 0)
          expect(cards).toEqual([3, 3, 2].flatMap((asked) => [true, ...Array(asked).fill(false)]));
      }
      expect(new Set(shown.map(({ item }) => item.id)).size).toBeGreaterThan(5);
    },
  );

  it('counts its time, and mixes as well, where the clock is set back meanwhile', () => {
    for (const setBack of [1, 2, 3, 4, 5, 12]) {
      const { shown, round } = play({ minutes: 3 }, right, {
        memory: begun(),
        meets: true,
        setBack,
      });
      // The card on which it went back took no time, as far as can be told.
      expect(secondsLeft(round)).toBe(180 - 10 * (shown.length - 1));
      expect(secondsLeft(round)).toBeLessThan(40);
      shown.slice(1).forEach(({ item }, k) => expect(item.degree).not.toBe(shown[k]!.item.degree));
    }
  });

  it('leaves what was known before and is missed now to its gain', () => {
    const memory = begun();
    for (const { id } of items)
      for (const day of [9, 6, 3]) learn(memory, reviewOf({ item: id, at: start - day * DAY }));
    const { shown } = play({ cards: 50 }, wrong, { memory });
    expect(shown).toHaveLength(14);
  });

  it('asks what was taken for another with one card between, and only one such pair', () => {
    const mistaken: Answers = (item, n) =>
      n === 0 || n === 5
        ? { right: false, takenFor: String((item.degree % 7) + 1) }
        : { right: true, takenFor: null };
    const { shown, round } = play({ cards: 50 }, mistaken, { memory: begun() });
    const [first, , third, fourth] = shown.map(({ item }) => item);
    expect(third!.degree).toBe((first!.degree % 7) + 1);
    expect(third!.strings).toBe(first!.strings);
    expect(fourth).toEqual(first);
    expect(round.pairs).toBe(1);
  });

  it('waits for nothing that can no longer be asked', () => {
    const fresh = startRound({ deck: '', goal: { cards: 20 }, seed: 3, now: start, meets: false });
    const first = nextCard(fresh, items, emptyMemory(), start)!;
    const takenFor = String((first.item.degree % 7) + 1);
    const missed = answerCard(first.round, items, { right: false, takenFor }, start + 5000);
    expect(missed.owed).toHaveLength(2);
    const lost = new Set(missed.owed.map(({ item }) => item));
    const left = items.filter(({ id }) => !lost.has(id));
    let round = missed;
    for (let n = 0; n < 5; n++) {
      const next = nextCard(round, left, emptyMemory(), start + 6000)!;
      expect(lost.has(next.item.id)).toBe(false);
      round = answerCard(next.round, left, right(next.item, n), start + 7000 + n);
    }
  });

  it('ends by minutes, a pause left out, and says what is left of them', () => {
    const { round } = play({ minutes: 1 }, right);
    expect(round.asked).toHaveLength(6);
    expect([progress(round), secondsLeft(round)]).toEqual([1, 0]);
    const fresh = startRound({ deck: '', goal: { minutes: 1 }, seed: 1, now: 0, meets: false });
    expect([progress(fresh), secondsLeft(fresh)]).toEqual([0, 60]);
    const open = nextCard(fresh, items, emptyMemory(), 0)!;
    const late = answerCard(open.round, items, right(items[0]!, 0), 55 * MINUTE);
    expect(late.asked[0]!.seconds).toBe(45);
    expect(secondsLeft(late)).toBe(15);
    expect(secondsLeft({ ...fresh, goal: 'enough' })).toBeNull();
  });

  it.each([
    [{ cards: 8 }, 2, 30, 0.25],
    [{ cards: 2 }, 3, 30, 1],
    [{ minutes: 4 }, 2, 30, 0.25],
    [{ minutes: 1 }, 3, 30, 1],
    ['enough', 3, 30, 0.5],
  ] as [Goal, number, number, number][])(
    'of %o is, after %i cards of %i s, %f on its way',
    (goal, cards, seconds, share) => {
      const met = Array.from({ length: cards }, () => ({ item: 'a', after: 0, at: 0, seconds }));
      const { round } = play({ cards: 1 }, right, { memory: begun() });
      const asked = Array.from({ length: cards }, () => ({ ...round.asked[0]!, seconds }));
      const fresh = startRound({ deck: '', goal, seed: 1, now: 0 });
      expect(progress({ ...fresh, asked })).toBe(share);
      // What is shown takes its time, but is no card of the goal.
      expect(progress({ ...fresh, met })).toBe(goal !== 'enough' && 'cards' in goal ? 0 : share);
    },
  );

  it('is refused where it would have no length', () => {
    for (const goal of [{ cards: 0 }, { minutes: 0 }, { minutes: -1 }, { cards: NaN }])
      expect(() => startRound({ deck: '', goal, seed: 1, now: 0 })).toThrow(RangeError);
    expect(startRound({ deck: '', goal: { minutes: 0.5 }, seed: 1, now: 0 }).met).toEqual([]);
  });

  it('tells its cards in their order, shown or asked', () => {
    const { round } = play({ cards: 1 }, right, { memory: begun() });
    const asked = ['b', 'd', 'e'].map((item) => ({ ...round.asked[0]!, item }));
    const met = [
      ['a', 0],
      ['c', 1],
      ['f', 3],
      ['g', 3],
    ].map(([item, after]) => ({ item: String(item), after: Number(after), at: 0, seconds: 1 }));
    expect(
      cardsInOrder({ ...round, asked, met })
        .map(({ item }) => item)
        .join(''),
    ).toBe('abcdefg');
  });

  it('shows the open card again after a reload', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start, meets: false });
    const next = nextCard(fresh, items, emptyMemory(), start)!;
    const again = nextCard(next.round, items, emptyMemory(), start + MINUTE)!;
    expect(again).toEqual(next);
  });

  it('counts a card as answered whose answer was stored before the page was closed', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start, meets: false });
    const { round, item, seed } = nextCard(fresh, items, emptyMemory(), start)!;
    const answer = reviewOf({ item: item.id, seed, at: start + 5000, right: false, takenFor: '4' });
    const after = caughtUp(round, items, [answer]);
    expect(after).toEqual(answerCard(round, items, answer, answer.at));
    expect(caughtUp(after, items, [answer])).toEqual(after);
    expect(caughtUp(round, items, [{ ...answer, seed: seed + 2 }])).toEqual(round);
  });

  it('counts it so too where the clock was set back meanwhile', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start, meets: false });
    const { round, item, seed } = nextCard(fresh, items, emptyMemory(), start)!;
    const early = reviewOf({ item: item.id, seed, at: start - 40 * DAY, right: true });
    const others = [1, 2, 3].map((n) =>
      reviewOf({ n, item: items[n]!.id, seed: n, at: start - n }),
    );
    const after = caughtUp(round, items, [early, ...others]);
    expect(after.open).toBeNull();
    expect(after.asked).toHaveLength(1);
    expect(after.asked[0]!.seconds).toBe(0);
  });

  it('asks for near wrong answers, by an odd seed, once recall is .7', () => {
    const memory = begun();
    const { shown, now } = play({ cards: 14 }, right, { memory });
    expect(shown.every(({ seed }) => seed % 2 === 0)).toBe(true);
    for (const day of [1, 2, 4])
      for (const { id } of items) learn(memory, reviewOf({ item: id, at: now + day * DAY }));
    const next = play({ cards: 14 }, right, { memory, at: now + 5 * DAY });
    expect(next.shown.every(({ seed }) => seed % 2 === 1)).toBe(true);
  });

  it('is read as it was stored, and not at all where it is not whole', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start, meets: false });
    const { round } = nextCard(fresh, items, emptyMemory(), start)!;
    const asked = answerCard(round, items, { right: true, takenFor: null }, start + 9000);
    for (const one of [fresh, round, asked, { ...fresh, goal: 'enough' }]) {
      const stored: unknown = JSON.parse(JSON.stringify(one));
      expect(readRound(stored)).toEqual(one);
    }
    for (const name of Object.keys(round)) {
      expect(readRound({ ...round, [name]: undefined }), name).toBeNull();
    }
    for (const other of [
      null,
      5,
      'round',
      { deck: 'x' },
      { ...round, asked: [{}] },
      { ...round, asked: [null] },
    ]) {
      expect(readRound(other)).toBeNull();
    }
  });

  // Days end at four in the morning on the clock of the wall: minutes east of Greenwich, hours of UTC, whether it goes on.
  it.each([
    [0, 22, 27, true],
    [0, 22, 28, false],
    [600, 22, 29, true],
    [600, 17, 22, false],
    [-300, 20, 32, true],
    [-300, 20, 33, false],
    [330, 22, 23, false],
  ])('at %i minutes from UTC, begun at %i h, at %i h goes on: %s', (offset, from, now, goesOn) => {
    const hour = 3_600_000;
    const round = startRound({ deck: 'd', goal: { cards: 1 }, seed: 1, now: from * hour });
    expect(canGoOn(round, now * hour, offset)).toBe(goesOn);
  });

  it('goes on on the same day only', () => {
    const round = startRound({ deck: '', goal: 'enough', seed: 1, now: start, meets: false });
    expect(canGoOn(round, start + 9 * 60 * MINUTE, 0)).toBe(true);
    expect(canGoOn(round, start + 11 * 60 * MINUTE, 0)).toBe(false);
  });
});

describe('what is new', () => {
  it('is shown before it is asked, and asked two cards later', () => {
    const { shown } = play({ cards: 20 }, right, { meets: true });
    const ids = new Set(shown.map(({ item }) => item.id));
    for (const id of ids) {
      const places = shown.flatMap(({ item }, k) => (item.id === id ? [k] : []));
      expect(places.map((k) => shown[k]!.meet)).toEqual([true, false]);
      expect(places[1]! - places[0]!).toBe(2);
    }
  });

  it('is six to eight items in the first round of a beginner, each until it was right', () => {
    const met = (goal: Goal) =>
      new Set(play(goal, right, { meets: true }).shown.map(({ item }) => item.id)).size;
    expect(met({ minutes: 8 })).toBe(8);
    expect(met({ minutes: 3 })).toBe(6);
    expect(met({ minutes: 4 })).toBe(8);
    expect(met('enough')).toBe(8);
    expect(met({ cards: 20 })).toBe(8);
    expect(met({ cards: 5 })).toBe(5);
    // Everything is missed twice.
    const tries = new Map<string, number>();
    const misses: Answers = ({ id }) => {
      tries.set(id, (tries.get(id) ?? 0) + 1);
      return { right: tries.get(id)! > 2, takenFor: null };
    };
    const { round } = play({ minutes: 30 }, misses, { meets: true });
    const last = new Map(round.asked.map((asked) => [asked.item, asked.right]));
    expect(last.size).toBe(8);
    expect([...last.values()].every(Boolean)).toBe(true);
  });

  it('keeps two cards between what is missed over and over and itself, where two are known', () => {
    const some = items.slice(0, 5);
    const lost = some[3]!.id;
    const answers: Answers = ({ id }) => ({ right: id !== lost, takenFor: null });
    const { shown } = play({ cards: 40 }, answers, { memory: begun(), meets: true, some });
    const places = shown.flatMap(({ item, meet }, k) => (item.id === lost && !meet ? [k] : []));
    expect(places).toHaveLength(8);
    const gaps = places.slice(1).map((place, k) => place - places[k]!);
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(3);
  });

  // Cards by the place of their item, in their order; the last one was missed and is owed.
  it.each([
    ['0 1 2 3', 0],
    ['0 1 0 2 3', 1],
    ['0 1 0 1 2 3', 0],
    ['4 0 4x 1 2 3', 0],
    ['2 3', null],
    ['0x 1x 2 3', null],
    ['0 1 2 3', 1, 0],
  ])('puts between what was right longest ago: of %s %o', (cards, place, alsoOwed = 3) => {
    const fresh = startRound({ deck: '', goal: { cards: 40 }, seed: 3, now: start, meets: false });
    const all = cards.split(' ');
    const round = all.reduce((before, card, k) => {
      const item = items[Number(card[0])]!;
      const open = {
        item: item.id,
        seed: 2,
        isNew: false,
        recall: null,
        proven: true,
        meet: false,
      };
      const verdict = {
        right: !card.endsWith('x') && k < all.length - 1,
        takenFor: null,
      };
      return answerCard({ ...before, open }, items, verdict, start + k * 1000);
    }, fresh);
    const owed = [3, alsoOwed].map((one) => ({ item: items[one]!.id, from: 100 }));
    expect(spacer({ ...round, owed }, items)?.id).toBe(
      place === null ? undefined : items[place]!.id,
    );
  });

  it('does not ask the last one over and over where it never comes: it is left for another day', () => {
    const hopeless = items[3]!.id;
    const answers: Answers = ({ id }) => ({ right: id !== hopeless, takenFor: null });
    const some = items.slice(0, 7);
    const { round, memory } = play({ minutes: 30 }, answers, { meets: true, some });
    const misses = round.asked.filter(({ item }) => item === hopeless).length;
    expect(misses).toBeGreaterThanOrEqual(3);
    expect(misses).toBeLessThanOrEqual(8);
    expect(secondsLeft(round)).toBeGreaterThan(15 * 60);
    expect(summarise(round, some, memory).left.map(({ id }) => id)).toEqual([hopeless]);
    const known = play({ minutes: 30 }, right, { meets: true, some });
    expect(summarise(known.round, some, known.memory).left).toEqual([]);
  });

  it('waits where much is not known yet: the same few are shown and asked again', () => {
    const memory = emptyMemory();
    for (let day = 0; day < 6; day++)
      play({ minutes: 6 }, wrong, { memory, meets: true, at: start + day * DAY });
    expect(memory.items.size).toBeLessThanOrEqual(8);
    const later = play({ minutes: 6 }, wrong, { memory, meets: true, at: start + 7 * DAY });
    expect(later.shown[0]!.meet).toBe(true);
    expect(later.shown.filter(({ meet }) => meet).length).toBeGreaterThan(3);
  });

  it('is not begun when no time is left to ask it', () => {
    const { shown } = play({ minutes: 2 }, right, { meets: true, memory: begun() });
    const met = shown.filter(({ meet }) => meet).length;
    expect(shown.length - met).toBeGreaterThanOrEqual(met - 1);
  });

  it('enters no log: a card that is shown can be neither answered nor caught up with', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start });
    const { round, item, seed, meet } = nextCard(fresh, items, emptyMemory(), start)!;
    expect(meet).toBe(true);
    expect(() => answerCard(round, items, right(item, 0), start)).toThrow(Error);
    expect(caughtUp(round, items, [reviewOf({ item: item.id, seed })])).toBe(round);
    const after = metCard(round, start + 4000);
    expect(after).toMatchObject({ open: null, asked: [], met: [{ item: item.id, seconds: 4 }] });
    expect(() => metCard(after, start)).toThrow(Error);
  });
});
