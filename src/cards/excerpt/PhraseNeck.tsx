import { fretsAround, midiAt, type Place } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { pluck } from '../../sound/index.ts';
import type { FaceProps } from '../kind.ts';
import './PhraseNeck.css';

interface PhraseNeckProps extends Pick<FaceProps, 'card' | 'explanation' | 'shown'> {
  /** Where each note that was heard lies, and which of them sounds. */
  places: readonly Place[];
  lit: number | null;
}

/** What was heard, on the neck, lit as it sounds. */
export function PhraseNeck({ card, explanation, shown, places, lit }: PhraseNeckProps) {
  const { key, instrument } = card;
  const { dots } = explanation!;
  return (
    <div class="heard-neck">
      <Neck
        instrument={instrument}
        musicKey={key}
        naming={shown.naming}
        frets={fretsAround(dots)}
        label="Neck with the phrase on it"
        dots={dots}
        lit={lit === null ? null : (places[lit] ?? null)}
        tap={(place) => pluck(midiAt(instrument, place), place.string)}
      />
    </div>
  );
}
