import { useState } from 'preact/hooks';
import type { Instrument } from '../../neck/instrument.ts';
import type { Key } from '../../theory/key.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { byOctaves, entryText } from './entry.ts';

interface MidiFileProps {
  musicKey: Key;
  instrument: Instrument;
  /** What the file has, as tablature, and its tempo. */
  opened(text: string, tempo: number): void;
}

/** A phrase out of a MIDI file, its places found. */
export function MidiFile({ musicKey, instrument, opened }: MidiFileProps) {
  const [said, setSaid] = useState<readonly string[]>([]);
  const [unplaced, setUnplaced] = useState<Phrase | null>(null);
  const place = (phrase: Phrase, remarks: readonly string[] = []) => {
    const read = entryText(phrase, instrument);
    setUnplaced('fault' in read ? phrase : null);
    setSaid('fault' in read ? [...remarks, read.fault] : remarks);
    if ('text' in read) opened(read.text, phrase.tempo);
  };
  const open = async (file: File | undefined) => {
    if (!file) return;
    const { readMidi } = await import('../../decks/notation/midi.ts');
    const read = await readMidi(new Uint8Array(await file.arrayBuffer()), { key: musicKey });
    if ('phrase' in read) return place(read.phrase, read.remarks);
    setUnplaced(null);
    setSaid([read.fault]);
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
      {unplaced && (
        <div class="buttons">
          <button type="button" class="button" onClick={() => place(byOctaves(unplaced, -1))}>
            An octave lower
          </button>
          <button type="button" class="button" onClick={() => place(byOctaves(unplaced, 1))}>
            An octave higher
          </button>
        </div>
      )}
    </div>
  );
}
