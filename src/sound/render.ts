/**
 * The worker that renders the strings, so that no frame of the page waits for them. It is sent the sample rate and
 * answers with one note after another.
 */
import { RENDERED_NOTES, renderString } from './string.ts';

/** What the worker answers: one note's samples. */
export interface Rendered {
  readonly midi: number;
  readonly samples: Float32Array<ArrayBuffer>;
}

self.addEventListener('message', ({ data: rate }: MessageEvent<number>) => {
  for (const midi of RENDERED_NOTES) {
    const rendered: Rendered = { midi, samples: renderString(midi, rate) };
    self.postMessage(rendered, { transfer: [rendered.samples.buffer] });
  }
});
