import { useEffect, useRef, useState } from 'preact/hooks';
import type { Key } from '../../../theory/key.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { readingMidi } from '../../midi/midi.ts';

/** A MIDI file that is being read, and what was said of the last one. */
export interface MidiOpening {
  readonly said: readonly string[];
  readonly reading: boolean;
  open(file: File): void;
  stop(): void;
  /** What was said has been seen. */
  seen(): void;
}

/** Reads MIDI files as phrases of a key, until the screen that calls this goes. */
export function useMidiFile(key: Key, opened: (phrase: Phrase) => void): MidiOpening {
  const [said, say] = useState<readonly string[]>([]);
  const [reading, setReading] = useState<AbortController | null>(null);
  const current = useRef(reading);
  current.current = reading;
  useEffect(() => () => current.current?.abort(), []);
  const open = async (file: File) => {
    const stop = new AbortController();
    setReading(stop);
    say([]);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const read = await readingMidi(bytes, key, stop.signal);
      say('phrase' in read ? read.remarks : [read.fault]);
      if ('phrase' in read) opened(read.phrase);
    } catch (error) {
      if (stop.signal.aborted) say(['Stopped. Nothing was read.']);
      else {
        // What went wrong is for whoever mends it.
        console.error(error);
        say(['The file was not read. Load the page again, then open it once more.']);
      }
    } finally {
      setReading((now) => (now === stop ? null : now));
    }
  };
  return {
    said,
    reading: reading !== null,
    open: (file) => void open(file),
    stop: () => reading?.abort(),
    seen: () => say([]),
  };
}

/** A phrase out of a MIDI file. */
export function MidiFile({ midi }: { midi: MidiOpening }) {
  return (
    <div class="midi-file">
      <label class="choice">
        <input
          type="file"
          accept=".mid,.midi,audio/midi"
          disabled={midi.reading}
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file) midi.open(file);
            // The same file may be opened again.
            currentTarget.value = '';
          }}
        />
        <span class="button">Open a MIDI file</span>
      </label>
      <MidiTold midi={midi} />
    </div>
  );
}

/** The way out of a reading that goes on, and what was said of the last one. */
export function MidiTold({ midi: { said, reading, stop } }: { midi: MidiOpening }) {
  return (
    <>
      {reading && (
        <button type="button" class="button small" onClick={stop}>
          Stop reading
        </button>
      )}
      <div role="status">
        {said.map((sentence) => (
          <p class="notice" key={sentence}>
            {sentence}
          </p>
        ))}
      </div>
    </>
  );
}
