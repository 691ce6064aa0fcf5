import { describe, expect, it } from 'vitest';
import { learn, emptyMemory } from '../../src/memory/memory.ts';
import type { Item } from '../../src/practice/item.ts';
import {
  answerCard,
  canGoOn,
  caughtUp,
  type Goal,
  nextCard,
  progress,
  type Round,
  startRound,
} from '../../src/practice/round.ts';
import { readRound } from '../../src/practice/storedRound.ts';
import { reviewOf } from '../memory/reviews.ts';

const MINUTE = 60_000;
const start = Date.UTC(2026, 10, 2, 18);

/** Every degree on two string sets. */
const items: Item[] = ['5-4', '4-3'].flatMap((strings) =>
  [1, 2, 3, 4, 5, 6, 7].map((degree) => ({
    id: `spot:Bb major:${degree}:triad:guitar:${strings}:1-5`,
    kind: 'spot',
    key: { tonic: 'Bb', scale: 'major' },
    size: 'triad',
    degree,
    strings,
  })),
);

type Answers = (item: Item, count: number) => { right: boolean; takenFor: string | null };

/** Plays a round to its end, a card every ten seconds. */
function play(goal: Goal, answers: Answers, memory = emptyMemory(), at = start) {
  let round: Round = startRound({ deck: 'lesson', goal, seed: 7, now: at });
  const shown: { item: Item; seed: number }[] = [];
  let now = at;
  for (let n = 1; shown.length < 200; n++) {
    const next = nextCard(round, items, memory, now);
    if (!next) break;
    shown.push({ item: next.item, seed: next.seed });
    const verdict = answers(next.item, shown.length - 1);
    now += 10_000;
    learn(memory, reviewOf({ n, item: next.item.id, at: now, ...verdict }));
    // A reload between any two cards changes nothing.
    round = JSON.parse(JSON.stringify(answerCard(next.round, items, verdict, now))) as Round;
  }
  return { round, shown, memory, now };
}

const right: Answers = () => ({ right: true, takenFor: null });

describe('a round', () => {
  it('asks every item once and then ends, the same from the same seed', () => {
    const { shown } = play({ cards: 50 }, right);
    expect(new Set(shown.map(({ item }) => item.id)).size).toBe(14);
    expect(shown).toHaveLength(14);
    expect(play({ cards: 50 }, right).shown).toEqual(shown);
  });

  it('never asks the same degree twice running', () => {
    const { shown } = play({ cards: 50 }, (_, n) => ({ right: n % 3 > 0, takenFor: null }));
    shown.slice(1).forEach(({ item }, k) => expect(item.degree).not.toBe(shown[k]!.item.degree));
  });

  it('asks a missed item once more, at least twelve cards later', () => {
    const { shown } = play({ cards: 50 }, (_, n) => ({ right: n > 0, takenFor: null }));
    const missed = shown[0]!.item.id;
    const asked = shown.flatMap(({ item }, k) => (item.id === missed ? [k] : []));
    expect(asked).toHaveLength(2);
    expect(asked[1]! - asked[0]!).toBeGreaterThan(12);
  });

  it('asks the two that were taken for each other within the next three cards', () => {
    const { shown } = play({ cards: 50 }, (item, n) =>
      n === 0 ? { right: false, takenFor: String((item.degree % 7) + 1) } : right(item, n),
    );
    const [first, second, third] = shown.map(({ item }) => item);
    expect(second!.degree).toBe((first!.degree % 7) + 1);
    expect(second!.strings).toBe(first!.strings);
    expect(third).toEqual(first);
  });

  it('lets go of a pair of which one can no longer be asked, and takes up the next', () => {
    const fresh = startRound({ deck: '', goal: { cards: 20 }, seed: 3, now: start });
    const mistaken = (item: Item) => ({
      right: false,
      takenFor: String((item.degree % 7) + 1),
    });
    const first = nextCard(fresh, items, emptyMemory(), start)!;
    const missed = answerCard(first.round, items, mistaken(first.item), start + 5000);
    const [other] = missed.contrast;
    const left = items.filter(({ id }) => id !== other);
    const second = nextCard(missed, left, emptyMemory(), start + 6000)!;
    expect(second.round.contrast).toEqual([]);
    const again = answerCard(second.round, items, mistaken(second.item), start + 9000);
    expect(again.contrast).toHaveLength(2);
  });

  it('ends by minutes, a pause left out', () => {
    const { round } = play({ minutes: 1 }, right);
    expect(round.asked).toHaveLength(6);
    expect(progress(round, items, emptyMemory())).toEqual({ done: 6, of: 6 });
    const open = nextCard(
      startRound({ deck: '', goal: { minutes: 1 }, seed: 1, now: 0 }),
      items,
      emptyMemory(),
      0,
    )!;
    const late = answerCard(open.round, items, right(items[0]!, 0), 55 * MINUTE);
    expect(late.asked[0]!.seconds).toBe(45);
  });

  it('shows the open card again after a reload', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start });
    const next = nextCard(fresh, items, emptyMemory(), start)!;
    const again = nextCard(next.round, items, emptyMemory(), start + MINUTE)!;
    expect(again).toEqual(next);
  });

  it('counts a card as answered whose answer was stored before the page was closed', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start });
    const { round, item, seed } = nextCard(fresh, items, emptyMemory(), start)!;
    const answer = reviewOf({ item: item.id, seed, at: start + 5000, right: false, takenFor: '4' });
    const after = caughtUp(round, items, [answer]);
    expect(after).toEqual(answerCard(round, items, answer, answer.at));
    expect(caughtUp(after, items, [answer])).toEqual(after);
    expect(caughtUp(round, items, [{ ...answer, seed: seed + 2 }])).toEqual(round);
  });

  it('asks for near wrong answers, by an odd seed, once recall is .7', () => {
    const { shown, memory } = play({ cards: 14 }, right);
    expect(shown.every(({ seed }) => seed % 2 === 0)).toBe(true);
    const next = play({ cards: 14 }, right, memory, start + 24 * 60 * MINUTE);
    expect(next.shown.every(({ seed }) => seed % 2 === 1)).toBe(true);
  });

  it('is read as it was stored, and not at all where it is not whole', () => {
    const fresh = startRound({ deck: '', goal: { cards: 5 }, seed: 1, now: start });
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

  it('goes on on the same day only', () => {
    const round = startRound({ deck: '', goal: 'enough', seed: 1, now: start });
    expect(canGoOn(round, start + 9 * 60 * MINUTE, 0)).toBe(true);
    expect(canGoOn(round, start + 11 * 60 * MINUTE, 0)).toBe(false);
  });
});
