import { describe, expect, it } from 'vitest';
import type { Deck, Drill } from '../../src/decks/deck.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import type { TimeTold } from '../../src/decks/reportTime.ts';
import { fittedInTime, runsScales } from '../../src/practice/nextInTime.ts';
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
});
