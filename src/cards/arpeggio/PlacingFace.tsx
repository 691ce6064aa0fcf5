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
  const { chord, instrument, key, stringSet, frets } = card;
  const { places, tap, undo } = usePlacing(props);
  const standingBefore = (props.before ?? []).filter(
    (dot) => !places.some((place) => samePlace(place, dot)),
  );
  return (
    <CardFrame
      {...props}
      attributes={{
        'data-chord': chord.symbol,
        'data-strings': stringSet.join(' '),
        'data-frets': frets.join('-'),
      }}
      question={props.question}
      hint={`${numeralLabel(chord)} of ${keyLabel(key, shown.naming)} · strings ${stringSet.join(' ')} · frets ${frets[0]} to ${frets[1]}`}
      foot={
        <div class="buttons">
          <button type="button" class="button" disabled={places.length === 0} onClick={undo}>
            Undo
          </button>
          {props.beside}
          <p class="soft" aria-live="polite">
            {leftWords(chord.notes.length - places.length)}
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

/** The places tapped so far; they are handed in a moment after the last one stands. */
function usePlacing({ card, verdict, answer }: FaceProps<PlacingCard>) {
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [taps, setTaps] = useState(0);
  const whole = places.length === card.chord.notes.length;
  useEffect(() => {
    if (!whole || verdict) return;
    const timer = setTimeout(() => answer(answerOf(places), taps), SECOND_THOUGHT);
    return () => clearTimeout(timer);
  }, [whole]);
  const tap = (place: Place) => {
    pluck(midiAt(card.instrument, place), place.string);
    if (verdict) return;
    const others = places.filter((other) => !samePlace(other, place));
    const isNew = others.length === places.length;
    if (isNew && whole) return;
    setTaps(taps + 1);
    setPlaces(isNew ? [...places, place] : others);
  };
  return { places, tap, undo: () => setPlaces(places.slice(0, -1)) };
}

const samePlace = (a: Place, b: Place) => a.string === b.string && a.fret === b.fret;

function leftWords(left: number): string {
  if (left === 0) return 'All placed';
  return left === 1 ? '1 more note' : `${left} more notes`;
}
