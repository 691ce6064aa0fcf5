import type { Page } from '@playwright/test';
import { RATE } from '../listening/played.ts';

/** From now on the page's microphone hears what is played to it with `playSamples`, in a quiet room. */
export async function hearing(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const context = new AudioContext();
    const into = context.createMediaStreamDestination();
    const room = context.createBuffer(1, context.sampleRate, context.sampleRate);
    const noise = room.getChannelData(0);
    for (let n = 0; n < noise.length; n++) noise[n] = 1e-4 * (2 * Math.random() - 1);
    const still = new AudioBufferSourceNode(context, { buffer: room, loop: true });
    still.connect(into);
    still.start();
    const played = { tracks: [] as MediaStreamTrack[] };
    navigator.mediaDevices.getUserMedia = () => {
      const stream = into.stream.clone();
      played.tracks.push(...stream.getTracks());
      return Promise.resolve(stream);
    };
    Object.assign(globalThis, {
      tracks: played.tracks,
      playTo(samples: readonly number[], rate: number) {
        const buffer = context.createBuffer(1, samples.length, rate);
        buffer.copyToChannel(Float32Array.from(samples), 0);
        const source = new AudioBufferSourceNode(context, { buffer });
        source.connect(into);
        source.start();
      },
    });
  });
}

/** Plays samples to the page's microphone: from now on, or as soon as something is on the page. */
export async function playSamples(
  page: Page,
  samples: Float32Array,
  after = 'body',
): Promise<void> {
  await page.evaluate(
    ([given, rate, selector]) => {
      const { playTo } = globalThis as unknown as {
        playTo(samples: readonly number[], rate: number): void;
      };
      const wait = () => {
        if (document.querySelector(selector)) playTo(given, rate);
        else requestAnimationFrame(wait);
      };
      wait();
    },
    [[...samples], RATE, after] as const,
  );
}
