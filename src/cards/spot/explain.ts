import type { Verdict } from '../../practice/item.ts';
import { chordOn, type Chord } from '../../theory/chord.ts';
import { degreeOf } from '../../theory/key.ts';
import { midiAt } from '../../neck/place.ts';
import { chordLabel, noteLabel, numeralLabel, type Naming } from '../../theory/naming.ts';
import { listed, ordinal } from '../arpeggio.ts';
import { arpeggioSound, chordNear } from '../sounds.ts';
import type { Explanation } from '../kind.ts';
import type { SpotCard } from './ask.ts';

/** Names the chord and its notes; where another was named, what the two share and what tells them apart. */
export function explain(
  card: SpotCard,
  verdict: Verdict,
  _answer: string,
  naming: Naming,
): Explanation {
  const { chord, shape, key } = card;
  const taken = verdict.takenFor ? chordOn(key, Number(verdict.takenFor), chord.size) : null;
  const label = (note: string) => noteLabel(note, naming, key);
  const midis = shape.places.map((place) => midiAt(card.instrument, place));
  const spelled = chord.notes.map(label).join(' ');
  return {
    title: taken
      ? `${numeralLabel(chord)}, not ${numeralLabel(taken)}`
      : `${numeralLabel(chord)} it is`,
    sentence: `${chordLabel(chord, naming)} stands on the ${ordinal(chord.degree)} degree.`,
    detail: taken ? `${spelled}. ${apart(chord, taken, label)}` : `${spelled}.`,
    dots: shape.places.map((place) => ({ ...place, degree: degreeOf(key, place.note)! })),
    sound: arpeggioSound(midis),
    otherSound: taken && arpeggioSound(chordNear(taken, midis[0]!)),
  };
}

function apart(chord: Chord, taken: Chord, label: (note: string) => string): string {
  const shared = chord.notes.filter((note) => taken.notes.includes(note));
  const own = chord.notes.filter((note) => !taken.notes.includes(note)).map(label);
  const other = numeralLabel(taken);
  if (shared.length === 0) return `It shares no note with ${other}.`;
  const tells = own.length === 1 ? 'tells' : 'tell';
  return `It shares ${listed(shared.map(label))} with ${other}; ${listed(own)} ${tells} them apart.`;
}
