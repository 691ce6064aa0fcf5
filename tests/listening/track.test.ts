import { expect, it } from 'vitest';
import { Track } from '../../src/listening/track.ts';

const counted = (from: number, count: number) =>
  Float32Array.from({ length: count }, (_, i) => from + i);

// Ten samples are kept; each is its own number, from 1.
it.each([
  [[4], 0, 4, [1, 2, 3, 4]],
  [[4], 2, 6, [3, 4, 0, 0]],
  [[4], -2, 2, [0, 0, 1, 2]],
  [[6, 6], 2, 6, [3, 4, 5, 6]],
  [[6, 6], 0, 4, [0, 0, 3, 4]],
  [[6, 6, 9], 8, 13, [0, 0, 0, 12, 13]],
  [[6, 6, 9], 19, 23, [20, 21, 0, 0]],
])('of blocks of %o samples those from %i to %i are %o', (blocks, from, to, samples) => {
  const track = new Track(10);
  let next = 1;
  for (const count of blocks) {
    track.add(counted(next, count));
    next += count;
  }
  expect(track.slice(from, to)).toEqual(Float32Array.from(samples));
  expect(track.end).toBe(next - 1);
});
