/** The Worker that judges: an attendant between two ports. */
import { Attendant } from './attendant.ts';
import type { Wiring } from './orders.ts';

addEventListener(
  'message',
  ({ data: { blocks, page, rate } }: MessageEvent<Wiring>) => {
    const attendant = new Attendant(rate, (told) => page.postMessage(told));
    page.addEventListener('message', ({ data }) => attendant.order(data));
    blocks.addEventListener('message', ({ data }) => attendant.hear(data));
    page.start();
    blocks.start();
  },
  { once: true },
);
