/** Measuring by ear's arithmetic, sharing nothing with what is measured. */

export interface Partial {
  /** How far from where it belongs. */
  readonly cents: number;
  /** Seconds in which it falls by 60 dB. */
  readonly decay: number;
  /** Amplitude at the beginning of the measurement. */
  readonly level: number;
}

const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / values.length;

/** The slope of a line through points, by least squares. */
function slope(xs: readonly number[], ys: readonly number[]): number {
  const [x0, y0] = [mean(xs), mean(ys)];
  const over = xs.reduce((sum, x, i) => sum + (x - x0) * (ys[i]! - y0), 0);
  return over / xs.reduce((sum, x) => sum + (x - x0) ** 2, 0);
}

/**
 * One partial between two times (seconds): the recording is turned down to 0 Hz by where the partial should be and
 * looked at through Blackman windows, long enough to tell it from others so many Hz `apart`; what phase is left over time is how far it is off, what level is lost its decay.
 */
export function partial(
  samples: Float32Array,
  rate: number,
  hertz: number,
  from: number,
  to: number,
  apart = hertz,
): Partial {
  const window = Math.round(rate * Math.max(0.06, 8 / apart));
  const [times, phases, levels]: number[][] = [[], [], []];
  for (let start = Math.round(from * rate); start + window < to * rate; start += window >> 2) {
    let [re, im, weight] = [0, 0, 0];
    for (let n = 0; n < window; n++) {
      const turn = (2 * Math.PI * n) / window;
      const w = 0.42 - 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn);
      const angle = (2 * Math.PI * hertz * (start + n)) / rate;
      re += w * samples[start + n]! * Math.cos(angle);
      im -= w * samples[start + n]! * Math.sin(angle);
      weight += w;
    }
    let phase = Math.atan2(im, re);
    if (phases!.length > 0) {
      phase += 2 * Math.PI * Math.round((phases!.at(-1)! - phase) / (2 * Math.PI));
    }
    times!.push((start + window / 2) / rate);
    phases!.push(phase);
    levels!.push((2 * Math.hypot(re, im)) / weight);
  }
  const off = slope(times!, phases!) / (2 * Math.PI);
  return {
    cents: 1200 * Math.log2((hertz + off) / hertz),
    decay:
      -60 /
      slope(
        times!,
        levels!.map((level) => 20 * Math.log10(level)),
      ),
    level: levels![0]!,
  };
}

/** Largest absolute sample between two times (seconds). */
export function peak(samples: Float32Array, rate: number, from = 0, to = Infinity): number {
  let most = 0;
  const end = Math.min(samples.length, to * rate);
  for (let n = Math.round(from * rate); n < end; n++) most = Math.max(most, Math.abs(samples[n]!));
  return most;
}

/** Root of the mean square of the loudest stretch of so many seconds. */
export function loudest(samples: Float32Array, rate: number, seconds: number): number {
  const window = Math.round(seconds * rate);
  let [sum, most] = [0, 0];
  for (let n = 0; n < samples.length; n++) {
    sum += samples[n]! ** 2 - (n >= window ? samples[n - window]! ** 2 : 0);
    most = Math.max(most, sum);
  }
  return Math.sqrt(most / window);
}

/** Times (seconds) at which sound begins again after at least `silence` seconds below `floor`. */
export function onsets(
  samples: Float32Array,
  rate: number,
  silence = 0.005,
  floor = 1e-4,
): number[] {
  const found: number[] = [];
  let quiet = Infinity;
  for (let n = 0; n < samples.length; n++) {
    if (Math.abs(samples[n]!) < floor) quiet += 1;
    else {
      if (quiet >= silence * rate) found.push(n / rate);
      quiet = 0;
    }
  }
  return found;
}

/** Amplitude spectrum in steps of so many Hz up to half the rate. */
export function spectrum(samples: Float32Array, rate: number, apart: number): number[] {
  return Array.from({ length: Math.floor(rate / 2 / apart) }, (_, bin) => {
    let [re, im] = [0, 0];
    for (let n = 0; n < samples.length; n++) {
      const angle = (2 * Math.PI * bin * apart * n) / rate;
      re += samples[n]! * Math.cos(angle);
      im += samples[n]! * Math.sin(angle);
    }
    return Math.hypot(re, im);
  });
}

/** How much of a spectrum's energy lies from a bin on upwards, in dB. */
export function above(levels: readonly number[], bin: number): number {
  const energy = (of: readonly number[]) => of.reduce((sum, level) => sum + level ** 2, 0);
  return 10 * Math.log10(energy(levels.slice(bin)) / energy(levels));
}

/** Largest difference between neighbouring samples between two times (seconds). */
export function step(samples: Float32Array, rate: number, from: number, to: number): number {
  let most = 0;
  for (let n = Math.round(from * rate) + 1; n < to * rate; n++) {
    most = Math.max(most, Math.abs(samples[n]! - samples[n - 1]!));
  }
  return most;
}
