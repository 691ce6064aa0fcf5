/** How likely it is that an onset is the pluck of each note: what the follower goes by. */
import { freshPartials, type Fresh } from './fresh.ts';
import { HEARD, LOWEST_HEARD, saliencesOf, type Salience } from './salience.ts';
import { Spectrum } from './spectrum.ts';
import { ATTACK_NEEDS, AttackFinder, type Attack } from './attack.ts';
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
export const FEATURES = 11;

/** What is put to a salience before its logarithm is taken. */
const UNHEARD = 0.02;

/** What an onset's own strength is, in both ways of finding it. */
export interface OnsetStrength {
  readonly strength: number;
  readonly jump: number;
}

/** An onset looked at closely. */
export interface Considered {
  /** Samples since the beginning. */
  readonly at: number;
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
    const { at, jump } = this.attack(track, onset);
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
    return { at, partials, heard: { strength: onset.strength, jump } };
  }

  private attack(track: Track, onset: Onset): Attack {
    const from = Math.floor(onset.at - ATTACK_NEEDS.before * this.rate);
    const samples = track.slice(from, Math.ceil(onset.at + ATTACK_NEEDS.after * this.rate));
    const attack = this.attacks.find(samples, onset.at - from);
    return { at: from + attack.at, jump: attack.jump };
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
  const best = saliences.reduce((top, { salience }) => Math.max(top, salience), 1e-6);
  const loudest = partials.reduce((top, { level, before }) => Math.max(top, level, before), 1e-9);
  const out = new Float64Array(HEARD * FEATURES);
  for (let i = 0; i < HEARD; i++) {
    const of = (by: number) => saliences[i + by]?.salience ?? 0;
    out.set(featuresAt(saliences[i]!, of, heard, best, loudest), i * FEATURES);
  }
  return out;
}

function featuresAt(
  note: Salience,
  of: (by: number) => number,
  { strength, jump }: OnsetStrength,
  best: number,
  loudest: number,
): number[] {
  const own = note.salience + 0.01;
  const against = (...by: number[]) => Math.min(2, Math.max(...by.map(of)) / own);
  return [
    1,
    Math.log(Math.max(0.5, strength)),
    note.salience / best,
    Math.log(note.salience + UNHEARD),
    Math.log((note.fresh + 0.01 * loudest) / (note.before + 0.01 * loudest)),
    Math.log((note.fresh + 0.001 * loudest) / loudest),
    note.found,
    against(-12, -19, -24),
    against(12, 19),
    against(-1, 1),
    Math.min(5, jump),
  ];
}

/** How much of what is new a note explains, 0 to 1. */
export const shareExplained = (features: Float64Array, midi: number): number =>
  Math.exp(features[(midi - LOWEST_HEARD) * FEATURES + 3]!) - UNHEARD;

/** Weights of the features: a logistic regression over the guitars that `npm run listen` names as tuned on. */
export const WEIGHTS = [
  -10.54, 0.406, 10.639, 1.705, 0.451, 0.695, 2.293, -1.819, -1.79, 1.309, 0.473,
];

/** Log odds that an onset is the pluck of each note from `LOWEST_HEARD` up. */
export function pluckOdds(features: Float64Array): Float64Array {
  return Float64Array.from({ length: HEARD }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < FEATURES; k++) sum += WEIGHTS[k]! * features[i * FEATURES + k]!;
    return sum;
  });
}
