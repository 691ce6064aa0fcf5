/** How late sound comes back: the phone's own click, out of its loudspeaker and in again at its microphone. */

/** Seconds after a click in which it is looked for: more than any phone takes, less than lies between two. */
export const LONGEST = 0.6;
/** Seconds between clicks. */
export const BETWEEN = 0.7;
/** How far a click has to stand above everything else that looks like it. */
const STANDS_OUT = 4;
/** Clicks that have to agree, and within how many seconds. */
const AGREE = 3;
const WITHIN = 0.003;

/**
 * Where in some samples a click begins, by its matched filter (North 1943) over both phases, so that a loudspeaker
 * that turns the wave round is no matter.
 * @returns an index with its fraction, or null where nothing stands out
 */
export function clickIn(samples: Float32Array, click: Float32Array): number | null {
  const quarter = shifted(click);
  const power = Float64Array.from(
    { length: Math.max(0, samples.length - click.length) },
    (_, n) => {
      let [a, b] = [0, 0];
      for (let k = 0; k < click.length; k++) {
        a += samples[n + k]! * click[k]!;
        b += samples[n + k]! * quarter[k]!;
      }
      return Math.hypot(a, b);
    },
  );
  let best = 0;
  power.forEach((value, n) => {
    if (value > power[best]!) best = n;
  });
  let other = 1e-9;
  power.forEach((value, n) => {
    // What comes later may be the room's echo.
    if (n < best - click.length && value > other) other = value;
  });
  const floor = power.toSorted()[power.length >> 1] ?? 0;
  if (power.length < 3 || power[best]! < STANDS_OUT * Math.max(other / 2, floor, 1e-6)) return null;
  const [a, b, c] = [power[best - 1] ?? 0, power[best]!, power[best + 1] ?? 0];
  return best + (0.5 * (a - c)) / (a - 2 * b + c - 1e-12);
}

/** The click a quarter of a period on, by the difference: it is narrow about one frequency. */
function shifted(click: Float32Array): Float32Array {
  const slope = click.map((_, n) => ((click[n + 1] ?? 0) - (click[n - 1] ?? 0)) / 2);
  const level = (samples: Float32Array) => Math.hypot(...samples);
  const gain = level(click) / (level(slope) || 1);
  return slope.map((value) => value * gain);
}

/**
 * The delay that most of some measurements agree on.
 * @param found seconds, or null where a click was not heard (headphones)
 * @returns their median, or null where fewer than three agree within 3 ms
 */
export function agreed(found: readonly (number | null)[]): number | null {
  const heard = found.filter((seconds) => seconds !== null).toSorted((a, b) => a - b);
  const middle = heard[heard.length >> 1];
  if (middle === undefined) return null;
  return heard.filter((seconds) => Math.abs(seconds - middle) <= WITHIN).length >= AGREE
    ? middle
    : null;
}
