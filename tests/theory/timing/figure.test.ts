import { describe, expect, it } from 'vitest';
import { beats, toNumber } from '../../../src/theory/rhythm.ts';
import { countText, evenFigure, phraseFigure } from '../../../src/theory/timing/figure.ts';
import { FIGURES, type FigureName } from '../../../src/theory/timing/figureNames.ts';
import { timePlan } from '../../../src/theory/timing/plan.ts';

const note = (at: [number, number?], length: [number, number?]) => ({
  midi: 60,
  name: 'C',
  at: beats(...at),
  length: beats(...length),
});
/** Six triplets, then a note held for two beats. */
const HELD = {
  notes: [...Array.from({ length: 6 }, (_, i) => note([i, 3], [1, 3])), note([2], [2])],
};

describe('a figure', () => {
  it('has 48 onsets in whole bars', () => {
    for (const name of Object.keys(FIGURES) as FigureName[])
      expect(evenFigure(name).onsets).toHaveLength(48);
    expect(evenFigure('triplets').length).toEqual(beats(16));
    expect(evenFigure('eighths', 3).onsets).toHaveLength(48);
  });

  it('is counted in as the trade counts', () => {
    expect(countText(evenFigure('triplets'))).toBe('1 2 3, 2 2 3, 3 2 3, 4 2 3');
    expect(countText(evenFigure('eighths', 3))).toBe('1 & 2 & 3 &');
    expect(countText(evenFigure('quarters'))).toBe('1 2 3 4');
    expect(countText({ division: 4, bar: 2 })).toBe('1 e & a, 2 e & a');
  });

  it('is a phrase over and over, its last note held to the end of the bar', () => {
    const figure = phraseFigure(HELD);
    expect(figure.division).toBe(3);
    expect(figure.onsets).toHaveLength(49);
    expect(figure.onsets.slice(5, 9).map(toNumber)).toEqual([5 / 3, 2, 4, 13 / 3]);
    expect(figure.length).toEqual(beats(28));
  });

  it('puts a pickup before the bar line', () => {
    const figure = phraseFigure(HELD, { pickup: beats(1), taps: 1 });
    expect(figure.onsets[0]).toEqual(beats(3));
    expect(figure.length).toEqual(beats(8));
  });

  it('refuses what has no rhythm', () => {
    expect(() => phraseFigure({ notes: [] })).toThrow(RangeError);
    expect(() => phraseFigure({ notes: [note([0], [1]), note([0], [1])] })).toThrow(RangeError);
    expect(() => evenFigure('triplets', 0)).toThrow(RangeError);
    expect(() => timePlan(evenFigure('triplets'), 0, 'beat')).toThrow(RangeError);
  });
});

describe('a plan', () => {
  const triplets = evenFigure('triplets');

  it('counts one bar in, word by word, before 0', () => {
    const { countIn } = timePlan(triplets, 60, 'beat');
    expect(countIn).toHaveLength(12);
    expect(countIn[0]).toEqual({ at: beats(-4), seconds: -4, word: '1', beat: true });
    expect(countIn[11]).toMatchObject({ at: beats(-1, 3), word: '3', beat: false });
  });

  it('clicks on every beat, on the first of the bar, or in every other bar', () => {
    const clicked = (clicks: 'beat' | 'bar' | 'gone' | null) =>
      timePlan(triplets, 120, clicks).clicks.map(({ seconds }) => seconds * 2);
    expect(clicked('beat')).toEqual(Array.from({ length: 16 }, (_, i) => i));
    expect(clicked('bar')).toEqual([0, 4, 8, 12]);
    expect(clicked('gone')).toEqual([0, 1, 2, 3, 8, 9, 10, 11]);
    expect(clicked(null)).toEqual([]);
    const firsts = (bar: number) =>
      timePlan(evenFigure('quarters', bar, 2 * bar), 60, 'beat').clicks.map(({ first }) => first);
    expect(firsts(4)).toEqual([true, false, false, false, true, false, false, false]);
    expect(firsts(3)).toEqual([true, false, false, true, false, false]);
    const waltz = timePlan(evenFigure('quarters', 3, 12), 60, 'gone');
    expect(waltz.clicks.map(({ seconds }) => seconds)).toEqual([0, 1, 2, 6, 7, 8]);
  });

  it('says when each onset is due and whether a click sounds with it', () => {
    const { slots, end } = timePlan(triplets, 80, 'bar');
    expect(slots[1]).toEqual({ at: beats(1, 3), seconds: 0.25, clicked: false });
    expect(slots.filter(({ clicked }) => clicked)).toHaveLength(4);
    expect(end).toBe(12);
  });

  it('clicks in a held note too', () => {
    const { slots, clicks } = timePlan(phraseFigure(HELD, { taps: 7 }), 60, 'beat');
    expect(clicks).toHaveLength(4);
    expect(slots.filter(({ clicked }) => clicked)).toHaveLength(3);
  });
});
