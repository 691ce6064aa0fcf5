import { useMemo, useState } from 'preact/hooks';
import { writeTablature } from '../../decks/notation/tablature.ts';
import { BAR, withPlaces, type Explained } from '../../making/explained.ts';
import { download } from '../download.ts';

interface PhraseOutProps {
  explained: Explained;
  /** What the files are called. */
  title: string;
}

/** A phrase out of the page: as plain tablature, as files for other programs, and on paper. */
export function PhraseOut({ explained, title }: PhraseOutProps) {
  const [said, setSaid] = useState('');
  const { instrument, places } = explained;
  const text = useMemo(
    () => (places ? writeTablature(withPlaces(explained), instrument, BAR) : ''),
    [explained],
  );
  const copy = () =>
    navigator.clipboard.writeText(text).then(
      () => setSaid('Copied. Paste it into a message.'),
      () => setSaid('This browser does not let the page copy. Press and hold the text to copy it.'),
    );
  const save = async (ending: keyof typeof FILES) => {
    try {
      download(await FILES[ending](explained, title), `${title}.${ending}`);
      setSaid(`Saved as ${title}.${ending}`);
    } catch (error) {
      // Times too fine for the file: the sentence says so.
      if (!(error instanceof RangeError)) throw error;
      setSaid(error.message);
    }
  };
  if (!places) return null;
  return (
    <details class="phrase-out">
      <summary>Copy, save or print</summary>
      <textarea
        class="tablature"
        readOnly
        rows={6}
        wrap="off"
        aria-label="As plain tablature"
        value={text}
      />
      <div class="groups">
        <button type="button" class="button small" onClick={() => void copy()}>
          Copy the tablature
        </button>
        <button type="button" class="button small" onClick={() => void save('mid')}>
          MIDI file
        </button>
        <button type="button" class="button small" onClick={() => void save('musicxml')}>
          MusicXML file
        </button>
        <button type="button" class="button small" onClick={() => print()}>
          Print
        </button>
      </div>
      <p role="status">{said}</p>
    </details>
  );
}

/** How a phrase is written as a file, by the file's ending; a RangeError where its times are too fine for one. */
const FILES = { mid: midiFile, musicxml: musicXmlFile };

async function midiFile(explained: Explained, title: string): Promise<Blob> {
  const { writingMidi } = await import('../midi/midi.ts');
  return new Blob([await writingMidi(withPlaces(explained), title, BAR)], { type: 'audio/midi' });
}

async function musicXmlFile(explained: Explained, title: string): Promise<Blob> {
  const { writeMusicXml } = await import('../../decks/notation/musicxml.ts');
  const { instrument, key } = explained;
  const about = { title, instrument, key, beatsPerBar: BAR };
  const written = writeMusicXml(withPlaces(explained), about);
  return new Blob([written], { type: 'application/vnd.recordare.musicxml+xml' });
}
