import { useEffect, useRef } from 'preact/hooks';
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
  const frame = useRef<HTMLDivElement>(null);
  const litPlace = lit === null ? null : (places[lit] ?? null);
  // What is heard is in sight, also on a neck longer than its frame.
  useEffect(() => {
    if (!litPlace) return;
    frame.current
      ?.querySelector(`[data-string="${litPlace.string}"][data-fret="${litPlace.fret}"]`)
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [lit]);
  return (
    <div class="heard-neck" ref={frame}>
      <Neck
        instrument={instrument}
        musicKey={key}
        naming={shown.naming}
        frets={fretsAround(dots)}
        label="Neck with the phrase on it"
        dots={dots}
        lit={litPlace}
        tap={(place) => pluck(midiAt(instrument, place), place.string)}
      />
    </div>
  );
}
