/** Tuning up: how far the string that sounds is from where it should be. */
import { PitchDetector } from 'pitchy';
import { frequency } from '../theory/note.ts';
import { IN_TUNE, LEFT_SO, type StringTuning } from './listening.ts';
import { Track } from './track.ts';

/** Seconds looked at: 4096 samples at 44.1 kHz, twice that for basses. */
const PIECE = 4096 / 44100;
const BASS = 60;
/** Between one look and the next. */
const STEP = 0.025;
/** How clear a pitch has to be (McLeod & Wyvill 2005), and how far above the noise (amplitude). */
const CLEAR = 0.9;
const OVER_NOISE = 3;
const QUIETEST = 3e-4;
/** Farther off than this it is no string of the instrument, in cents. */
const FARTHEST = 350;
/** A reading is the median of so many, and given from so many on. */
const READINGS = 12;
const ENOUGH = 5;

export class StringTuner {
  private readonly track: Track;
  private readonly length: number;
  private readonly detector: PitchDetector<Float32Array>;
  private readonly hertz: readonly number[];
  private readonly least: number;
  private next: number;
  private string = -1;
  private cents: number[] = [];

  /**
   * @param strings MIDI numbers of the open strings
   * @param reference A4 in Hz
   * @param noise root mean square of an opening silence
   * @param start seconds on the clock at which the first block begins
   */
  constructor(
    private readonly rate: number,
    strings: readonly number[],
    reference: number,
    noise = 0,
    private readonly start = 0,
  ) {
    this.hertz = strings.map((midi) => frequency(midi, reference));
    const pieces = Math.min(...this.hertz) < BASS ? 2 : 1;
    this.length = pieces * 2 ** Math.round(Math.log2(PIECE * rate));
    this.detector = PitchDetector.forFloat32Array(this.length);
    this.track = new Track(2 * this.length);
    this.least = Math.max(QUIETEST, OVER_NOISE * noise);
    this.next = this.length;
  }

  /** Takes the next block; gives what can be read by now, at most once a block. */
  hear(block: Float32Array): StringTuning | null {
    this.track.add(block);
    if (this.track.end < this.next) return null;
    this.next = this.track.end + Math.round(STEP * this.rate);
    return this.read();
  }

  private read(): StringTuning | null {
    const piece = this.track.slice(this.track.end - this.length, this.track.end);
    if (rootMeanSquare(piece) < this.least) return this.forget();
    const [hertz, clarity] = this.detector.findPitch(piece, this.rate);
    if (!(clarity >= CLEAR) || !(hertz > 0)) return null;
    const all = this.hertz.map((wanted) => 1200 * Math.log2(hertz / wanted));
    const string = all.reduce(
      (best, off, i) => (Math.abs(off) < Math.abs(all[best]!) ? i : best),
      0,
    );
    if (Math.abs(all[string]!) > FARTHEST) return this.forget();
    if (string !== this.string) this.cents = [];
    this.string = string;
    this.cents = [...this.cents, all[string]!].slice(-READINGS);
    return this.cents.length < ENOUGH ? null : this.reading();
  }

  private reading(): StringTuning {
    const sorted = this.cents.toSorted((a, b) => a - b);
    const middle = (sorted.length - 1) / 2;
    const cents = (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
    const off = Math.abs(cents);
    const state = off <= IN_TUNE ? 'ready' : off <= LEFT_SO ? 'near' : 'off';
    return { string: this.string, cents, state, time: this.start + this.track.end / this.rate };
  }

  private forget(): null {
    this.cents = [];
    return null;
  }
}

export function rootMeanSquare(samples: Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return Math.sqrt(sum / Math.max(1, samples.length));
}
