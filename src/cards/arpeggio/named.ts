/** An arpeggio that is seen as dots and named by its degree: what `spot` and `outline` share. */
import { midiAt } from '../../neck/place.ts';
import type { MemberPlace } from '../../neck/shapes.ts';
import type { Item, Verdict } from '../../practice/item.ts';
import { chordOn, sharedNotes, type Chord } from '../../theory/chord.ts';
import { letterDegree } from '../../theory/key.ts';
import { chordLabel, noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { DEGREES } from '../../theory/scale.ts';
import { listed, ordinal } from '../../parts/english.ts';
import type { Card, Explanation } from '../kind.ts';
import { arpeggioSound, chordNear } from '../frame/sounds.ts';
import { bothNames } from './words.ts';

/** An arpeggio as dots that tell nothing but their places. */
export interface NamedCard<I extends Item = Item> extends Card<I> {
  readonly chord: Chord;
  readonly shape: { readonly places: readonly MemberPlace[] };
  readonly frets: readonly [number, number];
  /** Another degree's chord holds the same notes: only the root tells them apart. */
  readonly rootShown: boolean;
}

/** All seven degrees, always: an answer is knowledge and not elimination. */
export function degreeAnswers(): readonly string[] {
  return DEGREES.map(String);
}

/** Right where the answer is the degree the arpeggio stands on. */
export function judgeNamed(card: NamedCard, answer: string): Verdict {
  const right = answer === String(card.chord.degree);
  return { right, takenFor: right ? null : answer };
}

/**
 * Names the chord and its notes; where another was named, what the two share and what tells them apart.
 *
 * @param midis the arpeggio as it is sounded
 */
export function explainNamed(
  card: NamedCard,
  verdict: Verdict,
  naming: Naming,
  midis: readonly number[] = card.shape.places.map((place) => midiAt(card.instrument, place)),
): Explanation {
  const { chord, shape, key } = card;
  const taken = verdict.takenFor ? chordOn(key, Number(verdict.takenFor), chord.size) : null;
  const label = (note: string) => noteLabel(note, naming, key);
  const spelled = chord.notes.map(label).join(' ');
  return {
    name: bothNames(chord, naming),
    title: taken
      ? `${numeralLabel(chord)}, not ${numeralLabel(taken)}`
      : `${numeralLabel(chord)} it is`,
    sentence: `${chordLabel(chord, naming)} stands on the ${ordinal(chord.degree)} degree.`,
    detail: taken ? `${spelled}. ${apart(chord, taken, label)}` : `${spelled}.`,
    dots: shape.places.map((place) => ({ ...place, degree: letterDegree(key, place.note) })),
    sound: arpeggioSound(midis),
    otherSound: taken && arpeggioSound(chordNear(taken, midis[0]!)),
  };
}

function apart(chord: Chord, taken: Chord, label: (note: string) => string): string {
  const shared = sharedNotes(chord, taken);
  const own = chord.notes.filter((note) => !shared.includes(note)).map(label);
  const other = numeralLabel(taken);
  if (own.length === 0) return `${other} has the same notes; only the root tells them apart.`;
  if (shared.length === 0) return `It shares no note with ${other}.`;
  const tells = own.length === 1 ? 'tells' : 'tell';
  return `It shares ${listed(shared.map(label))} with ${other}; ${listed(own)} ${tells} them apart.`;
}
