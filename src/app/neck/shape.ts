import type { Finger } from '../../neck/effort.ts';
import { grips } from '../../neck/grip.ts';
import { fingering } from '../../neck/fingering.ts';
import { fretsLeft, type Instrument } from '../../neck/instrument.ts';
import { moveAcross, moveAlong, usualInterval, type Moved } from '../../neck/move.ts';
import { midiAt, type Place } from '../../neck/place.ts';
import { placeText } from '../../neck/placeText.ts';
import {
  hasShape,
  inTriplets,
  memberPlaces,
  shapes,
  type MemberPlace,
  type Shape,
} from '../../neck/shapes.ts';
import { chordOn, type Chord } from '../../theory/chord.ts';
import { chroma, pitchClass } from '../../theory/note.ts';
import { DEGREES } from '../../theory/scale.ts';
import { isOn, stringSets, stringsOf, type OneShape, type View } from './view.ts';

/** A shape reaches less than this many frets from any of its places. */
const REACH = 6;

/** The shape that a view shows, or null: it shows none, or its places are none of the arpeggio's shapes. */
export function shapeOf(view: View): Shape | null {
  const { where } = view;
  return where && 'shape' in where ? shapeAt(view, where.shape) : null;
}

function shapeAt({ key, degree, size, instrument }: View, places: readonly Place[]): Shape | null {
  if (degree === null) return null;
  const frets = places.map(({ fret }) => fret);
  const text = places.map(placeText).join(' ');
  const [shape = null] = shapes(
    instrument,
    chordOn(key, degree, size),
    { strings: stringsOf(places), frets: [Math.min(...frets), Math.max(...frets)], open: false },
    (found) => found.map(placeText).join(' ') === text,
  );
  return shape;
}

/** The likeliest shape for a hand that begins at a place and uses all of the strings, none of them open. */
function shapeFrom(view: View, strings: readonly number[], lowest: Place): Shape | null {
  const { key, degree, size, instrument } = view;
  const frets: [number, number] = [
    Math.max(1, lowest.fret - REACH),
    Math.min(fretsLeft(instrument), lowest.fret + REACH),
  ];
  const [shape = null] = shapes(
    instrument,
    chordOn(key, degree!, size),
    { strings, frets, open: false },
    (places) =>
      placeText(places[0]!) === placeText(lowest) && stringsOf(places).length === strings.length,
  );
  return shape;
}

/** Where a shape of the arpeggio may begin, from the lowest note on the strings up. */
function starts({ key, degree, size, instrument }: View, strings: readonly number[]) {
  const frets: [number, number] = [1, fretsLeft(instrument)];
  return memberPlaces(instrument, chordOn(key, degree!, size), { strings, frets })
    .flat()
    .toSorted((a, b) => midiAt(instrument, a) - midiAt(instrument, b) || b.string - a.string);
}

/**
 * The view of one shape on a string set: the one nearest to a fret, or, where none is given, in root position if there
 * is such a shape, the lowest on the neck; of the string set where there is no shape.
 */
export function onStrings(view: View, strings: readonly number[], fret?: number): View {
  const inverted = ({ member }: MemberPlace) => (fret === undefined && member !== 1 ? 1 : 0);
  const far = (place: Place) => Math.abs(place.fret - (fret ?? 1));
  const from = view.degree === null ? [] : starts(view, strings);
  const shape = firstOf(
    view,
    strings,
    from.toSorted((a, b) => inverted(a) - inverted(b) || far(a) - far(b)),
  );
  return { ...view, where: shape ? shown(shape.places) : { strings } };
}

/** The string sets on which the arpeggio has shapes; none where no arpeggio is shown. */
export function shapeSets({ key, degree, size, instrument }: View): number[][] {
  if (degree === null) return [];
  const chord = chordOn(key, degree, size);
  const frets: [number, number] = [1, fretsLeft(instrument)];
  return stringSets(instrument).filter(
    (strings) =>
      strings.length <= chord.notes.length &&
      hasShape(instrument, chord, { strings, frets, open: false }),
  );
}

function firstOf(view: View, strings: readonly number[], from: readonly Place[]): Shape | null {
  for (const place of from) {
    const shape = shapeFrom(view, strings, place);
    if (shape) return shape;
  }
  return null;
}

const shown = (places: readonly Place[], across: OneShape['across'] = 0): OneShape => ({
  shape: places.map(({ string, fret }) => ({ string, fret })),
  across,
});

/**
 * A view that shows what it says: where another key, arpeggio or instrument has made away with its shape, the nearest
 * one on the same strings; fingers only on a shape.
 */
