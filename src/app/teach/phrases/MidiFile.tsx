import { useEffect, useState } from 'preact/hooks';
import type { Key } from '../../../theory/key.ts';
import type { Phrase } from '../../../theory/phrase.ts';
import { readingMidi } from '../../midi/midi.ts';

interface MidiFileProps {
  musicKey: Key;
  opened(phrase: Phrase): void;
}

/** A phrase out of a MIDI file. */
export function MidiFile({ musicKey, opened }: MidiFileProps) {
  const [said, setSaid] = useState<readonly string[]>([]);
  /** Stops the reading that goes on. */
  const [reading, setReading] = useState<AbortController | null>(null);
  useEffect(() => () => reading?.abort(), [reading]);
  const open = async (file: File | undefined) => {
    if (!file) return;
    const stop = new AbortController();
    setReading(stop);
    setSaid([]);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const read = await readingMidi(bytes, musicKey, stop.signal);
      setSaid('phrase' in read ? read.remarks : [read.fault]);
      if ('phrase' in read) opened(read.phrase);
    } catch (error) {
      if (stop.signal.aborted) setSaid(['Stopped. Nothing was read.']);
      else {
        // What went wrong is for whoever mends it.
        console.error(error);
        setSaid(['The file was not read. Load the page again, then open it once more.']);
      }
    } finally {
      setReading((now) => (now === stop ? null : now));
    }
  };
  return (
    <div class="midi-file">
      <label class="choice">
        <input
          type="file"
          accept=".mid,.midi,audio/midi"
          onChange={(event) => {
            void open(event.currentTarget.files?.[0]);
            // The same file may be opened again.
            event.currentTarget.value = '';
          }}
        />
        <span class="button">Open a MIDI file</span>
      </label>
      {reading && (
        <button type="button" class="button small" onClick={() => reading.abort()}>
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
    </div>
  );
}
