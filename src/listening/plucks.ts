/** Blocks of samples in, plucks out: each onset looked at closely once enough of it was heard. */
import { DELAY, Evidence, type Considered } from './evidence.ts';
import { OnsetFinder, type Onset } from './onset.ts';
import { Track } from './track.ts';

/** Something that may be a pluck, in seconds on the clock: where it jumps, and when it was plucked (see `Attack`). */
export interface MaybePluck {
  readonly time: number;
  readonly plucked: number;
  readonly considered: Considered;
}

/** Seconds that are kept. */
const KEPT = 8;

export class PluckFinder {
  private readonly track: Track;
  private readonly onsets: OnsetFinder;
  private readonly evidence: Evidence;
  private waiting: Onset[] = [];

  /**
   * @param rate samples a second
   * @param silence half a second or so without playing, or nothing
   * @param start seconds on the clock at which the first block begins
   */
  constructor(
    private readonly rate: number,
    silence: Float32Array,
    private readonly start: number,
  ) {
    this.track = new Track(KEPT * rate);
    this.onsets = new OnsetFinder(rate);
    this.evidence = new Evidence(rate);
    this.onsets.expectNoise(silence);
    this.evidence.expectNoise(silence);
  }

  /** The end of what was heard, in seconds on the clock. */
  get now(): number {
    return this.start + this.track.end / this.rate;
  }

  /** Takes the next block; gives what is ready by now. */
  hear(block: Float32Array): MaybePluck[] {
    this.track.add(block);
    this.waiting.push(...this.onsets.hear(block));
    const ready = this.waiting.findIndex(
      ({ at }) => this.track.end < at + (DELAY + 0.01) * this.rate,
    );
    return this.considered(ready < 0 ? this.waiting.length : ready);
  }

  /** What is left, with what there is of it: no more is to come. */
  finish(): MaybePluck[] {
    return this.considered(this.waiting.length);
  }

  private considered(count: number): MaybePluck[] {
    return Array.from({ length: count }, () => {
      const onset = this.waiting.shift()!;
      const considered = this.evidence.consider(this.track, onset, this.waiting);
      const [time, plucked] = [considered.at, considered.plucked].map(
        (at) => this.start + at / this.rate,
      );
      return { time: time!, plucked: plucked!, considered };
    });
  }
}
