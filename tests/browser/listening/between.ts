/** A Worker on the way from the worklet to the Worker: counts what comes by, and hands it on. */
import type { Block } from '../../../src/listening/orders.ts';

/** What came by, while the microphone heard a ramp. */
export interface Counted {
  blocks: number;
  /** Frames of the audio clock that no block covers, or more than one: what was lost, doubled or out of order. */
  lost: number;
  /** Places within the clock's own frames where the ramp does not go on: the simulated microphone's. */
  breaks: number;
  /** Seconds of audio, and of the wall clock, between the first block and the last. */
  audio: number;
  wall: number;
}

const RATE = 44100;
let [next, first, begun, last] = [-1, 0, 0, 0];
let counted: Counted | null = null;

addEventListener('message', ({ data }: MessageEvent) => {
  if (data === 'begin') {
    next = -1;
    counted = { blocks: 0, lost: 0, breaks: 0, audio: 0, wall: 0 };
  } else if (data === 'tell') postMessage(counted);
  else {
    data.from.addEventListener('message', ({ data: block }: MessageEvent<Block>) => {
      if (counted) count(counted, block);
      data.to.postMessage(block, [block.samples.buffer]);
    });
    data.from.start();
  }
});

function count(into: Counted, { frame, samples }: Block): void {
  if (next < 0) [first, begun] = [frame, performance.now()];
  else {
    into.lost += Math.abs(frame - next);
    into.breaks += breaksIn(last, samples);
  }
  into.blocks++;
  next = frame + samples.length;
  last = samples.at(-1)!;
  into.audio = (next - first) / RATE;
  into.wall = (performance.now() - begun) / 1000;
}

/** Where a ramp from −1 to 1 in 32768 samples does not go on; that it begins anew is no break. */
function breaksIn(before: number, samples: Float32Array): number {
  let breaks = 0;
  let was = before;
  for (const value of samples) {
    const by = 16384 * (value - was + (value - was < -1 ? 2 : 0));
    if (Math.abs(by - 1) > 0.6) breaks++;
    was = value;
  }
  return breaks;
}
