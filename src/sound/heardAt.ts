/** Further apart than this many ms, what a context tells of its output is not to be believed. */
const BELIEVED = 500;

/**
 * When a time of the audio clock comes out of the loudspeaker, as far as the device tells it, in ms on the page's clock:
 * that of `performance.now()` and `event.timeStamp`.
 *
 * @param time in seconds
 */
export function heardAt(context: AudioContext, time: number): number {
  const latency = context.outputLatency || context.baseLatency || 0;
  const reckoned = performance.now() + 1000 * (time + latency - context.currentTime);
  // A pair that was taken at one moment: `currentTime` alone moves in blocks of a few ms.
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp?.() ?? {};
  if (contextTime === 0 || performanceTime === 0) return reckoned;
  const told = performanceTime + 1000 * (time - contextTime);
  return Math.abs(told - reckoned) < BELIEVED ? told : reckoned;
}
