import { useState } from 'preact/hooks';
import { soundingOf, type Explained } from '../../making/explained.ts';
import { fretsAround, midiAt } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { PhrasePlayer } from '../../parts/PhrasePlayer.tsx';
import { pluck } from '../../sound/index.ts';
import { settings } from '../state.ts';
import { phraseDots, stripOf } from './drawn.ts';
import { GroupChoice } from './GroupChoice.tsx';
import { embellishmentWords, outlineWords, sheetWords } from './phraseWords.ts';
import './Phrases.css';

/** A phrase on the neck, in words, and to be played: slow, looped, arpeggio by arpeggio. */
export function PhraseView({ explained }: { explained: Explained }) {
  const [lit, setLit] = useState<number | null>(null);
  const [group, setGroup] = useState<number | null>(null);
  const { phrase, places, instrument, key, analysis } = explained;
  const { groups } = analysis;
  const shown = group !== null && group < groups.length ? group : null;
  const { naming, reasons } = settings.value;
  const foreign = embellishmentWords(explained);
  return (
    <>
      <p class="sheet-words">{sheetWords(explained, naming)}</p>
      {reasons && (
        <p class="outline">
          {outlineWords(explained, settings.value)} {foreign}
        </p>
      )}
      {places && (
        <div class="phrase-neck">
          <Neck
            instrument={instrument}
            musicKey={key}
            naming={naming}
            frets={fretsAround(places)}
            label="Neck with the phrase on it"
            dots={phraseDots(explained, shown)}
            lit={lit === null ? null : (places[lit] ?? null)}
            tap={(place) => pluck(midiAt(instrument, place), place.string)}
          />
        </div>
      )}
      <GroupChoice groups={groups} shown={shown} show={setGroup} />
      {places && (
        <PhrasePlayer
          key={String(phrase.tempo)}
          sounding={soundingOf(explained)}
          strings={instrument.tuning.length}
          notes={stripOf(explained)}
          groups={groups.map(({ from }) => from)}
          onNote={setLit}
        />
      )}
    </>
  );
}
