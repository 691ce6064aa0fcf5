/** How likely it is that an onset is the pluck of each note: what the follower goes by. */
import { freshPartials, type Fresh } from './fresh.ts';
import { HEARD, LOWEST_HEARD, saliencesOf, type Salience } from './salience.ts';
import { Spectrum } from './spectrum.ts';
import { ATTACK_NEEDS, AttackFinder, SHARP, type Attack } from './attack.ts';
import type { Onset } from './onset.ts';
import type { Track } from './track.ts';

/** Seconds left out on both sides of an onset: the pick's own noise, and what the onset's time may be off. */
const AFTER = 0.004;
const BEFORE = 0.006;
const LOWEST = 70;
const HIGHEST = 5000;
const SIZE_SECONDS = 8192 / 44100;
/** A peak has to be so far above the noise of its bin. */
const OVER_NOISE = 3;
const QUIETEST = 1e-5;

/** Length of the pieces looked at, in seconds: 4096 samples at 44.1 kHz. */
export const PIECE = 4096 / 44100;
/** Seconds after an onset when it can first be judged. */
export const DELAY = AFTER + PIECE;

/** Features of an onset as the pluck of one note; see `WEIGHTS`. */
export const FEATURES = 15;

/** What is put to a salience before its logarithm is taken. */
const UNHEARD = 0.02;

/** What an onset's own strength is, in both ways of finding it. */
export interface OnsetStrength {
  readonly strength: number;
  readonly jump: number;
}

/** An onset looked at closely. */
export interface Considered {
  /** Samples since the beginning: where it jumps, and when it was plucked (see `Attack`). */
  readonly at: number;
  readonly plucked: number;
  readonly partials: readonly Fresh[];
  readonly heard: OnsetStrength;
}

/** An onset ends the piece of the one before where it comes later than this and is so strong beside it. */
const CUTS = { later: 0.045, strength: 0.35 };
/** The shortest piece judged, as a part of the whole. */
const SHORTEST = 0.5;

export class Evidence {
  private readonly attacks: AttackFinder;
  private readonly spectrum: Spectrum;
  /** Mean power of noise by bin, for a piece of `PIECE` seconds. */
  private readonly noise: Float64Array;

  constructor(readonly rate: number) {
    this.attacks = new AttackFinder(rate);
    this.spectrum = new Spectrum(2 ** Math.round(Math.log2(SIZE_SECONDS * rate)), rate);
    this.noise = new Float64Array(this.spectrum.size / 2);
  }

  /** Takes an opening silence as what is to be expected of noise. */
  expectNoise(silence: Float32Array): void {
    const length = Math.round(PIECE * this.rate);
    const power = new Float64Array(this.noise.length);
    let pieces = 0;
    for (let start = 0; start + length <= silence.length; start += length >> 1) {
      this.spectrum.transform(silence.subarray(start, start + length));
      for (let k = 0; k < power.length; k++) power[k]! += this.spectrum.levels[k]! ** 2;
      pieces++;
    }
    if (pieces === 0) return;
    const wide = 6;
    for (let k = 0; k < power.length; k++) {
      let sum = 0;
      for (let j = -wide; j <= wide; j++) sum += power[Math.abs(k + j)] ?? 0;
      this.noise[k] = sum / (2 * wide + 1) / pieces;
    }
  }

  /**
   * Looks closely at an onset.
   * @param later onsets after it
   */
  consider(track: Track, onset: Onset, later: readonly Onset[]): Considered {
    const { at, jump, plucked } = this.attack(track, onset);
    const next = later.find(
      (other) =>
        other.at > at + CUTS.later * this.rate && other.strength > CUTS.strength * onset.strength,
    );
    const whole = PIECE * this.rate;
    const free = next ? next.at - at - 0.008 * this.rate : whole;
    const length = Math.round(Math.max(SHORTEST * whole, Math.min(whole, free)));
    const margin = Math.ceil(0.01 * this.rate);
    const from = Math.floor(at) - length - margin;
    const samples = track.slice(from, Math.floor(at) + length + margin);
    const partials = this.fresh(samples, at - from, length);
    return { at, plucked, partials, heard: { strength: onset.strength, jump } };
  }

  private attack(track: Track, onset: Onset): Attack {
    const from = Math.floor(onset.at - ATTACK_NEEDS.before * this.rate);
    const samples = track.slice(from, Math.ceil(onset.at + ATTACK_NEEDS.after * this.rate));
    const { at, jump, plucked } = this.attacks.find(samples, onset.at - from);
    return { at: from + at, jump, plucked: from + plucked };
  }

  /**
   * What is new after an onset.
   * @param samples what was heard
   * @param at the onset, by index in them
   * @param length of the pieces before and after, in samples
   */
  fresh(samples: Float32Array, at: number, length: number): Fresh[] {
    const after = Math.round(at + AFTER * this.rate);
    const before = Math.max(0, Math.round(at - BEFORE * this.rate) - length);
    const grown = (PIECE * this.rate) / length;
    const least = (bin: number) => OVER_NOISE * Math.sqrt(this.noise[bin]! * grown) + QUIETEST;
    const peaks = (start: number, end: number) =>
      this.spectrum.peaks(samples.subarray(start, end), LOWEST, HIGHEST, least);
    const was = peaks(before, before + length);
    const is = peaks(after, after + length);
    return freshPartials(was, is, (after - before) / this.rate);
  }
}

