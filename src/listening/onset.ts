/**
 * Onsets by SuperFlux (Böck & Widmer, DAFx 2013): the rise of a logarithmic spectrum over the maximum of neighbouring
 * bins a little earlier, so that vibrato is no rise. Each bin is measured against the noise of an opening silence and
 * against what has lately been loudest, so that nothing that is still to come is needed.
 */
import { Spectrum } from './spectrum.ts';

/** When, in samples since the beginning, and how strong. */
export interface Onset {
  readonly at: number;
  readonly strength: number;
}

const FRAME_SECONDS = 1024 / 44100;
const LOWEST = 70;
const HIGHEST = 3500;
/** Frames back to which the rise is measured. */
const BACK = 4;
const BEFORE = 8;
const AFTER = 3;
/** Seconds for which a lone onset keeps others away. */
export const params = { share: 0.008, over: 1.6, quiet: 0.4, apart: 0.03 };
/** The onset lies so long before the middle of the frame that rises most, in seconds (measured). */
const LATE = 0.0;

/** Finds onsets in blocks of any length. */
export class OnsetFinder {
  readonly hop: number;
  private readonly frame: number;
  private readonly spectrum: Spectrum;
  private readonly first: number;
  private readonly bins: number;
  private readonly history: Float64Array[] = [];
  private readonly buffer: Float32Array;
  private filled = 0;
  private frames = 0;
  private top = 0;
  private readonly noise: Float64Array;
  private flux: number[] = [];
  private fluxTop = 0;
  private quietest = 0;
  private last = -Infinity;

  constructor(private readonly rate: number) {
    this.frame = 2 ** Math.round(Math.log2(FRAME_SECONDS * rate));
    this.hop = this.frame / 8;
    this.spectrum = new Spectrum(this.frame, rate);
    this.buffer = new Float32Array(this.frame);
    this.first = Math.ceil((LOWEST * this.frame) / rate);
    this.bins = Math.floor((HIGHEST * this.frame) / rate) - this.first + 1;
    this.noise = new Float64Array(this.bins);
  }

  /** Takes an opening silence, half a second of it or so, as what is to be expected of noise. */
  expectNoise(silence: Float32Array): void {
    const fresh = new OnsetFinder(this.rate);
    let frames = 0;
    for (let end = this.frame; end <= silence.length; end += this.hop) {
      fresh.spectrum.transform(silence.subarray(end - this.frame, end));
      for (let k = 0; k < this.bins; k++) this.noise[k]! += fresh.spectrum.levels[this.first + k]!;
      frames++;
    }
    for (let k = 0; k < this.bins; k++) this.noise[k]! /= Math.max(1, frames);
    fresh.noise.set(this.noise);
    fresh.hear(silence);
    this.quietest = fresh.fluxTop;
  }

  /** Takes the next samples; gives the onsets found in them and a little before. */
  hear(samples: Float32Array): Onset[] {
    const found: Onset[] = [];
    for (let taken = 0; taken < samples.length;) {
      const part = samples.subarray(taken, taken + this.frame - this.filled);
      this.buffer.set(part, this.filled);
      this.filled += part.length;
      taken += part.length;
      if (this.filled < this.frame) break;
      const onset = this.step();
      if (onset) found.push(onset);
      this.buffer.copyWithin(0, this.hop);
      this.filled = this.frame - this.hop;
    }
    return found;
  }

  private step(): Onset | null {
    this.spectrum.transform(this.buffer);
    const levels = this.spectrum.levels.subarray(this.first, this.first + this.bins);
    this.top *= 0.5 ** (this.hop / this.rate / 3);
    for (const level of levels) if (level > this.top) this.top = level;
    const least = Math.max(0.004 * this.top, 1e-6);
    const logs = levels.map((level, k) =>
      Math.log10(1 + (level / Math.max(3 * this.noise[k]!, least)) ** 2),
    );
    const before = this.history.length < BACK ? null : this.history.shift()!;
    this.history.push(logs);
    let rise = 0;
    if (before) {
      for (let k = 0; k < this.bins; k++) {
        const most = Math.max(before[k - 1] ?? 0, before[k]!, before[k + 1] ?? 0);
        if (logs[k]! > most) rise += logs[k]! - most;
      }
    }
    this.frames++;
    this.flux.push(rise);
    if (this.flux.length > 64) this.flux.shift();
    return this.peak();
  }

  /** Whether the frame `AFTER` frames ago was a peak. */
  private peak(): Onset | null {
    const { flux } = this;
    const i = flux.length - 1 - AFTER;
    if (i < 1) return null;
    const here = flux[i]!;
    this.fluxTop = Math.max(this.fluxTop * 0.5 ** (this.hop / this.rate / 3), here);
    for (let k = Math.max(0, i - BEFORE); k <= i + AFTER; k++) {
      if (k !== i && (k < i ? flux[k]! >= here : flux[k]! > here)) return null;
    }
    const frames120 = Math.round((0.12 * this.rate) / this.hop);
    const recent = flux.slice(Math.max(0, i - frames120), i).toSorted((a, b) => a - b);
    const median = recent[recent.length >> 1] ?? 0;
    const over = here - median;
    if (
      over < Math.max(params.over, params.quiet * this.quietest) ||
      here < params.share * this.fluxTop
    )
      return null;
    const [a, b, c] = [flux[i - 1]!, here, flux[i + 1]!];
    const shift = (0.5 * (a - c)) / (a - 2 * b + c - 1e-9);
    const frame = this.frames - 1 - AFTER + shift;
    const at = frame * this.hop + this.frame / 2 - LATE * this.rate;
    if (at - this.last < params.apart * this.rate) return null;
    this.last = at;
    return { at, strength: over };
  }
}
