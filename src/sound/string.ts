/**
 * The plucked string: Karplus & Strong (1983) with the tuning and decay of Jaffe & Smith (1983), Computer Music
 * Journal 7(2). One period of a pluck runs round a loop of a delay, a damping filter of whole-sample delay, and
 * an allpass that makes up the fraction of a sample, so that the loop is exactly one period long.
 */

import { frequency } from '../theory/note.ts';

/** The lowest note of a five-string bass and the highest of a guitar of 24 frets: B0 and E6. */
export const LOWEST = 23;
export const HIGHEST = 88;

/**
 * The notes that are rendered: every third semitone, so that none is bent by more than one; an octave apart first, for
 * from those every pitch can be played while the notes between them follow.
 */
export const RENDERED_NOTES: readonly number[] = [0, 6, 3, 9].flatMap((first) =>
  [24, 36, 48, 60, 72, 84].map((c) => c + first).filter((midi) => midi <= HIGHEST),
);

/** So many of them, the first, are enough for every pitch. */
export const ENOUGH_NOTES = 6;

/**
 * Samples a second of the rendered notes, whatever the rate of the device: so they can be rendered before sound is
 * woken, which is when that rate is first known, and they take the same memory everywhere.
 */
export const RENDERED_RATE = 44100;

/** The peak of every rendered note: loud enough alone, and six at once are seldom above full scale. */
export const PEAK = 0.34;

/** Where the string is plucked, as a part of its length from the bridge. */
const PICK_POSITION = 0.13;

/** Resonances of a guitar's body: where, quality, and how much is added to the string alone. */
const BODY = [
  { hertz: 98, quality: 7, amount: 0.45 },
  { hertz: 204, quality: 11, amount: 0.35 },
  { hertz: 390, quality: 14, amount: 0.25 },
] as const;

/**
 * How far apart, in samples, the taps of the loop's three averages lie. Low strings lose too little of their high
 * partials to neighbouring samples; high ones have no room for more.
 */
const spreadsFor = (hertz: number): readonly number[] => (hertz < 100 ? [3, 2, 1] : [1, 1, 1]);

/** Seconds in which what lies near 3 kHz falls by 60 dB. */
const HIGH_RING = 0.4;

/** How long a rendered note lasts, in seconds: the lower, the longer. */
function ringOf(midi: number): number {
  const height = (midi - LOWEST) / (HIGHEST - LOWEST);
  return 4 - 2.4 * Math.min(1, Math.max(0, height));
}

/** Numbers from 0 to 1 that are the same for the same seed (Mulberry32). */
function noiseFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One period of the pluck itself: a pulse with some noise, seen from the place where the string is plucked. */
function pluck(period: number, rate: number, seed: number): Float64Array {
  const length = Math.round(period);
  const noise = noiseFrom(seed);
  const width = Math.min(length / 2, Math.max(4, rate * 0.0004));
  const shape = Float64Array.from({ length }, (_, n) => {
    const pulse = n < width ? Math.sin((Math.PI * n) / width) ** 2 : 0;
    return pulse + 0.35 * (noise() - 0.5);
  });
  const apart = Math.max(1, Math.round(PICK_POSITION * length));
  const combed = shape.map((value, n) => value - shape[(n - apart + length) % length]!);
  // The fingertip is not a needle: a one-pole low-pass, run round twice so that the period closes on itself.
  const softness = Math.exp((-2 * Math.PI * 7000) / rate);
  let last = 0;
  for (let round = 0; round < 2; round++) {
    for (let n = 0; n < length; n++) {
      last = combed[n]! + softness * (last - combed[n]!);
      if (round === 1) combed[n] = last;
    }
  }
  const mean = combed.reduce((sum, value) => sum + value, 0) / length;
  return combed.map((value) => value - mean);
}

/** What three averages [s/2, 1−s, s/2], their taps so far apart, leave of a frequency (radians a sample). */
const keptBy = (damping: number, spreads: readonly number[], omega: number): number =>
  spreads.reduce((kept, spread) => kept * (1 - damping * (1 - Math.cos(spread * omega))), 1);

/** The most damping, up to a half, that leaves at least `wanted` of a frequency. */
function dampingFor(spreads: readonly number[], omega: number, wanted: number): number {
  let [least, most] = [0, 0.5];
  if (keptBy(most, spreads, omega) >= wanted) return most;
  for (let step = 0; step < 40; step++) {
    const middle = (least + most) / 2;
    if (keptBy(middle, spreads, omega) >= wanted) least = middle;
    else most = middle;
  }
  return least;
}

