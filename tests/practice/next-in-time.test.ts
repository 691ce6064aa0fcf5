import { describe, expect, it } from 'vitest';
import { MOST, type Deck, type Drill } from '../../src/decks/deck.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import type { TimeTold } from '../../src/decks/reportTime.ts';
import {
  evenDrills,
  fittedInTime,
  leapingDrills,
  runsScales,
} from '../../src/practice/nextInTime.ts';
import { deckIn } from '../cards/decks.ts';

const base = deckIn('Bb major');
const only = (...kinds: Drill['kind'][]): Deck => ({
  ...base,
  drills: base.drills.filter(({ kind }) => kinds.includes(kind)),
});
const told = (time: Partial<TimeTold>) => ({ time: { figures: [], minutes: null, ...time } });
const kept = (figure: 'triplets' | 'eighths', tempo: number | null, some: object = {}) => ({
  figure,
  tempo,
  spread: 0.05,
  drift: null,
  limps: null,
  ...some,
});
const MINUTES = { count: 4, leaping: 0.5, run: 3, outlined: 4, reach: 140, spread: 0.02 };
const running = told({ minutes: { ...MINUTES, leaping: 0.1, run: 9 } });

describe('what the next lesson drills of time', () => {
  const deck = only('pulse');
  const figures = (...reports: ReturnType<typeof told>[]) =>
    fittedInTime(deck.drills, deck, reports).flatMap((drill) =>
      'figures' in drill ? drill.figures : [],
    );

  it('leaves out a figure that everyone keeps even at its fastest', () => {
    expect(figures(told({ figures: [kept('triplets', 80), kept('eighths', 60)] }))).toEqual([
      'eighths',
    ]);
    const [done, open] = [kept('triplets', 80), kept('triplets', null)];
    expect(figures(told({ figures: [done] }), told({ figures: [open] }))).toContain('triplets');
    expect(figures(told({ figures: [done] }), told({}))).toContain('triplets');
  });

  it('keeps one in which somebody rushes or limps', () => {
    const limps = { place: 2, late: -0.02 };
    expect(figures(told({ figures: [kept('triplets', 80, { limps })] }))).toContain('triplets');
    expect(figures(told({ figures: [kept('triplets', 80, { drift: -0.02 })] }))).toContain(
      'triplets',
    );
  });

  it('adds triplets where free minutes are uneven and nothing of time was drilled', () => {
    const spot = only('spot');
    const uneven = told({ minutes: { ...MINUTES, spread: 0.05 } });
    expect(fittedInTime(spot.drills, spot, [uneven]).map(({ kind }) => kind)).toEqual([
      'spot',
      'pulse',
    ]);
    expect(fittedInTime(spot.drills, spot, [told({ minutes: MINUTES })])).toEqual(spot.drills);
  });

  it('has arpeggios played for whoever runs scales, once', () => {
    expect(runsScales(running)).toBe(true);
    expect(runsScales(told({ minutes: MINUTES }))).toBe(false);
    const spot = only('spot');
    const drills = fittedInTime(spot.drills, spot, [running]);
    expect(drills.at(-1)).toMatchObject({ kind: 'play', ways: ['turn'] });
    expect(readDeck(writeDeck({ ...spot, drills }))).toEqual({ deck: { ...spot, drills } });
    const play = only('play');
    expect(fittedInTime(play.drills, play, [running])).toEqual(play.drills);
  });

  it('leaves out the drill whose figures are all kept even, by whoever there is', () => {
    const even = ['triplets', 'eighths'] as const;
    const done = told({ figures: even.map((figure) => kept(figure, 90)) });
    const slow = told({ figures: even.map((figure) => kept(figure, 79)) });
    expect(fittedInTime(deck.drills, deck, [done, done])).toEqual([]);
    expect(fittedInTime(deck.drills, deck, [done, slow])).toEqual(deck.drills);
  });

  it('adds either where one of many students needs it', () => {
    const [spot, both] = [only('spot'), only('spot', 'pulse')];
    const uneven = told({ minutes: { ...MINUTES, spread: 0.05 } });
    const reports = [told({}), told({ minutes: MINUTES }), uneven];
    expect(evenDrills(spot, reports)).toEqual([
      { kind: 'pulse', figures: ['triplets'], tempos: [60, 72, 84, 96], clicks: ['beat', 'gone'] },
    ]);
    expect(evenDrills(both, reports)).toEqual([]);
    expect(leapingDrills(spot, [...reports, running])).toHaveLength(1);
    expect(leapingDrills(spot, reports)).toEqual([]);
  });

  // A run of seven steps, and no more than a quarter of leaps, is running scales; a spread above 35 ms is uneven.
  it.each([
    [7, 0.25, true],
    [6, 0.25, false],
    [6, 0, false],
    [7, 0.26, false],
    [30, 0.3, false],
  ])('%i steps in a row and %f leaps run scales: %s', (run, leaping, runs) => {
    expect(runsScales(told({ minutes: { ...MINUTES, run, leaping } }))).toBe(runs);
  });

  it('takes a spread of 35 ms for even, more for uneven', () => {
    const spread = (seconds: number) => told({ minutes: { ...MINUTES, spread: seconds } });
    expect(evenDrills(only('spot'), [spread(0.035)])).toEqual([]);
    expect(evenDrills(only('spot'), [spread(0.036)])).toHaveLength(1);
  });

  it('has the phrases played where there are any, and nothing where nothing lies on the neck', () => {
    const played: Deck = { ...only('spot', 'play') };
    expect(leapingDrills(played, [running])).toEqual([]);
    const spot = only('spot');
    const phrase = { notes: [], tempo: 80 };
    expect(leapingDrills({ ...spot, phrases: [phrase] }, [running])).toEqual([{ kind: 'play' }]);
    expect(leapingDrills(only('trace', 'pulse'), [running])).toEqual([]);
    const late: Deck = { ...base, drills: [...only('trace').drills, ...spot.drills] };
    expect(leapingDrills(late, [running])).toEqual([
      { ...spot.drills[0], kind: 'play', ways: ['turn'] },
    ]);
  });

  it('is never more than a lesson has room for', () => {
    const [spot] = only('spot').drills;
    const full: Deck = { ...base, drills: Array.from({ length: MOST.drills }, () => spot!) };
    expect(fittedInTime(full.drills, full, [running])).toEqual(full.drills);
  });
});
