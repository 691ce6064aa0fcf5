/** What the readings of a guitar's open strings come to. */
import { LEFT_SO, type StringTuning } from '../../listening/listening.ts';
import { median } from '../../theory/timing/median.ts';

/** The last reading of each string, in cents, in the order of its open strings; null where it was not heard yet. */
export type StringReadings = readonly (number | null)[];

/** What they come to: how far the guitar is off as a whole, and whether it may be left so. */
export interface Tuning {
  /**
   * `open`: strings are yet to be heard. `ready`: each is where it should be. `together`: in tune with itself, so that it
   * may be left so and is counted in. `far`: in tune with itself, but too far off to tell which note is meant. `apart`: a
   * string is out of tune with the others.
   */
  readonly state: 'open' | 'ready' | 'together' | 'far' | 'apart';
  /** The median of what was heard, cents: to be counted in where the state is `ready` or `together`. */
  readonly offset: number;
}

/** Cents that a guitar may be off as a whole: well under half a semitone, beyond which it could be the next one. */
const FARTHEST = 40;

/** The readings with one more. Strings that are tuned alike are heard as one. */
export function withReading(
  readings: StringReadings,
  strings: readonly number[],
  { string, cents }: Pick<StringTuning, 'string' | 'cents'>,
): StringReadings {
  return readings.map((before, i) => (strings[i] === strings[string] ? cents : before));
}

/**
 * Every string has to lie within `LEFT_SO` cents of the guitar's own median; the median itself may be off, by a
 * reference pitch of another band, or a guitar that went down as a whole.
 *
 * @param isReady whether a string so many cents off is in tune
 */
export function tuningOf(readings: StringReadings, isReady: (cents: number) => boolean): Tuning {
  const heard = readings.filter((cents) => cents !== null);
  const offset = heard.length === 0 ? 0 : median(heard);
  if (heard.length < readings.length || heard.length === 0) return { state: 'open', offset };
  if (heard.every(isReady)) return { state: 'ready', offset };
  if (heard.some((cents) => Math.abs(cents - offset) > LEFT_SO)) return { state: 'apart', offset };
  return { state: Math.abs(offset) <= FARTHEST ? 'together' : 'far', offset };
}