/** The loop for a note: its delays and its losses. */
function loopFor(hertz: number, ring: number, rate: number) {
  const omega = (2 * Math.PI * hertz) / rate;
  const spreads = spreadsFor(hertz);
  // Each average delays by its spread.
  const averaged = spreads.reduce((sum, spread) => sum + spread, 0);
  const period = rate / hertz;
  // Delay of the allpass at the fundamental, kept in [0.3, 1.3), where it is tame (Jaffe & Smith).
  const delay = Math.floor(period - averaged - 0.3);
  const fraction = period - averaged - delay;
  const allpass =
    Math.sin((omega - omega * fraction) / 2) / Math.sin((omega + omega * fraction) / 2);
  const keptIn = (seconds: number) => 10 ** (-3 / (hertz * seconds));
  const high = 2 * Math.PI * Math.max(3000 / rate, (2 * hertz) / rate);
  const damping = Math.min(
    dampingFor(spreads, high, keptIn(HIGH_RING)),
    // No more than what leaves the loop's gain below one at 0 Hz.
    dampingFor(spreads, omega, keptIn(ring) / 0.99999),
  );
  const gain = keptIn(ring) / keptBy(damping, spreads, omega);
  return { period, delay, averaged, allpass, taps: tapsFor(damping, spreads, gain) };
}

function convolve(a: readonly number[], b: readonly number[]): number[] {
  const out = Array.from({ length: a.length + b.length - 1 }, () => 0);
  a.forEach((x, i) => b.forEach((y, j) => (out[i + j]! += x * y)));
  return out;
}

/** The three averages in a row, times the loop's gain: symmetric about their middle. */
function tapsFor(damping: number, spreads: readonly number[], gain: number): Float64Array {
  const averages = spreads.map((spread) => {
    const gap = Array.from({ length: spread - 1 }, () => 0);
    return [damping / 2, ...gap, 1 - damping, ...gap, damping / 2];
  });
  return Float64Array.from(averages.reduce(convolve, [gain]));
}

/** Adds the body's resonances in place (two-pole band-passes beside the string). */
function addBody(samples: Float64Array, rate: number): void {
  const dry = samples.slice();
  for (const { hertz, quality, amount } of BODY) {
    const omega = (2 * Math.PI * hertz) / rate;
    const alpha = Math.sin(omega) / (2 * quality);
    const b = (amount * alpha) / (1 + alpha);
    const a1 = (-2 * Math.cos(omega)) / (1 + alpha);
    const a2 = (1 - alpha) / (1 + alpha);
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let n = 0; n < dry.length; n++) {
      const x = dry[n]!;
      const y = b * (x - x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      samples[n]! += y;
    }
  }
}

/** Scales to `PEAK` and lets the last 60 ms fade to nothing, so that no step is left at the end. */
function finish(samples: Float64Array, rate: number): Float32Array<ArrayBuffer> {
  let peak = 0;
  for (let n = 0; n < samples.length; n++) peak = Math.max(peak, Math.abs(samples[n]!));
  const finished = new Float32Array(samples.length);
  for (let n = 0; n < samples.length; n++) finished[n] = samples[n]! * (PEAK / peak);
  const fade = Math.round(rate * 0.06);
  for (let left = 0; left < fade; left++) {
    finished[finished.length - 1 - left]! *= Math.sin((Math.PI / 2) * (left / fade)) ** 2;
  }
  return finished;
}

/**
 * One plucked note, at full strength, at A = 440 Hz.
 *
 * @param midi MIDI number, `LOWEST` to `HIGHEST`
 * @param rate samples a second
 * @param seed of the noise in the pluck; the same seed gives the same samples
 * @returns `ringOf(midi)` seconds, one channel, no sample above `PEAK`
 */
export function renderString(midi: number, rate: number, seed = midi): Float32Array<ArrayBuffer> {
  const { period, delay, averaged, allpass, taps } = loopFor(frequency(midi), ringOf(midi), rate);
  const excitation = pluck(period, rate, seed);
  const length = Math.round(ringOf(midi) * rate);
  // Silence ahead of the first sample, so that the loop never reaches before the beginning.
  const ahead = delay + 2 * averaged;
  const line = new Float64Array(ahead + length);
  let [filteredBefore, shiftedBefore] = [0, 0];
  for (let n = 0; n < length; n++) {
    let filtered = 0;
    for (let tap = 0; tap < taps.length; tap++) filtered += taps[tap]! * line[n + tap]!;
    const shifted = allpass * (filtered - shiftedBefore) + filteredBefore;
    filteredBefore = filtered;
    shiftedBefore = shifted;
    line[n + ahead] = shifted + (n < excitation.length ? excitation[n]! : 0);
  }
  const samples = line.subarray(ahead);
  addBody(samples, rate);
  return finish(samples, rate);
}
