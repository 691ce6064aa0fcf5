import { useEffect, useState } from 'preact/hooks';
import { midiAt, type Place } from '../../neck/place.ts';
import { Neck } from '../../parts/Neck.tsx';
import { pluck } from '../../sound/index.ts';
import { chordLabel, keyLabel, numeralLabel } from '../../theory/naming.ts';
import { framed } from '../arpeggio.ts';
import { CardFrame } from '../CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import { answerOf, takes, type PlaceCard } from './ask.ts';

/** How long the last tap can still be taken back, ms. */
const SECOND_THOUGHT = 450;

/** The chord is named; its notes are tapped onto the neck. It is judged when as many stand as the chord asks. */
export function Face(props: FaceProps<PlaceCard>) {
  const { card, verdict, explanation, shown } = props;
  const { chord, instrument, key } = card;
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [taps, setTaps] = useState(0);
  const left = chord.notes.length - places.length;
  const judged = left === 0;

  useEffect(() => {
    if (!judged || verdict) return;
    const timer = setTimeout(() => props.answer(answerOf(places), taps), SECOND_THOUGHT);
    return () => clearTimeout(timer);
  }, [judged]);

  const tap = (place: Place) => {
    pluck(midiAt(instrument, place), place.string);
    if (verdict) return;
    const standing = places.filter(
      (other) => other.string !== place.string || other.fret !== place.fret,
    );
    if (standing.length === places.length && judged) return;
    setTaps(taps + 1);
    setPlaces(standing.length === places.length ? [...places, place] : standing);
  };
  return (
    <CardFrame
      {...props}
      attributes={{
        'data-chord': chord.symbol,
        'data-strings': card.stringSet.join(' '),
        'data-frets': card.frets.join('-'),
      }}
      question={`Place ${chordLabel(chord, shown.naming)}`}
      hint={`${numeralLabel(chord)} of ${keyLabel(key, shown.naming)} · strings ${card.stringSet.join(' ')} · frets ${card.frets[0]} to ${card.frets[1]}`}
      foot={
        <div class="buttons">
          <button
            type="button"
            class="button"
            disabled={places.length === 0}
            onClick={() => setPlaces(places.slice(0, -1))}
          >
            Undo
          </button>
          <p class="soft" aria-live="polite">
            {left === 0 ? 'All placed' : left === 1 ? '1 more note' : `${left} more notes`}
          </p>
        </div>
      }
    >
      <Neck
        instrument={instrument}
        musicKey={key}
        naming={shown.naming}
        frets={framed(card.frets, instrument)}
        label={`Neck: place ${chordLabel(chord, shown.naming)}`}
        dots={explanation?.dots ?? places}
        takes={verdict ? undefined : (place) => takes(card, place)}
        tap={tap}
      />
    </CardFrame>
  );
}
