import FFT from 'fft.js';

/** A spectral peak: where it is, and its amplitude as a complex number with the phase at the window's middle. */
export interface Peak {
  readonly hertz: number;
  /** Amplitude of the sinusoid, full scale 1. */
  readonly level: number;
  readonly re: number;
  readonly im: number;
}

/** Fourier transforms of Hann-windowed, zero-padded pieces (Harris 1978), by the library fft.js. */
export class Spectrum {
  private readonly fft: FFT;
  private readonly padded: Float64Array;
  private readonly out: Float64Array;
  private readonly windows = new Map<number, Float64Array>();
  /** Amplitudes of the last piece, by bin: full scale 1 for a sinusoid in the middle of a bin. */
  readonly levels: Float64Array;

  /** @param size of the transform, a power of two */
  constructor(
    readonly size: number,
    readonly rate: number,
  ) {
    this.fft = new FFT(size);
    this.padded = new Float64Array(size);
    this.out = new Float64Array(2 * size);
    this.levels = new Float64Array(size / 2);
  }

  /** Transforms a piece of at most `size` samples; fills `levels`. */
  transform(piece: Float32Array): void {
    const window = this.windowOf(piece.length);
    for (let n = 0; n < piece.length; n++) this.padded[n] = piece[n]! * window[n]!;
    this.padded.fill(0, piece.length);
    this.fft.realTransform(this.out, this.padded);
    const scale = 4 / piece.length;
    for (let bin = 0; bin < this.levels.length; bin++) {
      const re = this.out[2 * bin]!;
      const im = this.out[2 * bin + 1]!;
      this.levels[bin] = scale * Math.sqrt(re * re + im * im);
    }
  }

  /** The peaks of a piece from `lowest` to `highest` Hz that reach `least`, by a parabola over the logarithm. */
  peaks(piece: Float32Array, lowest: number, highest: number, least: (bin: number) => number) {
    this.transform(piece);
    const { levels, rate, size } = this;
    const found: Peak[] = [];
    const last = Math.min(levels.length - 2, Math.floor((highest * size) / rate));
    for (let bin = Math.max(1, Math.floor((lowest * size) / rate)); bin <= last; bin++) {
      const level = levels[bin]!;
      if (level < levels[bin - 1]! || level <= levels[bin + 1]! || !(level > least(bin))) continue;
      found.push(this.peakAt(bin, piece.length));
    }
    return found;
  }

  private peakAt(bin: number, length: number): Peak {
    const [a, b, c] = [bin - 1, bin, bin + 1].map((k) => Math.log(this.levels[k]! + 1e-12));
    const shift = (0.5 * (a! - c!)) / (a! - 2 * b! + c! - 1e-12);
    const level = Math.exp(b! - 0.25 * (a! - c!) * shift);
    // The window's middle, not its beginning: there a change of frequency does not turn the phase.
    const hertz = ((bin + shift) * this.rate) / this.size;
    const turn = (2 * Math.PI * bin * (length / 2)) / this.size;
    const phase = Math.atan2(this.out[2 * bin + 1]!, this.out[2 * bin]!) + turn;
    return { hertz, level, re: level * Math.cos(phase), im: level * Math.sin(phase) };
  }

  private windowOf(length: number): Float64Array {
    let window = this.windows.get(length);
    if (!window) {
      window = Float64Array.from(
        { length },
        (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / length),
      );
      if (this.windows.size > 64) this.windows.clear();
      this.windows.set(length, window);
    }
    return window;
  }
}
