import { HIGHEST_HEARD, LOWEST_HEARD } from './salience.ts';

/** Something heard: log odds that it is the pluck of each note from `LOWEST_HEARD` up. */
export interface Event {
  /** Seconds. */
  readonly time: number;
  readonly odds: Float64Array;
  /** How sharply it begins, see `Attack`. */
  readonly jump: number;
}

export const noteOdds = (event: Event, midi: number): number =>
  event.odds[midi - LOWEST_HEARD] ?? -Infinity;

/** The likeliest note of an event but `except`. */
export function likeliest(event: Event, except = -1): number {
  let best = -1;
  for (let midi = LOWEST_HEARD; midi <= HIGHEST_HEARD; midi++) {
    if (midi !== except && (best < 0 || noteOdds(event, midi) > noteOdds(event, best))) best = midi;
  }
  return best;
}
