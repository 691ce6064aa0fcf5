/** How hard a click falls: on the first beat of a bar, on another beat, between beats. */
export type Accent = 'bar' | 'beat' | 'between';

/** Amplitude of each accent, of full scale. */
export const CLICK_PEAK: Readonly<Record<Accent, number>> = {
  bar: 0.25,
  beat: 0.15,
  between: 0.07,
};

/** Length of the click, in seconds. */
const LENGTH = 0.008;

/**
 * The metronome's click: a burst at 6 kHz, so that a microphone that listens below 3.5 kHz does not take it for a
 * string. A Blackman window (Harris 1978) keeps what leaks below that 58 dB and more under the peak.
 *
 * @param rate samples a second
 * @returns one channel, peak close to 1
 */
export function renderClick(rate: number): Float32Array<ArrayBuffer> {
  const length = Math.round(rate * LENGTH);
  return Float32Array.from({ length }, (_, n) => {
    const turn = (2 * Math.PI * n) / (length - 1);
    const window = 0.42 - 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn);
    return window * Math.sin((2 * Math.PI * 6000 * n) / rate);
  });
}
