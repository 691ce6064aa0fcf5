/** The last seconds that were heard, by index since the beginning. */
export class Track {
  private readonly samples: Float32Array;
  /** Index of the next sample to come. */
  end = 0;

  /** @param length how many samples are kept at least */
  constructor(length: number) {
    this.samples = new Float32Array(Math.ceil(length));
  }

  add(block: Float32Array): void {
    for (let n = 0; n < block.length; n++)
      this.samples[(this.end + n) % this.samples.length] = block[n]!;
    this.end += block.length;
  }

  /** Samples from an index up to another; what is no longer there, or not yet, is 0. */
  slice(from: number, to: number): Float32Array {
    const { samples, end } = this;
    const out = new Float32Array(to - from);
    const first = Math.max(from, end - samples.length, 0);
    for (let i = first; i < Math.min(to, end); i++) out[i - from] = samples[i % samples.length]!;
    return out;
  }
}
