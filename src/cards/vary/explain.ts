import type { Verdict } from '../../practice/item.ts';
import type { Naming } from '../../theory/naming.ts';
import { degreeDots, type PlacedNote } from '../excerpt/excerpt.ts';
import type { Explanation } from '../kind.ts';
import { phraseSound } from '../frame/phraseSound.ts';
import type { VaryCard } from './ask.ts';

/**
 * Says how the variation differs; shows it, sounds it, and then the one that was named instead, whose name is marked
 * among the answers.
 */
export function explain(
  { key, right, choices }: VaryCard,
  verdict: Verdict,
  _answer: string,
  _naming: Naming,
): Explanation {
  const taken = choices.find(({ name }) => name === verdict.takenFor);
  return {
    title: right.name[0]!.toUpperCase() + right.name.slice(1),
    sentence: right.says,
    detail: '',
    dots: degreeDots(key, right.phrase.notes as readonly PlacedNote[]),
    sound: phraseSound(right.phrase),
    otherSound: taken ? phraseSound(taken.phrase) : null,
  };
}
