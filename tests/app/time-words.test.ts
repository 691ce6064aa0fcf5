import { describe, expect, it } from 'vitest';
import { figureFactsWords, minuteWords, needsInTime } from '../../src/app/report/timeWords.ts';

const triplets = {
  figure: 'triplets',
  tempo: 84,
  spread: 0.12,
  drift: -0.02,
  limps: { place: 2, late: -0.02 },
} as const;
const minutes = { count: 6, leaping: 0.2, run: 9, outlined: 3, reach: 140, spread: 0.024 };

describe('what a teacher reads of time', () => {
  it('is what was sure of each figure', () => {
    expect(figureFactsWords(triplets)).toBe(
      'Triplets: even up to ♩ = 84; 12 % of a step last time, the second note 20 ms early, rushes.',
    );
    expect(
      figureFactsWords({ figure: 'phrase', tempo: null, spread: null, drift: null, limps: null }),
    ).toBe('The phrase’s rhythm: not yet even at any tempo.');
  });

  it('is what the free minutes come to', () => {
    expect(minuteWords(minutes)).toBe(
      '6 free minutes, of the last ones the mean: 20 % leaps, the longest run 9 steps, 3 of 7 arpeggios, 14 cm along the neck, ± 24 ms around the beat.',
    );
    expect(minuteWords({ ...minutes, spread: 0.002 })).toMatch(/, within 6 ms around the beat\.$/);
  });

  it('is in a few words who rushes, what limps and who runs scales', () => {
    expect(needsInTime({ time: { figures: [triplets], minutes } })).toEqual([
      'rushes triplets',
      'second note of triplets limps',
      'runs scales',
    ]);
    expect(needsInTime({ time: { figures: [], minutes: null } })).toEqual([]);
  });
});
