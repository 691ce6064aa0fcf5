import { beforeAll, describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { pulse } from '../../src/cards/pulse/index.ts';
import { tapsText } from '../../src/cards/pulse/judge.ts';
import { timeTold, timingId } from '../../src/practice/timeTold.ts';
import { deckIn } from '../cards/decks.ts';
import { itemIn } from '../cards/items.ts';
import { reviewOf } from '../memory/reviews.ts';

let sureTimingOf: (typeof import('../../src/app/round/timing.ts'))['sureTimingOf'];
beforeAll(async () => {
  Object.assign(globalThis, { document: { documentElement: { dataset: {} } } });
  ({ sureTimingOf } = await import('../../src/app/round/timing.ts'));
});

const NOW = Date.UTC(2026, 10, 28);
const DAY = 86_400_000;
const items = itemsOf(deckIn('Bb major'));
const id = (figure: string, tempo: number) =>
  `pulse:Bb major:1:triad:guitar:${figure}:${tempo}:beat`;
const played = (ago: number, leaping: number) => ({
  at: NOW - ago * DAY,
  leaping,
  run: 5,
  outlined: 3,
  reach: 140,
  spread: 0.02,
});

describe('what a report tells of time', () => {
  it('is the fastest that was even of each figure, and what was sure of its last card', () => {
    const reviews = [
      reviewOf({ n: 1, item: id('triplets', 60), right: true, at: NOW - DAY }),
      reviewOf({ n: 2, item: id('eighths', 60), right: false, at: NOW - DAY }),
    ];
    const limps = { place: 2, late: -0.02 };
    const timings = { [timingId(id('triplets', 80))]: { spread: 0.12, drift: -0.02, limps } };
    const told = timeTold(items, reviews, { timings, minutes: [] }, NOW);
    // Of eighths nothing is known yet.
    expect(told).toEqual({
      figures: [{ figure: 'triplets', tempo: 60, spread: 0.12, drift: -0.02, limps }],
      minutes: null,
    });
  });

  it('is the mean of the last five free minutes of a month, and how many there were', () => {
    const minutes = [
      played(40, 1),
      played(20, 1),
      ...[5, 4, 3, 2, 1].map((ago) => played(ago, ago / 10)),
    ];
    const told = timeTold(items, [], { timings: {}, minutes }, NOW);
    expect(told.minutes).toMatchObject({ count: 6, run: 5, leaping: expect.closeTo(0.3) });
  });

  it('says what limps and who rushes where that is sure, and nothing where it is not', () => {
    const card = pulse.ask(itemIn(pulse, id('triplets', 80))!, 2);
    const due = card.plan.slots.map(({ seconds }) => seconds);
    const of = (taps: readonly number[]) => sureTimingOf(card, tapsText(taps));
    expect(of(due)).toEqual({ spread: null, drift: null, limps: null });
    const bent = of(due.map((time, i) => (i % 3 === 1 ? time - 0.02 : time)));
    expect(bent!.limps).toMatchObject({ place: 2, late: expect.closeTo(-0.02) });
    expect(of(due.map((time) => time * 0.97))!.drift).toBeCloseTo(-0.03);
    expect(of(due.slice(0, 9))).toBeNull();
    // Of two places the one that is farther out, early or late; of a drift only what is sure.
    const both = (second: number, third: number) =>
      of(due.map((time, i) => time + [0, second, third][i % 3]!))!.limps!.place;
    expect([both(-0.04, 0.025), both(0.025, -0.04), both(0.04, 0.025)]).toEqual([2, 3, 2]);
    expect(of(due.map((time) => time * 0.995))!.drift).toBeNull();
  });
});
