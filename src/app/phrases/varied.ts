import { MOST } from '../../decks/deck.ts';
import { fingering } from '../../neck/hand.ts';
import { otherPositions, otherStrings, placed, type Placing } from '../../neck/variations.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { variations } from '../../theory/variations/variations.ts';
import { withPlaces, type Explained } from './explained.ts';

/** How many frets positions that are offered lie apart: as many as a hand spans without stretching. */
const APART = 4;

/** Other notes made from those of a phrase, in its key; those no hand can play or no deck can hold are left out. */
export function varied({ phrase, key, instrument, analysis }: Explained): Placing[] {
  return variations(phrase, key, analysis).flatMap(({ name, says, phrase: other }) => {
    if (other.notes.length > MOST.notes) return [];
    const there = placed(instrument, other);
    return there ? [{ name, says, phrase: there }] : [];
  });
}

/** The same notes elsewhere on the neck: on other strings, and in the easiest positions a hand's width apart. */
export function elsewhere(explained: Explained): Placing[] {
  if (explained.fault) return [];
  const { instrument } = explained;
  const here = withPlaces(explained);
  const chosen: Placing[] = [];
  const easiestFirst = otherPositions(instrument, here)
    .map((one) => ({ one, cost: costOf(explained, one.phrase) }))
    .toSorted((a, b) => a.cost - b.cost);
  for (const { one } of easiestFirst) {
    const near = [here, ...chosen.map(({ phrase }) => phrase)].some(
      (other) => Math.abs(middleOf(other) - middleOf(one.phrase)) < APART,
    );
    if (!near) chosen.push(one);
  }
  return [...otherStrings(instrument, here), ...chosen];
}

function costOf({ instrument }: Explained, phrase: Phrase): number {
  const found = fingering(instrument, phrase.notes);
  return found.playable ? found.cost : Infinity;
}

/** The mean fret of a phrase whose notes all have places. */
function middleOf({ notes }: Phrase): number {
  return notes.reduce((sum, { place }) => sum + place!.fret, 0) / notes.length;
}
