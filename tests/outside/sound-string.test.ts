import { PitchDetector } from 'pitchy';
import { describe, expect, test } from 'vitest';
import { HIGHEST, LOWEST, renderString } from '../../src/sound/string.ts';
import { partial } from '../sound/measure.ts';

/**
 * Frequencies in Hz, equal temperament on A = 440 (ISO 16:1975), as published in tables of note frequencies (from
 * memory): the strings of a guitar, of a five-string bass, and the highest note.
 */
const PUBLISHED: readonly (readonly [midi: number, hertz: number])[] = [
  [23, 30.868],
  [28, 41.203],
  [33, 55],
  [38, 73.416],
  [40, 82.407],
  [43, 97.999],
  [45, 110],
  [50, 146.832],
  [55, 195.998],
  [59, 246.942],
  [64, 329.628],
  [69, 440],
  [88, 1318.51],
];

describe.each([44100, 48000])('the string at %i samples a second', (rate) => {
  test.each(PUBLISHED)('sounds note %i at %d Hz', (midi, hertz) => {
    const samples = renderString(midi, rate);
    // The tables give five or six digits, which is half a hundredth of a cent at best.
    expect(Math.abs(partial(samples, rate, hertz, 0.1, 1.2).cents)).toBeLessThan(0.05);
  });

  test('an independent estimator (McLeod’s method, pitchy) hears every note as meant', () => {
    for (let midi = LOWEST; midi <= HIGHEST; midi++) {
      const length = midi < 45 ? 4096 : 2048;
      const part = renderString(midi, rate).slice(0.15 * rate, 0.15 * rate + length);
      const [hertz, clarity] = PitchDetector.forFloat32Array(length).findPitch(part, rate);
      const heard = 69 + 12 * Math.log2(hertz / 440);
      expect(Math.abs(heard - midi), `${midi}`).toBeLessThan(0.05);
      expect(clarity).toBeGreaterThan(0.9);
    }
  }, 20_000);
});
