/** The Worker that reads and writes MIDI files: the library in it takes as long as it takes, and the page never waits. */
import { readMidi, writeMidi } from '../../decks/notation/midi.ts';
import type { Order } from './midi.ts';

const done = async (order: Order) => {
  if ('file' in order) return readMidi(order.file, { key: order.key });
  return writeMidi(order.phrase, order.name, order.beatsPerBar);
};

addEventListener(
  'message',
  ({ data }: MessageEvent<Order>) =>
    void done(data).then(
      (value) => postMessage({ value }),
      // A RangeError's sentence is for the person; any other is for whoever mends it.
      (error: Error) => postMessage({ name: error.name, message: error.message }),
    ),
  { once: true },
);
