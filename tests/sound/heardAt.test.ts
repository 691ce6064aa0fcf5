/** When a time of the audio clock is heard, on the page's clock: Web Audio API, 1.2.3 (`getOutputTimestamp`) and 1.2.1. */
import { afterEach, expect, test, vi } from 'vitest';
import { heardAt } from '../../src/sound/heardAt.ts';

afterEach(() => vi.restoreAllMocks());

// The page's clock stands at 10 s, the audio clock at 3 s.
const at = (time: number, of: object) => {
  vi.spyOn(performance, 'now').mockReturnValue(10_000);
  return heardAt({ currentTime: 3, ...of } as AudioContext, time);
};
const stamp = (contextTime: number, performanceTime: number) => ({
  getOutputTimestamp: () => ({ contextTime, performanceTime }),
});

test.each([
  ['a second ahead, without a word of the device', 4, {}, 11_000],
  ['in the past', 2.5, {}, 9500],
  [
    'later by the latency to the loudspeaker',
    4,
    { outputLatency: 0.18, baseLatency: 0.01 },
    11_180,
  ],
  ['or else by that of the context', 4, { baseLatency: 0.01 }, 11_010],
  ['as the pair of clocks says', 4, { outputLatency: 0.18, ...stamp(2.8, 9990) }, 11_190],
  [
    'not as a pair that is half a second off',
    4,
    { outputLatency: 0.1, ...stamp(2.8, 10_700) },
    11_100,
  ],
  ['nor as one that is not there yet', 4, { outputLatency: 0.1, ...stamp(0, 0) }, 11_100],
  ['nor as half of one', 4, stamp(3, 0), 11_000],
])('it is %s', (_, time, of, ms) => {
  expect(at(time, of)).toBeCloseTo(ms, 6);
});
