import { expect, test } from 'vitest';
import { tappedTempo } from '../../src/sound/tempo.ts';

const taps = (gap: number, count: number, from = 0) =>
  Array.from({ length: count }, (_, i) => from + i * gap);

test.each([
  { gap: 500, tempo: 120 },
  { gap: 1000, tempo: 60 },
  { gap: 2000, tempo: 30 },
  { gap: 250, tempo: 240 },
  { gap: 100, tempo: 240 },
])('taps $gap ms apart set a tempo of $tempo', ({ gap, tempo }) => {
  expect(tappedTempo(taps(gap, 4))).toBe(tempo);
});

test('one tap sets no tempo', () => {
  expect(tappedTempo([])).toBeNull();
  expect(tappedTempo([5])).toBeNull();
});

test('a stumble does not move the tempo, a pause begins anew', () => {
  expect(tappedTempo([0, 500, 1000, 1620, 2000, 2500])).toBe(120);
  expect(tappedTempo([...taps(500, 5), ...taps(300, 3, 10_000)])).toBe(200);
  expect(tappedTempo([0, 500, 10_000])).toBeNull();
});

test('the last taps count', () => {
  expect(tappedTempo([...taps(1000, 12), ...taps(500, 9, 11_500)])).toBe(120);
});

test('a pause is longer than a beat of the slowest tempo, 2 s, by more than a tenth of a second', () => {
  expect(tappedTempo([0, 500, 2600])).toBe(46);
  expect(tappedTempo([0, 500, 2601])).toBeNull();
  expect(tappedTempo([0, 500, 1000, 4000, 4600])).toBe(100);
});
