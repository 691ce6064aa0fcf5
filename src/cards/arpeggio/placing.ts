/** A chord that is named and whose notes are put on the neck: what `place` and `follow` share. */
import { takesLowest, type ShapeChoice } from '../../neck/shapeChoice.ts';
import { midiAt, placesOf, type Place } from '../../neck/place.ts';
import { parsePlace, placeText } from '../../neck/placeText.ts';
import { fingered, laidOut, plainest, shapes, thinned } from '../../neck/shapes.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Item, Verdict } from '../../practice/item.ts';
import type { Chord } from '../../theory/chord.ts';
import { degreeOf, letterDegree } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { chordLabel, noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { chroma, pitchClass, type NoteName } from '../../theory/note.ts';
import { listed, ordinal } from '../../parts/english.ts';
import type { Card, Explanation } from '../kind.ts';
import { arpeggioPlaces } from './arpeggio.ts';
import { arpeggioSound } from '../frame/sounds.ts';
import { bothNames } from './words.ts';

/** A chord to be put on a string set inside frets. */
export interface PlacingCard<I extends Item = Item> extends Card<I> {
  readonly chord: Chord;
  /** From the highest string number down. */
  readonly stringSet: readonly number[];
  readonly frets: readonly [number, number];
  /** Which of its shapes are right; any where left out. */
  readonly shapes?: ShapeChoice;
}

/** Whether a place may be tapped. */
export function takes(card: PlacingCard, place: Place): boolean {
  return (
    card.stringSet.includes(place.string) &&
    place.fret >= card.frets[0] &&
    place.fret <= card.frets[1]
  );
}

/** What the chord's notes sound where it may be put, MIDI, rising. */
export function pitchesOf(card: PlacingCard): number[] {
  const midis = arpeggioPlaces(card, card.instrument).map((place) =>
    midiAt(card.instrument, place),
  );
  return [...new Set(midis)].toSorted((a, b) => a - b);
}

/**
 * The places that stand once a pitch was played. A pitch does not tell its string: any place of the card that sounds it
 * will do. A note of the chord that stands already stands once, in whatever octave; what lies beyond the card's strings
 * and frets is left out.
 */
export function withPlayed(
  card: PlacingCard,
  places: readonly Place[],
  midi: number,
): readonly Place[] {
  const { instrument, chord, stringSet, frets } = card;
  if (places.length >= chord.notes.length) return places;
  const stands = places.map((place) => midiAt(instrument, place));
  const isMember = chord.notes.some((note) => chroma(note) === pitchClass(midi));
  const twice = (other: number) => (isMember ? pitchClass(other - midi) === 0 : other === midi);
  if (stands.some(twice)) return places;
  const [found] = placesOf(instrument, pitchClass(midi), stringSet, frets).filter(
    (place) => midiAt(instrument, place) === midi,
  );
  return found ? [...places, found] : places;
}

/** The same pitches as one hand holds them, where it can; a hand's own places stay as they are. */
export function inOneHand(card: PlacingCard, places: readonly Place[]): readonly Place[] {
  const { instrument, chord, stringSet, frets } = card;
  const sounds = (all: readonly Place[]) => pitches(card, all).join(' ');
  const played = sounds(places);
  const region = { strings: stringSet, frets };
  const [shape] = shapes(instrument, chord, region, (all) => sounds(all) === played);
  return shape?.places.map(({ string, fret }) => ({ string, fret })) ?? places;
}

/** Places as an answer: `5/3 4/1 4/5`. */
export function answerOfPlaces(places: readonly Place[]): string {
  return places.map(placeText).join(' ');
}

/** The places of an answer, held against the chord. */
interface Comparison {
  readonly places: readonly Place[];
  /** Places whose note is no note of the chord. */
  readonly foreign: readonly Place[];
  /** Places whose note stands already elsewhere. */
  readonly twice: readonly Place[];
  /** Notes of the chord that stand nowhere. */
  readonly missing: readonly NoteName[];
  /** Whether the notes are all right but for the one that is lowest. */
  readonly misturned: boolean;
}

/** Reads `5/3 4/1 4/5`; words that are no places, and places beyond the card's strings and frets, are left out. */
function compared(card: PlacingCard, answer: string): Comparison {
  const places = answer
    .split(' ')
    .map(parsePlace)
    .filter((place): place is Place => place !== null && takes(card, place));
  const chromas = card.chord.notes.map(chroma);
  const found = new Set<number>();
  const foreign: Place[] = [];
  const twice: Place[] = [];
  for (const place of places) {
    const sounds = pitchClass(midiAt(card.instrument, place));
    if (!chromas.includes(sounds)) foreign.push(place);
    else if (found.has(sounds)) twice.push(place);
    else found.add(sounds);
  }
  const missing = card.chord.notes.filter((note) => !found.has(chroma(note)));
  const whole = foreign.length + twice.length + missing.length === 0;
  return { places, foreign, twice, missing, misturned: whole && !isTurned(card, places) };
}

/** Whether the lowest of places that hold a whole chord is one that the card asks for. */
function isTurned(card: PlacingCard, places: readonly Place[]): boolean {
  const lowest = places.reduce((a, b) =>
    midiAt(card.instrument, b) < midiAt(card.instrument, a) ? b : a,
  );
  return takesLowest(card.shapes, memberDot(card, lowest).member!);
}

/**
 * Right where every note of the chord stands once and nothing else does, wherever that is; where shapes are chosen, with
 * one of theirs lowest.
 */
export function judgePlaces(card: PlacingCard, answer: string): Verdict {
  const { foreign, twice, missing, misturned } = compared(card, answer);
  const faults = foreign.length + twice.length + missing.length;
  return { right: faults === 0 && !misturned, takenFor: null };
}

/** Names the notes; of a wrong answer, which note is foreign and which is missing, and where it could stand. */
export function explainPlaces(
  card: PlacingCard,
  verdict: Verdict,
  answer: string,
  naming: Naming,
): Explanation {
  const { chord, key } = card;
  const comparison = compared(card, answer);
  const { right } = verdict;
  const tapped = comparison.places;
  const shown = right && tapped.length > 0 ? tapped : nearestShape(card, comparison);
  const label = (note: string) => noteLabel(note, naming, key);
  const name = chordLabel(chord, naming);
  const spelled = `${name} has the notes ${chord.notes.map(label).join(' ')}.`;
  const stands = `${numeralLabel(chord)}: it stands on the ${ordinal(chord.degree)} degree.`;
  return {
    name: bothNames(chord, naming),
    title: right ? `${name} it is` : `Not yet ${name}`,
    sentence: right ? spelled : fault(card, comparison, name, label),
    detail: right ? stands : spelled,
    dots: right
      ? shown.map((place) => memberDot(card, place))
      : correctedDots(card, comparison, shown),
    sound: arpeggioSound(pitches(card, shown)),
    otherSound: right || tapped.length === 0 ? null : arpeggioSound(pitches(card, tapped)),
  };
}

/** The right places, those without a tap as missing, and the places that were tapped beside them. */
function correctedDots(
  card: PlacingCard,
  { places, foreign, twice }: Comparison,
  right: readonly Place[],
): NeckDot[] {
  const isIn = (some: readonly Place[], place: Place) => some.some((one) => same(one, place));
  const dots = right.map((place) => ({
    ...memberDot(card, place),
    ...(!isIn(places, place) && { look: 'missing' as const }),
  }));
  const beside = places
    .filter((place) => !isIn(right, place))
    .map((place) => wrongDot(card, place, !foreign.includes(place) && !twice.includes(place)));
  return [...dots, ...beside];
}

/** `E is not in Cm7; B♭ is missing.` */
function fault(
  card: PlacingCard,
  comparison: Comparison,
  name: string,
  label: (note: string) => string,
): string {
  const named = (places: readonly Place[]) => [
    ...new Set(places.map((place) => label(spell(card.key, midiAt(card.instrument, place))))),
  ];
  const foreign = named(comparison.foreign);
  const twice = named(comparison.twice);
  const missing = comparison.missing.map(label);
  const clauses = [];
  if (comparison.misturned) clauses.push(turnedFault(card, label));
  if (foreign.length > 0) clauses.push(`${listed(foreign)} ${is(foreign)} not in ${name}`);
  if (twice.length > 0)
    clauses.push(`${listed(twice)} ${twice.length > 1 ? 'stand' : 'stands'} twice`);
  if (missing.length > 0) clauses.push(`${listed(missing)} ${is(missing)} missing`);
  return `${clauses.join('; ')}.`;
}

/** `In root position the root, C, is the lowest note`. */
function turnedFault(card: PlacingCard, label: (note: string) => string): string {
  const root = label(card.chord.root);
  return card.shapes === 'root position'
    ? `In root position the root, ${root}, is the lowest note`
    : `In inversion the root, ${root}, is not the lowest note`;
}

const is = (words: readonly string[]) => (words.length > 1 ? 'are' : 'is');

/** The complete set that keeps most of the answer; of several the likelier for a hand. */
function nearestShape(card: PlacingCard, comparison: Comparison): readonly Place[] {
  const region = { strings: card.stringSet, frets: card.frets };
  const found = laidOut(card.instrument, card.chord, region, ([lowest]) =>
    takesLowest(card.shapes, lowest!.member),
  );
  const kept = found.map(
    ({ places }) =>
      places.filter((place) => comparison.places.some((other) => same(place, other))).length,
  );
  const most = kept.reduce((a, b) => Math.max(a, b), 0);
  const nearest = found.filter((_, i) => kept[i] === most);
  return fingered(card.instrument, thinned(plainest(nearest)))[0]!.places;
}

function memberDot(card: PlacingCard, { string, fret }: Place): NeckDot {
  const sounds = pitchClass(midiAt(card.instrument, { string, fret }));
  const index = card.chord.notes.findIndex((note) => chroma(note) === sounds);
  const note = card.chord.notes[index]!;
  return {
    string,
    fret,
    member: card.chord.members[index]!,
    note,
    degree: letterDegree(card.key, note),
  };
}

/** A place of the answer that the set shown does not hold: foreign, doubled, or right elsewhere (`faint`). */
function wrongDot(card: PlacingCard, place: Place, belongs: boolean): NeckDot {
  if (belongs) return { ...memberDot(card, place), look: 'faint' };
  const note = spell(card.key, midiAt(card.instrument, place));
  const degree = degreeOf(card.key, note);
  return { ...place, note, ...(degree && { degree }), look: 'wrong', text: '×' };
}

function pitches(card: Pick<PlacingCard, 'instrument'>, places: readonly Place[]): number[] {
  return places.map((place) => midiAt(card.instrument, place)).toSorted((a, b) => a - b);
}

const same = (a: Place, b: Place) => a.string === b.string && a.fret === b.fret;
