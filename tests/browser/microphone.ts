import type { Page } from '@playwright/test';
import { RATE } from '../listening/played.ts';

/** What `takePlace` leaves in the page. */
interface Playing {
  playTo(samples: Float32Array<ArrayBuffer>, rate: number): void;
}

/** From now on the page's microphone hears what is played to it with `playSamples`, in a quiet room. */
export async function hearing(page: Page): Promise<void> {
  await page.addInitScript(takePlace);
}

/** Plays samples to the page's microphone: from now on, or as soon as something is on the page. */
export async function playSamples(
  page: { evaluate(run: typeof playTo, given: Parameters<typeof playTo>[0]): Promise<unknown> },
  samples: Float32Array,
  after = 'body',
): Promise<void> {
  // As text: numbers one by one are dear on their way into the page.
  const given = Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength);
  await page.evaluate(playTo, [given.toString('base64'), RATE, after]);
}

// What follows runs in the page.

/** Takes the microphone's place, whatever the engine: it is heard what is played, and noise as of a quiet room. */
export function takePlace(): void {
  const context = new AudioContext();
  // Where sound waits for a tap.
  addEventListener('click', () => void context.resume(), { capture: true });
  const into = context.createMediaStreamDestination();
  const room = context.createBuffer(1, context.sampleRate, context.sampleRate);
  const noise = room.getChannelData(0);
  for (let n = 0; n < noise.length; n++) noise[n] = 1e-4 * (2 * Math.random() - 1);
  const still = new AudioBufferSourceNode(context, { buffer: room, loop: true });
  still.connect(into);
  still.start();
  const played = { tracks: [] as MediaStreamTrack[] };
  // On the prototype: WebKit forgets what is put on a page's one `mediaDevices` when it collects garbage.
  MediaDevices.prototype.getUserMedia = () => {
    const stream = into.stream.clone();
    played.tracks.push(...stream.getTracks());
    return Promise.resolve(stream);
  };
  Object.assign(globalThis, {
    tracks: played.tracks,
    playTo(samples: Float32Array<ArrayBuffer>, rate: number) {
      const buffer = context.createBuffer(1, samples.length, rate);
      buffer.copyToChannel(samples, 0);
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(into);
      source.start();
    },
  });
}

function playTo([text, rate, selector]: [string, number, string]): void {
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const samples = new Float32Array(bytes.buffer);
  const wait = () => {
    if (document.querySelector(selector)) (globalThis as unknown as Playing).playTo(samples, rate);
    else requestAnimationFrame(wait);
  };
  wait();
}
