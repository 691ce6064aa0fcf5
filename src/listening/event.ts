import { shareExplained, featuresOf, singlePluckOdds, type Considered } from './evidence.ts';
import { HIGHEST_HEARD, LOWEST_HEARD } from './salience.ts';

/** Something heard: log odds that it is the pluck of each note from `LOWEST_HEARD` up. */
export interface Event {
  /** Seconds: by what it is told from other events, and when it was plucked, which is what is told of it. */
  readonly time: number;
  readonly plucked: number;
  readonly odds: Float64Array;
  /** How sharply it begins, see `Attack`. */
  readonly jump: number;
  /** How much of it its likeliest note explains, 0 to 1, see `Salience`. */
  readonly explained: number;
}

/**
 * What a note explains of its own pluck at least: strings that are struck dead and knocks on the body have a likeliest note
 * too, which explains a sixth of them (plucks: 98 of 100 above this, in rooms and noise too, on the guitars tuned on).
 */
export const EXPLAINED = 0.22;

/**
 * What a pluck looked at closely is, at a time.
 * @param tuning A4 in Hz, as the guitar is tuned
 * @param oddsOf `pluckOdds` where several notes may be plucked at a time
 */
export function eventOf(
  time: number,
  { partials, heard }: Pick<Considered, 'partials' | 'heard'>,
  tuning: number,
  plucked = time,
  oddsOf = singlePluckOdds,
): Event {
  const features = featuresOf(partials, heard, tuning);
  const odds = oddsOf(features);
  const explained = shareExplained(features, LOWEST_HEARD + odds.indexOf(Math.max(...odds)));
  return { time, plucked, odds, jump: heard.jump, explained };
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