/** Features of an onset as the pluck of each note from `LOWEST_HEARD` up, `FEATURES` numbers each. */
export function featuresOf(
  partials: readonly Fresh[],
  heard: OnsetStrength,
  reference: number,
): Float64Array {
  const saliences = saliencesOf(partials, reference);
  const all: Beside = {
    best: saliences.reduce((top, { salience }) => Math.max(top, salience), 1e-6),
    loudest: partials.reduce((top, { level, before }) => Math.max(top, level, before), 1e-9),
    newest: partials.reduce((top, { fresh }) => Math.max(top, fresh), 1e-9),
  };
  const out = new Float64Array(HEARD * FEATURES);
  for (let i = 0; i < HEARD; i++) {
    out.set(featuresAt(saliences, i, heard, all), i * FEATURES);
  }
  return out;
}

/** What a note is measured against: the greatest salience, and amplitude of anything and of anything new. */
interface Beside {
  readonly best: number;
  readonly loudest: number;
  readonly newest: number;
}

/** Semitones down to the notes that have all the partials of a note. */
const BELOW = [12, 19, 24];
/** Shares and amplitudes are told apart above these. */
const LITTLE = { share: 0.02, amplitude: 0.01 };

function featuresAt(
  saliences: readonly Salience[],
  index: number,
  { strength, jump }: OnsetStrength,
  { best, loudest, newest }: Beside,
): number[] {
  const note = saliences[index]!;
  const octave = saliences[index - 12];
  const below = Math.max(...BELOW.map((by) => saliences[index - by]?.salience ?? 0));
  const shares = (a: number, b: number) => Math.log((a + LITTLE.share) / (b + LITTLE.share));
  const little = LITTLE.amplitude * newest;
  const amplitudes = (a: number, b: number) => Math.log((a + little) / (b + little));
  const even = Math.sqrt(Math.max(0, note.fresh ** 2 - note.odd ** 2));
  return [
    1,
    Math.log(Math.max(0.5, strength)),
    note.salience / best,
    Math.log(note.salience + UNHEARD),
    Math.log((note.fresh + 0.001 * loudest) / loudest),
    note.found,
    Math.min(2, below / (note.salience + 0.01)),
    // Sharp or not: above that more says nothing more.
    Math.max(0, Math.min(SHARP, jump)),
    note.newly,
    // Where its octave was plucked a note's odd partials are not new; where the octave below was, that one's are.
    shares(note.oddShare, note.share - note.oddShare),
    amplitudes(note.odd, even),
    shares(octave?.oddShare ?? 0, note.share),
    amplitudes(octave?.odd ?? 0, note.fresh),
    // What rings on is never foretold quite rightly, but it does not grow.
    note.oddGrown,
    octave?.oddGrown ?? 0,
  ];
}

/** How much of what is new a note explains, 0 to 1. */
export const shareExplained = (features: Float64Array, midi: number): number =>
  Math.exp(features[(midi - LOWEST_HEARD) * FEATURES + 3]!) - UNHEARD;

/** Weights of the features: a logistic regression over the guitars that `npm run listen` names as tuned on. */
export const WEIGHTS = [
  -18.924, 0.099, 7.451, -0.385, 0.64, 2.908, -0.594, 5.936, 1.655, 2.53, -1.331, -3.033, 1.533,
  2.357, -2.016,
];

/**
 * The same for the one question whether a pluck is of a note or of its octave above, by the features of both: a regression of
 * its own, for in that over all notes most of what is not right is far from it.
 */
export const OCTAVE = {
  note: [
    0.223, 0.116, -0.892, 0.442, 1.61, 0.849, -1.546, 1.14, 4.268, -2.936, 2.898, 3.546, -1.319,
    -1.485, 0.348,
  ],
  above: [
    0.223, 0.116, 0.387, 1.607, -1.54, -1.994, -1.311, 1.14, -2.263, -0.531, -0.36, -4.789, -1.114,
    1.116, -1.485,
  ],
};

/** Log odds that an onset is the pluck of each note from `LOWEST_HEARD` up, others plucked with it or not. */
export function pluckOdds(features: Float64Array): Float64Array {
  return Float64Array.from({ length: HEARD }, (_, i) => weighed(features, i, WEIGHTS));
}

/** The same where one note is plucked at a time: which of those an octave apart it is, is a question of its own. */
export function singlePluckOdds(features: Float64Array): Float64Array {
  const all = pluckOdds(features);
  const above = Float64Array.from(
    { length: HEARD - 12 },
    (_, i) => weighed(features, i, OCTAVE.note) + weighed(features, i + 12, OCTAVE.above),
  );
  return all.map((odds, i) => {
    const any = sumOfOdds(odds, all[i - 12], all[i + 12]);
    return any - sumOfOdds(0, -(above[i - 12] ?? Infinity), above[i]);
  });
}

function weighed(features: Float64Array, note: number, weights: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < FEATURES; k++) sum += weights[k]! * features[note * FEATURES + k]!;
  return sum;
}

/** Log odds of any of what has these log odds, of which no two are at once. */
function sumOfOdds(first: number, ...others: (number | undefined)[]): number {
  const odds = [first, ...others.filter((other) => other !== undefined)];
  const most = Math.max(...odds);
  return most + Math.log(odds.reduce((sum, one) => sum + Math.exp(one - most), 0));
}
