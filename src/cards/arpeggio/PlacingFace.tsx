import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { midiAt, type Place } from '../../neck/place.ts';
import { Neck, type NeckDot } from '../../parts/Neck.tsx';
import { pluck } from '../../sound/index.ts';
import { chordLabel, keyLabel, numeralLabel } from '../../theory/naming.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import { answerOf, takes, type PlacingCard } from './placing.ts';

/** How long the last tap can still be taken back, ms. */
const SECOND_THOUGHT = 450;

interface PlacingFaceProps extends FaceProps<PlacingCard> {
  /** The frets drawn. */
  drawn: readonly [number, number];
  question: string;
  /** Dots that stand on the neck before any is tapped. */
  before?: readonly NeckDot[];
  /** What stands beside Undo. */
  beside?: ComponentChildren;
}

/** The chord is named; its notes are tapped onto the neck. It is judged when as many stand as the chord asks. */
export function PlacingFace(props: PlacingFaceProps) {
  const { card, verdict, explanation, shown } = props;
  const { chord, instrument, key } = card;
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [taps, setTaps] = useState(0);
  const left = chord.notes.length - places.length;
  const judged = left === 0;
  const standingBefore = (props.before ?? []).filter(
    ({ string, fret }) => !places.some((place) => place.string === string && place.fret === fret),
  );

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
      question={props.question}
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
          {props.beside}
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
        frets={props.drawn}
        label={`Neck: place ${chordLabel(chord, shown.naming)}`}
        dots={explanation?.dots ?? [...standingBefore, ...places]}
        takes={verdict ? undefined : (place) => takes(card, place)}
        tap={tap}
      />
    </CardFrame>
  );
}
