/** A page with nothing but sound, for measuring it in a real browser. */
import * as sound from '../../../src/sound/index.ts';

/** All that comes out of a context from now on, as one run of samples from the frame `from` on. */
async function record(context: AudioContext) {
  await context.audioWorklet.addModule(new URL('./recorder.js', import.meta.url));
  const recorder = new AudioWorkletNode(context, 'recorder', { channelCount: 1 });
  const blocks: { frame: number; samples: Float32Array }[] = [];
  recorder.port.addEventListener('message', ({ data }) => blocks.push(data));
  recorder.port.start();
  recorder.connect(context.destination);
  for (const output of outputs) if (output.context === context) output.connect(recorder);
  return () => {
    const first = blocks[0]!.frame;
    const last = blocks.at(-1)!;
    const samples = new Float32Array(last.frame + last.samples.length - first);
    for (const block of blocks) samples.set(block.samples, block.frame - first);
    return { from: first / context.sampleRate, samples };
  };
}

const contexts: AudioContext[] = [];
const outputs: AudioNode[] = [];
const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
  if (to instanceof AudioDestinationNode) outputs.push(this);
  return connect.call(this, to);
} as typeof AudioNode.prototype.connect;
window.AudioContext = class extends AudioContext {
  constructor(options?: AudioContextOptions) {
    super(options);
    contexts.push(this);
  }
};

const page = {
  sound,
  record,
  contexts,
  offline: () => import('./offline.ts'),
  player: () => import('../../../src/sound/player.ts'),
};

declare global {
  interface Window {
    readonly page: typeof page;
  }
}
Object.assign(window, { page });
document.querySelector('button')!.addEventListener('click', () => sound.pluck(64, 1));
