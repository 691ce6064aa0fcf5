/** All that a page lets sound, as it leaves its audio contexts, cut where it is silent. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';

/** One run of sound between two silences. */
export interface Sounding {
  readonly samples: Float32Array;
  /** Samples a second. */
  readonly rate: number;
  /** Whether its beginning is on the tape. */
  readonly whole: boolean;
}

/** What was recorded so far. */
export interface Tape {
  /** How far it is by now, to be given to `since`. */
  mark(): Promise<number>;
  /** What sounded since a mark, or since the beginning; the last one may still be going on. */
  since(mark?: number): Promise<Sounding[]>;
}

/** As long as this is silent between what is played and what is played next: more than between two notes of it. */
const SILENCE = 0.06;
/** Below this nothing sounds. */
const FLOOR = 1e-4;

/**
 * Records from now on; to be called before the page is loaded, in a browser context whose pages may load more than their content
 * policy says (`bypassCSP`), for the recorder is a script of its own.
 *
 * Everything that is connected to a loudspeaker is connected to a recorder beside it.
 */
export async function recordPage(page: Page): Promise<Tape> {
  const recorder = await readFile(join(import.meta.dirname, 'recorder.js'), 'utf8');
  await page.addInitScript(recordAll, recorder);
  return {
    mark: () => page.evaluate(() => (globalThis as unknown as Recording).tape.length()),
    async since(mark = 0) {
      const { text, rate } = await page.evaluate(
        (from) => (globalThis as unknown as Recording).tape.read(from),
        mark,
      );
      const bytes = Uint8Array.from(Buffer.from(text, 'base64'));
      return cut(new Float32Array(bytes.buffer), rate);
    },
  };
}

interface Recording {
  readonly tape: { length(): number; read(from: number): { text: string; rate: number } };
}

/** Runs in the page, before anything of its own. */
function recordAll(script: string): void {
  const blocks: { readonly frame: number; readonly samples: Float32Array }[] = [];
  let rate = 44_100;
  const recorders = new Map<BaseAudioContext, Promise<AudioWorkletNode>>();
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  const recorderOf = (context: BaseAudioContext) => {
    const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
    return context.audioWorklet.addModule(address).then(() => {
      const recorder = new AudioWorkletNode(context, 'recorder', { channelCount: 1 });
      recorder.port.addEventListener('message', ({ data }) => blocks.push(data));
      recorder.port.start();
      connect.call(recorder, context.destination);
      rate = context.sampleRate;
      return recorder;
    });
  };
  // At once, so that it is there before anything sounds.
  globalThis.AudioContext = class extends AudioContext {
    constructor(options?: AudioContextOptions) {
      super(options);
      recorders.set(this, recorderOf(this));
    }
  };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...ports: number[]) {
    if (to instanceof AudioDestinationNode)
      void recorders.get(this.context)?.then((recorder) => connect.call(this, recorder));
    return (connect as (...all: unknown[]) => AudioNode).call(this, to, ...ports);
  } as typeof AudioNode.prototype.connect;
  const length = () => {
    const last = blocks.at(-1);
    return last ? last.frame + last.samples.length : 0;
  };
  const read = (mark: number) => {
    const from = Math.max(mark, blocks[0]?.frame ?? 0);
    const samples = new Float32Array(Math.max(0, length() - from));
    for (const block of blocks)
      if (block.frame >= from) samples.set(block.samples, block.frame - from);
    const bytes = new Uint8Array(samples.buffer);
    let text = '';
    for (let at = 0; at < bytes.length; at += 30_000)
      text += String.fromCharCode(...bytes.subarray(at, at + 30_000));
    return { text: btoa(text), rate };
  };
  Object.assign(globalThis, { tape: { length, read } });
}

/** Cuts a recording where it is silent. */
function cut(samples: Float32Array, rate: number): Sounding[] {
  const found: Sounding[] = [];
  let [from, quiet] = [-1, 0];
  samples.forEach((sample, n) => {
    quiet = Math.abs(sample) < FLOOR ? quiet + 1 : 0;
    if (quiet === 0 && from < 0) from = n;
    const over = quiet > SILENCE * rate || n === samples.length - 1;
    if (from < 0 || !over) return;
    found.push({ samples: samples.slice(from, n + 1 - quiet), rate, whole: from > 0 });
    from = -1;
  });
  return found;
}
