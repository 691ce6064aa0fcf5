import type { Articulation, PhraseNote } from '../theory/phrase.ts';
import { compare, subtract, toNumber } from '../theory/rhythm.ts';
import { holdsAt, type Finger, type Hold } from './effort.ts';
import { leastShift, shiftsOn, stepCost, type Gap, type Shifts } from './step.ts';
import { barreLaid } from './weights.ts';
import { fretDistances } from './fret.ts';
import { fretsLeft, openMidi, type Instrument } from './instrument.ts';
import type { Place } from './place.ts';
import { finished, type Incremental } from '../theory/incremental.ts';

/** What a line needs to tell to be fingered. A place that is given is kept. */
export type LineNote = Pick<PhraseNote, 'midi' | 'at' | 'length' | 'place' | 'articulation'>;

/** What narrows a fingering. */
export interface FingeringOptions {
  /** Lowest and highest fret to be used; open strings are another matter. The whole neck where left out. */
  readonly frets?: readonly [number, number];
  /** Whether open strings may be used, or are rather used than not; they may where left out. A movable shape has none. */
  readonly open?: boolean | 'rather';
  /** The fret the index finger stays at. */
  readonly position?: number;
}

/** How one note of a line is played. */
export interface Fingered extends Place {
  /** 0 for an open string. */
  readonly finger: Finger;
  /** The fret that the index finger lies over. */
  readonly hand: number;
  /** Whether the index finger lies across the strings. */
  readonly barre: boolean;
}

/** The way through a line that costs a hand least; or where no hand can play it, and why. */
type Fingering =
  | { readonly playable: true; readonly notes: readonly Fingered[]; readonly cost: number }
  | { readonly playable: false; readonly at: number; readonly reason: string };

/**
 * Places and fingers for a line of single notes: the cheapest path over string, fret, finger and hand (Viterbi, after
 * Sayegh 1989). Exact; the time grows with the number of notes.
 */
export function fingering(
  instrument: Instrument,
  line: readonly LineNote[],
  options: FingeringOptions = {},
): Fingering {
  return finished(fingeringByNote(instrument, line, options));
}

/** The same with a pause after every note, for whoever has other things to do meanwhile. */
export function* fingeringByNote(
  instrument: Instrument,
  line: readonly LineNote[],
  options: FingeringOptions = {},
): Incremental<Fingering> {
  if (line.length === 0) return { playable: true, notes: [], cost: 0 };
  const neck = fretDistances(instrument);
  const shifts = shiftsOn(neck);
  const highest = fretsLeft(instrument);
  const open = openMidi(instrument);
  const held = new Map<number, Hold[]>();
  let reached: readonly Reached[] = [];
  for (const [i, note] of line.entries()) {
    const places = placesFor(instrument, note, options);
    const elsewhere = heldInstead(open, note, line[i + 1]);
    const holds: Hold[] = [];
    for (const place of places) {
      // The same place comes again and again; how an open string is held depends on the note.
      const key = place.string * 64 + place.fret;
      const there = held.get(key) ?? holdsAt(neck, place, highest, { ...options, elsewhere });
      if (place.fret > 0) held.set(key, there);
      holds.push(...there);
    }
    const before = line[i - 1];
    if (!before) reached = holds.map(begin);
    else if (together(before, note)) reached = [];
    else {
      const gap = gapBetween(before, note);
      const starts = worthwhile(shifts, reached, holds, gap);
      reached = holds.map((hold) => reach(shifts, starts, hold, gap)).filter((one) => one !== null);
    }
    if (reached.length === 0)
      return { playable: false, at: i, reason: whyNot(instrument, line, i, places, options) };
    yield;
  }
  const cheapest = cheapestOf(reached);
  return { playable: true, notes: pathTo(cheapest), cost: cheapest.cost };
}

/** A way to hold a note, what it costs at the least to get there, and from where. */
interface Reached {
  readonly hold: Hold;
  readonly cost: number;
  readonly before: Reached | null;
}

function begin(hold: Hold): Reached {
  return { hold, cost: hold.cost + (hold.barre ? barreLaid : 0), before: null };
}

/** What lies between two notes, and how the second is reached. */
interface Joint extends Gap {
  readonly articulation: Articulation | undefined;
}

/** What it costs at the least to hold one note in a way and the next in another. */
function through(shifts: Shifts, from: Reached, hold: Hold, gap: Joint): number {
  return gap.articulation && !allows(from.hold, hold, gap.articulation)
    ? Infinity
    : from.cost + stepCost(shifts, from.hold, hold, gap);
}

