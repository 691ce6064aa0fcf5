import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Sequence } from '../../src/sound/sequence.ts';

/** The looks of a page: the context's blocks of 128 frames at a rate, every so many. */
function looks(rate: number, every: number, seconds: number): number[] {
  const blocks = Math.ceil((seconds * rate) / 128 / every);
  return Array.from({ length: blocks }, (_, k) => (k * every * 128) / rate + 0.1);
}

/** Happenings that write down which they are and when they are called. */
function written(beats: readonly number[], calls: [number, number][]) {
  return beats.map((at, index) => ({ at, call: (time: number) => void calls.push([index, time]) }));
}

const triplets = (count: number) => Array.from({ length: count }, (_, i) => i / 3);

describe('a sequence', () => {
  it('calls everything once and in time, also what is due just where a look ends', () => {
    for (const rate of [44_100, 48_000]) {
      for (const tempo of [30, 60, 90, 100, 120, 132, 150, 200, 240]) {
        const calls: [number, number][] = [];
        const beats = triplets(Math.floor(tempo / 2));
        // At 48 kHz and 100 beats a minute every other triplet falls on a block to the last bit.
        const sequence = new Sequence(written(beats, calls), 0.12, tempo);
        for (const time of looks(rate, 1, 12)) sequence.callUntil(time);
        expect(calls.map(([index]) => index)).toEqual(beats.map((_, i) => i));
        for (const [index, time] of calls) {
          expect(Math.abs(time - 0.12 - (beats[index]! * 60) / tempo)).toBeLessThan(1e-12);
        }
      }
    }
  });

  it('calls nothing before it is looked for, and what a stalled page missed at its own time', () => {
    const calls: [number, number][] = [];
    const sequence = new Sequence(written(triplets(6), calls), 1, 60);
    sequence.callUntil(1);
    expect(calls).toEqual([]);
    sequence.callUntil(9);
    expect(calls.map(([, time]) => time)).toEqual(triplets(6).map((beat) => 1 + beat));
  });

  it('keeps each once and in order, however often the tempo changes and whenever it is looked', () => {
    const change = fc.record({
      tempo: fc.integer({ min: 30, max: 480 }),
      later: fc.double({ min: 0, max: 0.4, noNaN: true }),
    });
    const beats = fc.array(fc.integer({ min: 0, max: 120 }).map((n) => n / 12));
    fc.assert(
      fc.property(beats, fc.array(change), (placed, changes) => {
        const calls: [number, number][] = [];
        const sequence = new Sequence(written(placed, calls), 0.02, 120);
        let time = 0;
        for (const { tempo, later } of changes) {
          sequence.setTempo(tempo);
          sequence.callUntil((time += later));
        }
        sequence.callUntil(Infinity);
        expect(calls.map(([index]) => index)).toEqual(
          placed.map((_, i) => i).toSorted((a, b) => placed[a]! - placed[b]!),
        );
        const times = calls.map(([, at]) => at);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
      }),
    );
  });

  it('takes a new tempo from where it has been looked through, in step with the old', () => {
    const calls: [number, number][] = [];
    const sequence = new Sequence(written([0, 1, 2, 3], calls), 0, 60);
    sequence.callUntil(1.5);
    sequence.setTempo(120);
    sequence.callUntil(10);
    expect(calls.map(([, time]) => time)).toEqual([0, 1, 1.75, 2.25]);
  });

  it('goes round without a seam, the count-in only once', () => {
    const calls: [number, number][] = [];
    const beats = [0, 1, 2, 2 + 1 / 3, 2 + 2 / 3, 3, 4];
    const sequence = new Sequence(written(beats, calls), 0, 60, { from: 2, to: 4 });
    for (const time of looks(48_000, 7, 8)) sequence.callUntil(time);
    const round = [2, 3, 4, 5];
    expect(calls.map(([index]) => index)).toEqual([0, 1, ...round, ...round, ...round, 2]);
    for (const [k, [index, time]] of calls.entries()) {
      expect(time).toBeCloseTo(beats[index]! + (k < 2 ? 0 : 2 * Math.floor((k - 2) / 4)), 9);
    }
  });

  it('does not go round nothing', () => {
    const calls: [number, number][] = [];
    new Sequence(written([0], calls), 0, 60, { from: 0, to: 0 }).callUntil(100);
    expect(calls).toEqual([[0, 0]]);
  });
});
