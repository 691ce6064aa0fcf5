/** Cards whose playing could not be told: neither right nor wrong, and nothing of it enters the log. */

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
