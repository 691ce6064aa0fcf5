import { placeText } from '../../neck/place.ts';
import type { NeckDot } from '../../parts/Neck.tsx';
import type { Verdict } from '../../practice/item.ts';
import type { Naming } from '../../theory/naming.ts';
import { degreeDots, soundingOf, type PlacedNote } from '../excerpt.ts';
import type { Explanation } from '../kind.ts';
import type { VaryCard } from './ask.ts';

/** Says how the variation differs, and how the one named instead would; sounds both. */
export function explain(
  card: VaryCard,
  verdict: Verdict,
  _answer: string,
  _naming: Naming,
): Explanation {
  const { right } = card;
  const taken = card.choices.find(({ name }) => name === verdict.takenFor);
  return {
    title: taken ? `${right.name}, not ${taken.name}` : `${right.name} it is`,
    sentence: right.says,
    detail: taken
      ? `${taken.name[0]!.toUpperCase()}${taken.name.slice(1)}: ${lowerFirst(taken.says)}`
      : '',
    dots: dotsOf(card),
    sound: soundingOf(right.phrase),
    otherSound: taken ? soundingOf(taken.phrase) : null,
  };
}

const lowerFirst = (text: string) => text[0]!.toLowerCase() + text.slice(1);

/** The variation with the degrees it sounds; faint what only the phrase has. */
function dotsOf({ key, excerpt, right }: VaryCard): NeckDot[] {
  const dots = degreeDots(key, right.phrase.notes as readonly PlacedNote[]);
  const there = new Set(dots.map(placeText));
  const left = degreeDots(key, excerpt.notes).filter((dot) => !there.has(placeText(dot)));
  return [...dots, ...left.map(({ string, fret }) => ({ string, fret, look: 'faint' as const }))];
}
