/** What a report tells of time: how even each figure was, and the free minutes. */
import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { DRILLED_FIGURES } from '../../src/decks/drills/time.ts';
import { MOST_FIGURES } from '../../src/decks/reportTime.ts';
import { DAY } from '../../src/memory/day.ts';
import { timeTold, timingId } from '../../src/practice/timeTold.ts';
import { deckIn } from '../cards/decks.ts';
import { reviewOf } from '../memory/reviews.ts';

const NOW = Date.UTC(2026, 10, 28);
const items = itemsOf(deckIn('Bb major'));
const id = (figure: string, tempo: number, clicks = 'beat', key = 'Bb major') =>
  `pulse:${key}:1:triad:guitar:${figure}:${tempo}:${clicks}`;
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

  it('is each figure once, whatever its tempo and click, with what was sure of it though it was never even', () => {
    const limps = { place: 3, late: 0.03 };
    const timings = {
      [timingId(id('eighths', 60, 'gone'))]: { spread: null, drift: 0.04, limps },
    };
    const reviews = [
      reviewOf({ n: 1, item: id('triplets', 60), at: NOW - DAY }),
      reviewOf({ n: 2, item: id('triplets', 80, 'gone'), at: NOW - DAY }),
      reviewOf({ n: 3, item: id('eighths', 80), at: NOW - DAY, right: false }),
    ];
    expect(timeTold(items, reviews, { timings, minutes: [] }, NOW).figures).toEqual([
      { figure: 'triplets', tempo: 80, spread: null, drift: null, limps: null },
      { figure: 'eighths', tempo: null, spread: null, drift: 0.04, limps },
    ]);
  });

  it('is of one figure in two keys the fastest of both, and what was sure of either', () => {
    const two = [
      ...items,
      ...itemsOf({ ...deckIn('Eb major'), drills: deckIn('Eb major').drills.slice(-1) }),
    ];
    const late = { spread: 0.2, drift: null, limps: null };
    const told = (slow: string, fast: string, sure: string) =>
      timeTold(
        two,
        [
          reviewOf({ n: 1, item: id('triplets', 60, 'beat', slow), at: NOW - 2 }),
          reviewOf({ n: 2, item: id('triplets', 80, 'beat', fast), at: NOW - 1 }),
        ],
        { timings: { [timingId(id('triplets', 60, 'beat', sure))]: late }, minutes: [] },
        NOW,
      ).figures;
    const expected = [{ figure: 'triplets', tempo: 80, ...late }];
    expect(told('Bb major', 'Eb major', 'Eb major')).toEqual(expected);
    expect(told('Eb major', 'Bb major', 'Bb major')).toEqual(expected);
  });

  it('is of no more figures than a report has room for', () => {
    const [pulse] = items.filter(({ kind }) => kind === 'pulse');
    const all = DRILLED_FIGURES.map((figure) => ({ ...pulse!, id: id(figure, 60) }));
    const reviews = all.map((item, n) => reviewOf({ n, item: item.id, at: NOW - 1 }));
    const { figures } = timeTold(all, reviews, { timings: {}, minutes: [] }, NOW);
    expect(figures.map(({ figure }) => figure)).toEqual(DRILLED_FIGURES.slice(0, MOST_FIGURES));
  });
});
