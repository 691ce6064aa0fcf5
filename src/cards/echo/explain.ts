import { fingering } from '../../neck/fingering.ts';
import type { Place } from '../../neck/place.ts';
import type { Verdict } from '../../practice/item.ts';
import { letterDegree } from '../../theory/key.ts';
import { noteLabel, type Naming } from '../../theory/naming.ts';
import type { Explanation } from '../kind.ts';
import { explainPlaying } from '../playing/explain.ts';
import type { EchoCard } from './ask.ts';

/** Shows the line where a hand can play it, each note with its degree. */
export function explain(
  card: EchoCard,
  verdict: Verdict,
  answer: string,
  naming: Naming,
): Explanation {
  const { key, notes } = card;
  const dots = handPlaces(card).map((place, i) => {
    const { name } = notes[i]!;
    const text = noteLabel(name, 'degrees', key);
    return { ...place, note: name, degree: letterDegree(key, name), text };
  });
  return explainPlaying(card, verdict, answer, naming, dots);
}

/** One way to play it: what the phrase says, or the easiest for a hand. Any other is as right. */
export function handPlaces({ instrument, notes }: EchoCard): Place[] {
  const found = fingering(instrument, notes);
  if (!found.playable) throw new Error(found.reason);
  return found.notes.map(({ string, fret }) => ({ string, fret }));
}
