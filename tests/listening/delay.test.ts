/** The phone's own click: where it begins in what comes back, and what several of them agree on. */
import { describe, expect, it } from 'vitest';
import { agreed, clickIn } from '../../src/listening/delay.ts';
import { renderClick } from '../../src/sound/click.ts';

const RATE = 48_000;
const click = renderClick(RATE);

/** A tenth of a second with clicks in it, each from an index on and so loud; below 0 it is turned round. */
function withClicks(...clicks: readonly (readonly [at: number, level: number])[]): Float32Array {
  // A room is never silent.
  const out = Float32Array.from({ length: RATE / 10 }, (_, n) => 1e-5 * Math.sin(n * n));
  for (const [at, level] of clicks)
    for (const [k, sample] of click.entries()) out[at + k]! += level * sample;
  return out;
}

describe('a click', () => {
  it.each([
    [0, 0.5],
    [1000, 0.5],
    [1000, -0.5],
    [1000, 0.01],
    [3333, 0.2],
    [RATE / 10 - click.length - 2, 0.5],
  ])('that begins at sample %i, %f loud, is found there', (at, level) => {
    expect(Math.abs(clickIn(withClicks([at, level]), click)! - at)).toBeLessThan(0.6);
  });

  it('is the first of a click and its fainter echo', () => {
    const found = clickIn(withClicks([1000, 0.5], [2400, 0.4]), click)!;
    expect(Math.abs(found - 1000)).toBeLessThan(0.6);
  });

  it('is told apart from what came before it only where it is twice as loud', () => {
    const found = clickIn(withClicks([1000, 0.2], [2400, 0.5]), click)!;
    expect(Math.abs(found - 2400)).toBeLessThan(0.6);
    expect(clickIn(withClicks([1000, 0.3], [2400, 0.5]), click)).toBeNull();
  });

  it('is not there where nothing is, nor in less than it is long', () => {
    expect(clickIn(withClicks(), click)).toBeNull();
    expect(clickIn(new Float32Array(RATE / 10), click)).toBeNull();
    expect(clickIn(click, click)).toBeNull();
    expect(clickIn(new Float32Array(0), click)).toBeNull();
  });
});

// Three within 3 ms of the middle one, of two middle ones the later.
describe('what several clicks agree on', () => {
  it.each([
    [[0.04, 0.041, 0.042, 0.043, 0.044], 0.042],
    [[0.044, 0.04, 0.042, 0.043, 0.041], 0.042],
    [[0.0415, 0.044, 0.0465], 0.044],
    [[0.0405, 0.044, 0.0475], null],
    [[0.04, 0.044, 0.0445, 0.2], null],
    [[0.04, 0.044, 0.0445, 0.046], 0.0445],
    [[0.044, 0.0441, null, 0.0442, null], 0.0441],
    [[0.044, 0.0441, null, null, null], null],
    [[0.02, 0.044, 0.07, 0.1, 0.2], null],
    [[null, null, null], null],
    [[], null],
  ] as const)('of %j is %s', (found, delay) => expect(agreed(found)).toBe(delay));
});
