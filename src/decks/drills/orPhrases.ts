/**
 * Drills of a kind that asks of the degrees of a key or of the deck's phrases: what the two have in common. In a link a
 * star stands before the phrases: `y*13`.
 */
import type { DrillForm } from './drillForm.ts';
import { phrase } from './phrase.ts';

const STAR = '*';

/** What a drill of phrases writes into a link. */
export function foldPhrases(written: Parameters<typeof phrase.fold>[0], more = ''): string {
  return STAR + phrase.fold(written) + more;
}

/** What stands behind the star, or null where none does. */
export function behindStar(letters: string): string | null {
  return letters.startsWith(STAR) ? letters.slice(STAR.length) : null;
}

/** The notes of an excerpt are one part of an id; of all words only they have a place in them. */
export const between: DrillForm['between'] = (words) =>
  words.some((word) => word.includes('/')) ? ' ' : ':';
