import type { Performance } from '../../listening/listening.ts';
import type { Verdict } from '../../practice/item.ts';
import { heardOf, readAnswer } from './answer.ts';
import type { PlayingCard } from './card.ts';

/** It is played: nothing is offered to choose from. */
export const answers = () => null;

/**
 * Right where every note asked was heard, in its octave. What was heard beside them is shown and does no harm, and so
 * is how even it was: a note too many may be an open string that was touched.
 */
export function judge({ notes }: PlayingCard, answer: string): Verdict {
  const heard = readAnswer(answer).notes;
  const right =
    heard.length === notes.length &&
    notes.every(({ midi }, i) => heardOf(heard[i], midi) === 'right');
  return { right, takenFor: null };
}

/** Whether a performance is an answer: nothing in it is untold, or a note is wrong or missing whatever the rest was. */
export function isDecided({ notes }: Pick<Performance, 'notes'>): boolean {
  const is = (verdict: string) => notes.some((note) => (note?.verdict ?? 'unheard') === verdict);
  return !is('unheard') || is('wrong') || is('missing');
}

/** Whether anything was heard for sure: whoever has not begun yet has not been unheard. */
export function wasPlayed({ notes, extras }: Pick<Performance, 'notes' | 'extras'>): boolean {
  return extras.length > 0 || notes.some((note) => note && note.verdict !== 'unheard');
}
