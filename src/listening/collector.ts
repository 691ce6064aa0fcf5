/**
 * On the audio thread, where a late block is lost: puts blocks together and sends them on, straight to the Worker, and
 * does nothing else. Onsets are found in the Worker too, so that Node and the browser hear the very same blocks.
 */

declare const currentFrame: number;
declare function registerProcessor(name: string, processor: unknown): void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

/** Samples sent at a time: 12 ms. */
const BLOCK = 512;

class Collector extends AudioWorkletProcessor {
  private to: MessagePort | null = null;
  private block = new Float32Array(BLOCK);
  private filled = 0;
  /** The frame of the clock at which the block begins. */
  private begun = 0;
  private open = true;

  constructor() {
    super();
    this.port.addEventListener('message', ({ data }: MessageEvent<MessagePort | null>) => {
      this.to = data;
      this.open = data !== null;
    });
    this.port.start();
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const samples = inputs[0]?.[0];
    // What does not follow on is no part of the same block.
    if (this.filled > 0 && (!samples || currentFrame !== this.begun + this.filled)) this.send();
    if (!samples || !this.to) return this.open;
    if (this.filled === 0) this.begun = currentFrame;
    this.block.set(samples, this.filled);
    this.filled += samples.length;
    if (this.filled === BLOCK) this.send();
    return this.open;
  }

  private send(): void {
    const samples = this.block.subarray(0, this.filled);
    this.to?.postMessage({ frame: this.begun, samples }, [this.block.buffer]);
    this.block = new Float32Array(BLOCK);
    this.filled = 0;
  }
}

registerProcessor('collector', Collector);
