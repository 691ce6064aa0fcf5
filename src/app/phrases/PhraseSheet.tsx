import type { Explained } from '../../making/explained.ts';
import { fretsAround } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { PhraseStrip } from '../../parts/PhraseStrip.tsx';
import { settings } from '../state.ts';
import { phraseDots, stripOf } from './drawn.ts';
import { sheetWords } from './phraseWords.ts';

/** A phrase as it is printed, where the screen itself shows more than paper needs. */
export function PhraseSheet({ explained }: { explained: Explained }) {
  const { places, instrument, key } = explained;
  const { naming } = settings.value;
  if (!places) return null;
  return (
    <div class="printed">
      <p class="sheet-words">{sheetWords(explained, naming)}</p>
      <div class="phrase-neck">
        <Neck
          instrument={instrument}
          musicKey={key}
          naming={naming}
          frets={fretsAround(places)}
          label="Neck with the phrase on it"
          dots={phraseDots(explained)}
        />
      </div>
      <PhraseStrip
        notes={stripOf(explained)}
        strings={instrument.tuning.length}
        lit={null}
        stretch={null}
        choose={() => {}}
      />
    </div>
  );
}
