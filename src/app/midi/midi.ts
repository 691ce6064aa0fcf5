import type { readMidi } from '../../decks/notation/midi.ts';
import type { Key } from '../../theory/key.ts';
import type { Phrase } from '../../theory/phrase.ts';

/** What the Worker is to do: read a file, or write a phrase. */
export type MidiOrder =
  | { readonly file: Uint8Array<ArrayBuffer>; readonly key: Key }
  | { readonly phrase: Phrase; readonly name: string; readonly beatsPerBar: number };

/** Its answer: what came of it, or the error that it threw. */
type Answer = { readonly value: unknown } | { readonly name: string; readonly message: string };

/** Reads a MIDI file beside the page, as `readMidi` does. Once the signal is aborted it is over, with the signal's reason. */
export function readingMidi(
  file: Uint8Array<ArrayBuffer>,
  key: Key,
  signal: AbortSignal,
): Promise<ReturnType<typeof readMidi>> {
  return ordered({ file, key }, signal) as Promise<ReturnType<typeof readMidi>>;
}

/** Writes a phrase as a MIDI file beside the page. @throws RangeError where no file can keep its times */
export function writingMidi(
  phrase: Phrase,
  name: string,
  beatsPerBar: number,
): Promise<Uint8Array<ArrayBuffer>> {
  return ordered({ phrase, name, beatsPerBar }) as Promise<Uint8Array<ArrayBuffer>>;
}

/** Has it done by a Worker of its own, which ends with it. */
function ordered(order: MidiOrder, signal?: AbortSignal): Promise<unknown> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  return new Promise((resolve, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason as Error));
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      if ('value' in data) resolve(data.value);
      else reject(errorOf(data));
    });
    worker.addEventListener('error', ({ message }) =>
      reject(new Error(message || 'No worker came.')),
    );
    worker.postMessage(order);
  }).finally(() => worker.terminate());
}

function errorOf({ name, message }: { readonly name: string; readonly message: string }): Error {
  return name === 'RangeError' ? new RangeError(message) : new Error(`${name}: ${message}`);
}
