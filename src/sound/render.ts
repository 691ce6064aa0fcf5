/**
 * The worker that renders the strings, so that no frame of the page waits for them. It sends one note after another,
 * and is done.
 */
import { RENDERED_NOTES, RENDERED_RATE, renderString } from './string.ts';

/** What the worker sends: one note's samples, `RENDERED_RATE` a second. */
export interface Rendered {
  readonly midi: number;
  readonly samples: Float32Array<ArrayBuffer>;
}

for (const midi of RENDERED_NOTES) {
  const rendered: Rendered = { midi, samples: renderString(midi, RENDERED_RATE) };
  self.postMessage(rendered, { transfer: [rendered.samples.buffer] });
}
