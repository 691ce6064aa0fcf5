import { useEffect, useRef, useState } from 'preact/hooks';
import { midiAt } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { PhrasePlayer } from '../../parts/PhrasePlayer.tsx';
import { pluck } from '../../sound/index.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { settings } from '../state.ts';
import { dotsOf, fretsOf, soundingOf, stripOf, type Explained } from './explained.ts';
import { embellishmentWords, outlineWords, sheetWords } from './words.ts';
import './Phrases.css';

/** A phrase on the neck, in words, and to be played: slow, looped, arpeggio by arpeggio. */
export function PhraseView({ explained }: { explained: Explained }) {
  const [lit, setLit] = useState<number | null>(null);
  const [group, setGroup] = useState<number | null>(null);
  const { phrase, places, instrument, key, analysis } = explained;
  const { groups } = analysis;
  const shown = group !== null && group < groups.length ? group : null;
  const { naming, reasons } = settings.value;
  const frame = useRef<HTMLDivElement>(null);
  // The note that is heard is in sight, also on a neck longer than its frame.
  useEffect(() => {
    const place = lit === null ? null : places?.[lit];
    if (!place) return;
    frame.current
      ?.querySelector(`[data-string="${place.string}"][data-fret="${place.fret}"]`)
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [lit]);
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
        <div class="phrase-neck" ref={frame}>
          <Neck
            instrument={instrument}
            musicKey={key}
            naming={naming}
            frets={fretsOf(places)}
            label="Neck with the phrase on it"
            dots={dotsOf(explained, shown)}
            lit={lit === null ? null : (places[lit] ?? null)}
            tap={(place) => pluck(midiAt(instrument, place), place.string)}
          />
        </div>
      )}
      <div class="groups" role="group" aria-label="Its arpeggios">
        <button
          type="button"
          class="button small"
          aria-pressed={shown === null}
          onClick={() => setGroup(null)}
        >
          all of it
        </button>
        {groups.map(({ chord, from, to }, index) => (
          <button
            key={from}
            type="button"
            class="button small music"
            aria-label={`${numeralLabel(chord)}, ${from + 1 === to ? `note ${to}` : `notes ${from + 1} to ${to}`}`}
            aria-pressed={shown === index}
            onClick={() => setGroup(shown === index ? null : index)}
          >
            {numeralLabel(chord)}
          </button>
        ))}
      </div>
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
