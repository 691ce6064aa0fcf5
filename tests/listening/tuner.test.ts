import { expect, it } from 'vitest';
import { StringTuner } from '../../src/listening/tuner.ts';

const RATE = 22_050;
/** E2 to E4, string 1 first. */
const GUITAR = [64, 59, 55, 50, 45, 40];

/** What is read at last of a string that sounds so many cents above a note, in a second. */
function readingOf(midi: number, cents: number, { reference = 440, level = 0.2, noise = 0 } = {}) {
  const tuner = new StringTuner(RATE, GUITAR, reference, noise, 3);
  const hertz = 440 * 2 ** ((midi - 69 + cents / 100) / 12);
  let last: ReturnType<StringTuner['hear']> = null;
  for (let from = 0; from < RATE; from += 512) {
    const block = Float32Array.from({ length: 512 }, (_, n) => {
      const turn = (2 * Math.PI * hertz * (from + n)) / RATE;
      return level * (Math.sin(turn) + 0.5 * Math.sin(2 * turn));
    });
    last = tuner.hear(block) ?? last;
  }
  return last;
}

// In tune within five cents, to be left so within fifteen, and no string of the guitar beyond three semitones and a half.
it.each([
  [45, 0, 4, 'ready'],
  [45, 4.5, 4, 'ready'],
  [45, -5.5, 4, 'near'],
  [45, 14.5, 4, 'near'],
  [45, -15.5, 4, 'off'],
  [64, 300, 0, 'off'],
  [64, 340, 0, 'off'],
  [40, -300, 5, 'off'],
  [64, 360, null, null],
  [45, 240, 4, 'off'],
  [45, 260, 3, 'off'],
] as const)('MIDI %i and %f cents is string %s of them, %s', (midi, cents, string, state) => {
  const reading = readingOf(midi, cents);
  if (string === null) expect(reading).toBeNull();
  else {
    expect(reading).toMatchObject({ string, state });
    expect(Math.abs(reading!.cents - (cents - 100 * (GUITAR[string]! - midi)))).toBeLessThan(0.5);
    expect(reading!.time).toBeGreaterThan(3.9);
  }
});

it('goes by the reference pitch', () => {
  const flat = 1200 * Math.log2(432 / 440);
  expect(readingOf(45, flat, { reference: 432 })).toMatchObject({ string: 4, state: 'ready' });
  expect(readingOf(45, flat)).toMatchObject({ state: 'off' });
});

it('hears nothing in noise, nor what is three times as loud at most', () => {
  expect(readingOf(45, 0, { level: 1e-4 })).toBeNull();
  expect(readingOf(45, 0, { level: 0.01, noise: 0.004 })).toBeNull();
  expect(readingOf(45, 0, { level: 0.02, noise: 0.004 })).not.toBeNull();
});
