import { midiAt, type Place } from '../../neck/place.ts';
import { shapes } from '../../neck/shapes.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Verdict } from '../../practice/item.ts';
import { degreeOf, spell } from '../../theory/key.ts';
import { chordLabel, noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { chroma } from '../../theory/note.ts';
import { listed, ordinal } from '../arpeggio.ts';
import { arpeggioSound } from '../sounds.ts';
import type { Explanation } from '../kind.ts';
import type { PlaceCard } from './ask.ts';
import { placed, type Placed } from './judge.ts';

/** Names the notes; of a wrong answer, which note is foreign and which is missing, and where it could stand. */
export function explain(
  card: PlaceCard,
  verdict: Verdict,
  answer: string,
  naming: Naming,
): Explanation {
  const { chord, key } = card;
  const put = placed(card, answer);
  const label = (note: string) => noteLabel(note, naming, key);
  const name = chordLabel(chord, naming);
  const right = verdict.right && put.places.length > 0 ? put.places : nearestShape(card, put);
  const dots = right.map((place) => memberDot(card, place));
  const kept = put.places.filter(
    (place) => !put.foreign.includes(place) && !put.twice.includes(place),
  );
  for (const dot of dots) {
    const stands = put.places.some((place) => same(place, dot));
    if (!stands && !verdict.right) Object.assign(dot, { look: 'missing' });
  }
  for (const place of verdict.right ? [] : put.places) {
    if (!dots.some((dot) => same(dot, place)))
      dots.push(wrongDot(card, place, kept.includes(place)));
  }
  const spelled = chord.notes.map(label).join(' ');
  return {
    title: verdict.right ? `${name} it is` : `Not yet ${name}`,
    sentence: verdict.right ? `${name} is ${spelled}.` : fault(card, put, name, label),
    detail: verdict.right
      ? `${numeralLabel(chord)}: it stands on the ${ordinal(chord.degree)} degree.`
      : `${name} is ${spelled}.`,
    dots,
    sound: arpeggioSound(pitches(card, right)),
    otherSound:
      verdict.right || put.places.length === 0 ? null : arpeggioSound(pitches(card, put.places)),
  };
}

/** `E is foreign to Cm7; B♭ is missing.` */
function fault(
  card: PlaceCard,
  put: Placed,
  name: string,
  label: (note: string) => string,
): string {
  const named = (places: readonly Place[]) => [
    ...new Set(places.map((place) => label(spell(card.key, midiAt(card.instrument, place))))),
  ];
  const foreign = named(put.foreign);
  const twice = named(put.twice);
  const missing = put.missing.map(label);
  const clauses = [];
  if (foreign.length > 0) clauses.push(`${listed(foreign)} ${is(foreign)} foreign to ${name}`);
  if (twice.length > 0)
    clauses.push(`${listed(twice)} ${twice.length > 1 ? 'stand' : 'stands'} twice`);
  if (missing.length > 0) clauses.push(`${listed(missing)} ${is(missing)} missing`);
  return `${clauses.join('; ')}.`;
}

const is = (words: readonly string[]) => (words.length > 1 ? 'are' : 'is');

/** The complete set that keeps most of the answer; of several the likelier for a hand. */
function nearestShape(card: PlaceCard, put: Placed): readonly Place[] {
  const found = shapes(card.instrument, card.chord, { strings: card.stringSet, frets: card.frets });
  const keeps = (places: readonly Place[]) =>
    places.filter((place) => put.places.some((other) => same(place, other))).length;
  let best = found[0]!.places;
  for (const shape of found) if (keeps(shape.places) > keeps(best)) best = shape.places;
  return best;
}

function memberDot(card: PlaceCard, { string, fret }: Place): NeckDot {
  const sounds = midiAt(card.instrument, { string, fret }) % 12;
  const index = card.chord.notes.findIndex((note) => chroma(note) === sounds);
  const note = card.chord.notes[index]!;
  return {
    string,
    fret,
    member: card.chord.members[index]!,
    note,
    degree: degreeOf(card.key, note)!,
  };
}

/** A place of the answer that the set shown does not hold: foreign, doubled, or right elsewhere (`faint`). */
function wrongDot(card: PlaceCard, place: Place, belongs: boolean): NeckDot {
  if (belongs) return { ...memberDot(card, place), look: 'faint' };
  const note = spell(card.key, midiAt(card.instrument, place));
  const degree = degreeOf(card.key, note);
  return { ...place, note, ...(degree && { degree }), look: 'wrong', text: '×' };
}

function pitches(card: PlaceCard, places: readonly Place[]): number[] {
  return places.map((place) => midiAt(card.instrument, place)).toSorted((a, b) => a - b);
}

const same = (a: Place, b: Place) => a.string === b.string && a.fret === b.fret;
