/** Cards whose playing could not be told: neither right nor wrong, and nothing of it enters the log. */
import { signal } from '../../signals/signal.ts';

/** An item that could not be heard, when so many cards of the round were answered. */
export interface Unheard {
  readonly item: string;
  readonly after: number;
}

/**
 * Whether an item waits: it comes again once, when another card was answered; after that no more in this round.
 *
 * @param answered how many cards of the round were answered
 */
export function isPutOff(unheard: readonly Unheard[], item: string, answered: number): boolean {
  const of = unheard.filter((one) => one.item === item);
  return of.length > 1 || of.some(({ after }) => after === answered);
}

/** What could not be told of the round that goes on. */
let waiting: readonly Unheard[] = [];

/** What to say of it, until the next card is drawn. */
export const unheardSentence = signal<string | null>(null);

/** A new round: nothing waits. */
export function forgetUnheard(): void {
  waiting = [];
}

/** Whether an item waits, in the round that goes on. */
export function isWaiting(item: string, answered: number): boolean {
  return isPutOff(waiting, item, answered);
}

/** Lets an item wait that was let go when so many cards were answered. */
export function letWait(item: string, answered: number): void {
  waiting = [...waiting, { item, after: answered }];
}

const SENTENCES = {
  'let go': 'That could not be heard well. No harm done: it counts for nothing.',
  again: 'Not heard for sure: play it once more, or tap it.',
  tap: 'That could not be heard well. No harm done: tap it this time.',
};

/** Says what becomes of a card that could not be heard, until the next one is drawn. */
export function sayUnheard(what: keyof typeof SENTENCES): void {
  unheardSentence.value = SENTENCES[what];
}
