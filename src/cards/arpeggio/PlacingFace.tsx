import { soundingPitches } from '../../neck/instrument.ts';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { midiAt, type Place } from '../../neck/place.ts';
import { Neck, type NeckDot } from '../../parts/Neck.tsx';
import { pluck } from '../../sound/index.ts';
import { absolute, chordLabel, noteLabel, type Naming } from '../../theory/naming.ts';
import { parsePitch } from '../../theory/note.ts';
import { degreeInKey } from './degreeSteps.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import './Slots.css';
import { useAnyNote } from '../playing/useAnyNote.ts';
import {
  answerOfPlaces,
  inOneHand,
  pitchesOf,
  takes,
  withPlayed,
  type PlacingCard,
} from './placing.ts';

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
  /** Whether nothing of the card sounds; nothing does where left out. */
  quiet?: boolean;
}

/** The chord is named; its notes are tapped onto the neck, or played. It is judged when as many stand as the chord asks. */
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
      hint={`${degreeInKey(chord, key, shown)} · strings ${stringWords(card, shown.naming)}\u00a0· frets\u00a0${frets.join('\u00a0to\u00a0')}`}
      foot={
        <div class="buttons">
          {props.guitar && places.length === 0 ? (
            <span class="soft">tapped or played</span>
          ) : (
            <button type="button" class="button" disabled={places.length === 0} onClick={undo}>
              Undo
            </button>
          )}
          {props.beside}
          <Slots count={chord.notes.length} filled={places.length} />
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

/** `5 4 (A D)`: the strings of the set by number, and by what they sound open. */
function stringWords({ stringSet, instrument, key }: PlacingCard, naming: Naming): string {
  const open = soundingPitches(instrument);
  const notes = stringSet.map((string) =>
    noteLabel(parsePitch(open[open.length - string]!)!.name, absolute(naming), key),
  );
  return `${stringSet.join(' ')} (${notes.join('\u00a0')})`;
}

/** A slot for each note of the chord; it fills as its note is placed. */
function Slots({ count, filled }: { count: number; filled: number }) {
  return (
    <p class="slots" aria-live="polite">
      <span class="unseen">{leftWords(count - filled)}</span>
      {Array.from({ length: count }, (_, slot) => (
        <span key={slot} class={`slot ${slot < filled ? 'filled' : ''}`} aria-hidden="true" />
      ))}
    </p>
  );
}

/** The places tapped so far; they are handed in a moment after the last one stands. */
function usePlacing(props: PlacingFaceProps) {
  const { card, verdict, answer, guitar, quiet = true } = props;
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [taps, setTaps] = useState(0);
  const whole = places.length === card.chord.notes.length;
  const { deaf, sounds } = useDeafness();
  useAnyNote({
    guitar,
    open: quiet && !deaf && !verdict,
    notes: pitchesOf(card),
    hear: (midi) => setPlaces((before) => withPlayed(card, before, midi)),
    // Who taps needs not be heard.
    unheard: () => taps === 0 && props.unheard(),
  });
  useEffect(() => {
    if (!whole || verdict) return;
    const stand = taps === 0 ? inOneHand(card, places) : places;
    const timer = setTimeout(() => answer(answerOfPlaces(stand), taps), SECOND_THOUGHT);
    return () => clearTimeout(timer);
  }, [whole]);
  const tap = (place: Place) => {
    sounds();
    pluck(midiAt(card.instrument, place), place.string);
    if (verdict) return;
    const others = places.filter((other) => !samePlace(other, place));
    const isNew = others.length === places.length;
    if (isNew && whole) return;
    setTaps(taps + 1);
    setPlaces(isNew ? [...places, place] : others);
  };
  const undo = () => {
    // Listened to anew, or what was taken back could not be played again.
    sounds();
    setPlaces(places.slice(0, -1));
  };
  return { places, tap, undo };
}

/** How long a tapped string is not to be taken for a played one, in ms. */
const TAPPED = 1000;

/** Whether the phone itself has just sounded a string. */
function useDeafness() {
  const [deaf, setDeaf] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const sounds = () => {
    setDeaf(true);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setDeaf(false), TAPPED);
  };
  return { deaf, sounds };
}

const samePlace = (a: Place, b: Place) => a.string === b.string && a.fret === b.fret;

function leftWords(left: number): string {
  if (left === 0) return 'All placed';
  return left === 1 ? '1 more note' : `${left} more notes`;
}
