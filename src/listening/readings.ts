/** What an event can be in a performance, in log odds: an event that is no pluck at all scores 0. */
import { likeliest, noteOdds, type Event } from './event.ts';

/** What a reading costs that is not a note played as asked. */
export const COSTS = { skipped: 2.7, extra: 3.5, again: 3.5, restart: 4.5 };
/**
 * What another note in its place costs: a finger lands a fret or two beside more often than anywhere else. Least for an
 * octave, because two notes of that name are so easily taken for one another that neither may be preferred.
 */
export const WRONG = { beside: 2.7, octave: 1, else: 3.4 };
const wrongCost = (by: number): number =>
  Math.abs(by) <= 2 ? WRONG.beside : Math.abs(by) === 12 ? WRONG.octave : WRONG.else;

/** An onset is likelier to be what is expected than features alone can know. */
const EXPECTED = 0.8;
/** Off its time a note costs half the square of it, in widths of so many steps, up to so much. */
const LATE = { width: 0.4, most: 2 };

/** An event among others: its likeliest notes, and how far off the time of such a note it comes. */
export interface Candidate {
  readonly event: Event;
  readonly top: number;
  readonly second: number;
  /** Seconds after the nearest time at which its likeliest note is due; null where none is, or it is not sure enough. */
  readonly lag: number | null;
}

/** From these log odds on an event tells how late the player is. */
const TELLS = 2;

export function candidateOf(
  event: Event,
  notes: readonly number[],
  due: readonly number[],
): Candidate {
  const top = likeliest(event);
  const lags = due.filter((_, i) => notes[i] === top).map((time) => event.time - time);
  const lag =
    noteOdds(event, top) < TELLS
      ? undefined
      : lags.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
  return { event, top, second: likeliest(event, top), lag: lag ?? null };
}

/** How much later than asked the player plays, device and hand together: the median of what is surely in place. */
export function playerLag(candidates: readonly Candidate[]): number {
  const lags = candidates.flatMap(({ lag }) => lag ?? []).toSorted((a, b) => a - b);
  return lags[lags.length >> 1] ?? 0;
}

/** What it costs that an event comes off the time of a note; `due` as far as the player keeps it. */
function late(event: Event, due: readonly number[], note: number): number {
  if (due.length < 2) return 0;
  const step = (due.at(-1)! - due[0]!) / (due.length - 1);
  const off = (event.time - due[note]!) / (LATE.width * step);
  return Math.min(LATE.most, 0.5 * off * off);
}

/** Scores of all that one event can be. */
export interface EventScores {
  /** As the expected note of each index, and as another in its place. */
  readonly right: Float64Array;
  readonly wrong: Float64Array;
  /** As a note not asked for, by how far the path has come: before the first note first. */
  readonly extra: Float64Array;
  /** The better of right and wrong. */
  readonly own: Float64Array;
}

/** @param due when each note is to come, seconds, as late as the player is; nothing at leisure */
export function readingsOf(
  { event, top, second }: Candidate,
  notes: readonly number[],
  due: readonly number[],
): EventScores {
  const [most, other] = [noteOdds(event, top), noteOdds(event, second)];
  const right = new Float64Array(notes.length);
  const wrong = new Float64Array(notes.length);
  const extra = new Float64Array(notes.length + 1).fill(most - COSTS.extra);
  notes.forEach((midi, i) => {
    const odds = noteOdds(event, midi);
    const place = late(event, due, i);
    const heard = midi === top ? second : top;
    right[i] = odds + EXPECTED - place;
    wrong[i] = (midi === top ? other : most) - wrongCost(heard - midi) - place;
    extra[i + 1] = Math.max(extra[i + 1]!, odds - COSTS.again);
  });
  return { right, wrong, extra, own: right.map((value, i) => Math.max(value, wrong[i]!)) };
}

/** What was heard in place of an expected note. */
export const heardFor = ({ top, second }: Candidate, midi: number): number =>
  midi === top ? second : top;

/** What was heard where nothing was asked for, after the note `after`, if there is one. */
export function heardBeside({ event, top }: Candidate, after: number | undefined): number {
  if (after === undefined) return top;
  const again = noteOdds(event, after) - COSTS.again;
  return again >= noteOdds(event, top) - COSTS.extra ? after : top;
}