export function settled(view: View): View {
  let next = view;
  const { where } = view;
  if (where && 'shape' in where && !shapeOf(view)) {
    const strings = stringsOf(where.shape);
    next = isOn(view.instrument, { strings })
      ? onStrings(view, strings, where.shape[0]!.fret)
      : { ...view, where: null };
  }
  const fingered = next.where && 'shape' in next.where;
  return next.shown === 'fingers' && !fingered ? { ...next, shown: 'names' } : next;
}

/** The next shape of the arpeggio on the same strings, from a higher (1) or lower (−1) note up; null where none is. */
export function nextShape(view: View, by: 1 | -1): View | null {
  const { shape } = view.where as OneShape;
  const strings = stringsOf(shape);
  const all = starts(view, strings);
  const now = all.findIndex((place) => placeText(place) === placeText(shape[0]!));
  const beyond = by > 0 ? all.slice(now + 1) : all.slice(0, now).toReversed();
  const next = firstOf(view, strings, beyond);
  return next && { ...view, where: shown(next.places) };
}

/**
 * The same shape further up (1) or down (−1) the neck, at the next fret where it is an arpeggio of the key again; null
 * where none is.
 */
export function movedAlong(view: View, by: 1 | -1): View | null {
  const { shape } = view.where as OneShape;
  for (let frets = by; ; frets += by) {
    const places = moveAlong(view.instrument, shape, frets);
    if (!places) return null;
    const degree = degreeRaised(view, frets);
    const next = degree && { ...view, degree, from: null, where: shown(places) };
    if (next && shapeOf(next)) return next;
  }
}

/** The degree whose arpeggio is the view's, every note raised by so many semitones; or null. */
function degreeRaised({ key, degree, size }: View, semitones: number): number | null {
  const wanted = chromas(chordOn(key, degree!, size)).map((sound) => pitchClass(sound + semitones));
  const found = DEGREES.find((other) =>
    chromas(chordOn(key, other, size)).every((sound, i) => sound === wanted[i]),
  );
  return found ?? null;
}

const chromas = (chord: Chord) => chord.notes.map(chroma);

/**
 * The same shape of the same arpeggio on the next string set towards the high strings (1) or the low ones (−1), as few
 * frets away as it can be; null where it would leave the neck or the hand.
 */
export function movedAcross(view: View, by: 1 | -1): View | null {
  const { instrument } = view;
  const { shape } = view.where as OneShape;
  const back = pitchClass(-usualInterval(instrument) * by);
  for (const frets of back > 6 ? [back - 12, back] : [back, back - 12]) {
    const along = moveAlong(instrument, shape, frets);
    const moved = along && moveAcross(instrument, along, by);
    const next = moved && { ...view, where: shown(moved.places, by) };
    if (next && shapeOf(next)) return next;
  }
  return null;
}

/** What bent when the view's shape was moved across; null where it was not moved so, or cannot have been. */
export function bends({ instrument, where }: View): (Moved<Place> & { unbent: Place[] }) | null {
  if (!where || !('shape' in where) || where.across === 0) return null;
  const { shape, across } = where;
  const before = moveAcross(instrument, shape, -across)?.places;
  const moved = before && moveAcross(instrument, before, across);
  if (!moved) return null;
  const unbent = shape
    .map(({ string }, i) => ({ string, fret: before[i]!.fret }))
    .filter((place) => !shape.some((other) => placeText(other) === placeText(place)));
  return { ...moved, unbent };
}

/** Fingers of a shape, in the order of its places, and the strings that the index lies across, highest number first. */
interface Fingers {
  readonly fingers: readonly Finger[];
  readonly barre: readonly number[];
}

/** How a hand holds a shape of one note a string, or plays one of more upwards. */
export function fingersOf(instrument: Instrument, chord: Chord, { places }: Shape): Fingers {
  const held = gripOf(instrument, chord, places);
  const line = held ? null : fingering(instrument, inTriplets(instrument, places));
  const notes = held ?? (line?.playable ? line.notes : []);
  const lying = notes.filter(({ finger, barre }) => finger === 1 && barre);
  const barre = stringsOf(lying);
  return { fingers: notes.map(({ finger }) => finger), barre: barre.length > 1 ? barre : [] };
}

function gripOf(instrument: Instrument, chord: Chord, places: readonly MemberPlace[]) {
  const strings = stringsOf(places);
  if (strings.length < places.length) return null;
  const frets = places.map(({ fret }) => fret);
  const region = {
    strings,
    frets: [Math.min(...frets), Math.max(...frets)] as const,
    open: false,
  };
  const on =
    ({ string, fret }: Place) =>
    (place: Place) =>
      place.string === string && place.fret === fret;
  const grip = grips(instrument, chord, region).find((other) =>
    places.every((place) => other.places.some(on(place))),
  );
  if (!grip) return null;
  return places.map((place) => ({ ...grip.places.find(on(place))!, barre: grip.barre }));
}