/** From the ways to hold one note to a way to hold the next, by the cheapest; null where none leads there. */
function reach(shifts: Shifts, starts: readonly Reached[], hold: Hold, gap: Joint): Reached | null {
  let cost = Infinity;
  let before: Reached | null = null;
  for (let i = 0; i < starts.length; i++) {
    const from = starts[i]!;
    // Steps cost nothing below 0 and the cheapest come first, so nothing better can follow.
    if (from.cost >= cost) break;
    const shift = from.hold.hand === hold.hand ? 0 : leastShift(shifts, from.hold, hold);
    if (from.cost + shift * gap.haste >= cost) continue;
    const way = through(shifts, from, hold, gap);
    if (way >= cost) continue;
    cost = way;
    before = from;
  }
  return before && { hold, cost: cost + hold.cost, before };
}

/** Those that can be on the best path, cheapest first: the others are dearer than the way over the cheapest to any hold. */
function worthwhile(
  shifts: Shifts,
  reached: readonly Reached[],
  holds: readonly Hold[],
  gap: Joint,
): Reached[] {
  const cheapest = cheapestOf(reached);
  const limit = Math.max(...holds.map((hold) => through(shifts, cheapest, hold, gap)));
  return reached.filter(({ cost }) => cost <= limit).toSorted((a, b) => a.cost - b.cost);
}

function cheapestOf(reached: readonly Reached[]): Reached {
  return reached.reduce((best, one) => (one.cost < best.cost ? one : best));
}

function pathTo(last: Reached): Fingered[] {
  const notes: Fingered[] = [];
  for (let at: Reached | null = last; at; at = at.before) {
    const { string, fret, finger, hand, barre } = at.hold;
    notes.push({ string, fret, finger, hand, barre });
  }
  return notes.toReversed();
}

/** Where a note can be played: its own place, or all that sound its pitch, string 1 first. */
function placesFor(instrument: Instrument, note: LineNote, options: FingeringOptions): Place[] {
  const open = openMidi(instrument);
  const highest = fretsLeft(instrument);
  const [lo, hi] = options.frets ?? [1, highest];
  const fits = ({ string, fret }: Place) =>
    open[string - 1]! + fret === note.midi &&
    fret <= highest &&
    (fret === 0 ? options.open !== false : fret >= lo && fret <= hi);
  const all = open.map((midi, i) => ({ string: i + 1, fret: note.midi - midi }));
  return (note.place ? [note.place] : all).filter(fits);
}

/** A grace note has no length and may begin with the note it graces. */
function together(before: LineNote, note: LineNote): boolean {
  const order = compare(before.at, note.at);
  return order > 0 || (order === 0 && before.length.n > 0);
}

/**
 * The frets at which a note may be held instead of being played open. Of one that is to ring into the next there are
 * none: held it would bind a finger that the next needs, open it binds none.
 */
function heldInstead(
  open: readonly number[],
  note: LineNote,
  next: LineNote | undefined,
): number[] {
  if (next && ringsInto(note, next)) return [];
  return open.map((midi) => note.midi - midi).filter((fret) => fret > 0);
}

/** Whether a note should still sound when the next begins. */
function ringsInto(note: LineNote, next: LineNote): boolean {
  return compare(note.length, subtract(next.at, note.at)) > 0;
}

function gapBetween(before: LineNote, note: LineNote): Joint {
  const gap = toNumber(subtract(note.at, before.at));
  return {
    haste: gap <= 0.5 ? 1 : Math.sqrt(0.5 / gap),
    repeated: before.midi === note.midi,
    rings: ringsInto(before, note),
    articulation: note.articulation,
  };
}

/** A slide keeps its finger; the hammering finger comes from below, the pulling one from above; all stay on the string. */
function allows(from: Hold, to: Hold, articulation: Articulation): boolean {
  if (from.string !== to.string) return false;
  if (articulation === 'slide') return from.finger === to.finger && from.finger !== 0;
  return (
    from.finger !== to.finger &&
    (articulation === 'hammer-on' ? from.fret < to.fret : from.fret > to.fret)
  );
}

function whyNot(
  instrument: Instrument,
  line: readonly LineNote[],
  i: number,
  places: readonly Place[],
  options: FingeringOptions,
): string {
  const note = line[i]!;
  const name = `Note ${i + 1}`;
  const before = line[i - 1];
  if (before && together(before, note))
    return `${name} does not begin after the one before it: a line has one note at a time.`;
  if (places.length === 0) {
    if (note.place) return `${name} does not sound at its place inside the frets allowed.`;
    const anywhere = placesFor(instrument, note, {}).length > 0;
    return anywhere
      ? `${name} lies outside the frets allowed.`
      : `${name} lies outside what the ${instrument.name} can sound.`;
  }
  if (note.articulation)
    return `${name} cannot be joined to the one before it: there is no ${note.articulation} to it on one string.`;
  return `${name} is out of the hand’s reach in position ${options.position}.`;
}
