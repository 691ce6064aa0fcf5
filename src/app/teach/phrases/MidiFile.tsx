import { useState } from 'preact/hooks';
import type { Key } from '../../../theory/key.ts';
import type { Phrase } from '../../../theory/phrase.ts';

interface MidiFileProps {
  musicKey: Key;
  opened(phrase: Phrase): void;
}

/** A phrase out of a MIDI file. */
export function MidiFile({ musicKey, opened }: MidiFileProps) {
  const [said, setSaid] = useState<readonly string[]>([]);
  const open = async (file: File | undefined) => {
    if (!file) return;
    const { readMidi } = await import('../../../decks/notation/midi.ts');
    const read = await readMidi(new Uint8Array(await file.arrayBuffer()), { key: musicKey });
    setSaid('phrase' in read ? read.remarks : [read.fault]);
    if ('phrase' in read) opened(read.phrase);
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
