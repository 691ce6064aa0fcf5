/** The Worker that reads and writes MIDI files: the library in it takes as long as it takes, and the page never waits. */
import { readMidi, writeMidi } from '../../decks/notation/midi.ts';
import type { MidiOrder } from './midi.ts';

const done = (order: MidiOrder) =>
  'file' in order
    ? readMidi(order.file, { key: order.key })
    : writeMidi(order.phrase, order.name, order.beatsPerBar);

addEventListener(
  'message',
  ({ data }: MessageEvent<MidiOrder>) => {
    try {
      postMessage({ value: done(data) });
    } catch (error) {
      // A RangeError's sentence is for the person; any other is for whoever mends it.
      const { name, message } = error as Error;
      postMessage({ name, message });
    }
  },
  { once: true },
);
