import { describe, expect, test } from 'vitest';
import { renderClick } from '../../src/sound/click.ts';
import { HIGHEST, LOWEST, PEAK, RENDERED_NOTES, renderString } from '../../src/sound/string.ts';
import { peak, step } from './measure.ts';

describe('a rendered string', () => {
  test('is the same for the same seed and another for another', () => {
    const attack = (seed: number) => renderString(64, 44100, seed).slice(0, 1000);
    expect(attack(7)).toEqual(attack(7));
    expect(attack(7)).not.toEqual(attack(8));
  });

  test.each([LOWEST, 40, 64, HIGHEST])(
    'of note %i peaks where it should and ends in silence',
    (midi) => {
      const rate = 44100;
      const samples = renderString(midi, rate);
      expect(peak(samples, rate)).toBeCloseTo(PEAK, 6);
      const end = samples.length / rate;
      expect(Math.abs(samples.at(-1)!)).toBeLessThan(1e-6);
      expect(step(samples, rate, end - 0.06, end)).toBeLessThan(0.001);
      const offset = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
      expect(Math.abs(offset)).toBeLessThan(1e-4);
    },
  );
});

test('every note of the range lies within a semitone of a rendered one', () => {
  for (let midi = LOWEST; midi <= HIGHEST; midi++) {
    expect(RENDERED_NOTES.some((rendered) => Math.abs(rendered - midi) <= 1)).toBe(true);
  }
});

test('the click is short, begins and ends at nothing', () => {
  for (const rate of [44100, 48000, 96000]) {
    const click = renderClick(rate);
    expect(click.length / rate).toBeCloseTo(0.008, 3);
    expect(Math.abs(click[0]!)).toBeLessThan(1e-6);
    expect(Math.abs(click.at(-1)!)).toBeLessThan(1e-6);
    expect(peak(click, rate)).toBeGreaterThan(0.9);
  }
});
