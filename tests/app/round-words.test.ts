/** What stands above a card and under it while a round goes on. */
import { describe, expect, it, vi } from 'vitest';
import { sayUnheard, unheardSentence } from '../../src/app/round/unheard.ts';
import { timeLeft } from '../../src/app/round/timeLeft.ts';
import { usualMinutes } from '../../src/app/today/lengths.ts';
import { emptyMemory } from '../../src/memory/memory.ts';
import type { Item } from '../../src/practice/item.ts';
import { startRound, type Asked, type Goal } from '../../src/practice/round.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
vi.stubGlobal('location', { hash: '' });
const { KINDS } = await import('../../src/cards/index.ts');
const { withFirstWords } = await import('../../src/app/round/firstWords.ts');
const { round } = await import('../../src/app/round/session.ts');
const { memory } = await import('../../src/app/state.ts');
const { itemIn } = await import('../cards/items.ts');

const begun = (goal: Goal, seconds: readonly number[] = []) => ({
  ...startRound({ deck: 'd', goal, seed: 1, now: 0 }),
  asked: seconds.map((one) => ({ seconds: one }) as Asked),
});

describe('what is left of a round', () => {
  it.each([
    [[], '5\u00a0min\u00a0left'],
    [[30, 29], '5\u00a0min\u00a0left'],
    [[45, 15], '4\u00a0min\u00a0left'],
    [[45, 16], '4\u00a0min\u00a0left'],
    [[200, 39], '2\u00a0min\u00a0left'],
    [[200, 40], '1\u00a0min\u00a0left'],
    [[299.5], '1\u00a0min\u00a0left'],
    [[300], 'last card'],
    [[280, 45], 'last card'],
  ])('of five minutes, of which %o seconds are gone, is %s', (seconds, words) => {
    expect(timeLeft(begun({ minutes: 5 }, seconds))).toBe(words);
  });

  it('is so many cards, or as many as are enough', () => {
    expect(timeLeft(begun({ cards: 10 }, [1, 1, 1]))).toBe('7 to go');
    expect(timeLeft(begun('enough', [1, 1, 1]))).toBe('until enough');
  });
});

it('a round is three minutes long at least and eight at most, unless one chooses otherwise', () => {
  const items = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ id: `spot:${i}`, kind: 'spot' }) as Item);
  const minutes = (count: number) => usualMinutes(items(count), emptyMemory(), 0, null);
  expect([minutes(0), minutes(2), minutes(1000)]).toEqual([3, 3, 8]);
});

it('what was not heard is said, and that no harm is done', () => {
  const said = (what: Parameters<typeof sayUnheard>[0]) => {
    sayUnheard(what);
    return unheardSentence.value;
  };
  expect(said('let go')).toBe('That could not be heard well. No harm done: it counts for nothing.');
  expect(said('again')).toBe('Not heard for sure: play it once more, or tap it.');
  expect(said('tap')).toBe('That could not be heard well. No harm done: tap it this time.');
});

describe('the first card that anybody meets', () => {
  const shown = (id: string, kind: 'spot' | 'pulse', detail: string) => {
    const card = KINDS[kind].ask(itemIn(KINDS[kind], id)!, 2);
    const explanation = KINDS[kind].explain(card, { right: true, takenFor: null }, '', 'english');
    return withFirstWords(card, { ...explanation, detail }).detail;
  };
  const spot = 'spot:Bb major:2:triad:guitar:5-4:1-7';
  const pulse = 'pulse:Bb major:1:triad:guitar:triplets:60:beat';

  it('says what a degree is, and what is asked soon; one in time the second alone', () => {
    round.value = begun({ minutes: 3 });
    expect(shown(spot, 'spot', 'C E♭ G.')).toBe(
      'C E♭ G. A degree is the step of the scale that something stands on, I to VII: soon you are asked for it, and tap it.',
    );
    expect(shown(pulse, 'pulse', '')).toBe(
      'Soon you tap each note of it, anywhere on the lower half.',
    );
  });

  it('and no other: neither later in the round, nor where anything was answered before', () => {
    round.value = begun({ minutes: 3 }, [4]);
    expect(shown(spot, 'spot', 'C E♭ G.')).toBe('C E♭ G.');
    const met = [{ item: spot, after: 0, at: 0, seconds: 5 }];
    round.value = { ...begun({ minutes: 3 }), met };
    expect(shown(spot, 'spot', 'C E♭ G.')).toBe('C E♭ G.');
    round.value = begun({ minutes: 3 });
    memory.value = { of: { ...emptyMemory(), asked: 1 } };
    expect(shown(spot, 'spot', 'C E♭ G.')).toBe('C E♭ G.');
  });
});
