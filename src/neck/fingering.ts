import type { Articulation, PhraseNote } from '../theory/phrase.ts';
import { compare, subtract, toNumber } from '../theory/rhythm.ts';
import {
  holdsAt,
  leastShift,
  stepCost,
  WEIGHTS,
  type Finger,
  type Gap,
  type Hold,
} from './effort.ts';
import { fretDistances, type FretDistances } from './fret.ts';
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
  const highest = fretsLeft(instrument);
  const open = openMidi(instrument);
  let reached: readonly Reached[] = [];
  for (const [i, note] of line.entries()) {
    const places = placesFor(instrument, note, options);
    const elsewhere = heldInstead(open, note, line[i + 1]);
    const holds = places.flatMap((place) =>
      holdsAt(neck, place, highest, { ...options, elsewhere }),
    );
    const before = line[i - 1];
    if (!before) reached = holds.map(begin);
    else if (together(before, note)) reached = [];
    else reached = advance(neck, reached, holds, gapBetween(before, note), note.articulation);
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
  return { hold, cost: hold.cost + (hold.barre ? WEIGHTS.barreLaid : 0), before: null };
}

/** From the ways to hold one note to those of the next. */
function advance(
  neck: FretDistances,
  reached: readonly Reached[],
  holds: readonly Hold[],
  gap: Gap,
  articulation: Articulation | undefined,
): Reached[] {
  const step = (from: Reached, hold: Hold) =>
    articulation && !allows(from.hold, hold, articulation)
      ? Infinity
      : from.cost + stepCost(neck, from.hold, hold, gap);
  const starts = worthwhile(reached, holds, step);
  const next: Reached[] = [];
  for (const hold of holds) {
    let cost = Infinity;
    let before: Reached | null = null;
    for (const from of starts) {
      // Steps cost nothing below 0 and the cheapest come first, so nothing better can follow.
      if (from.cost >= cost) break;
      if (from.hold.hand !== hold.hand) {
        const least = leastShift(neck, from.hold, hold) * gap.haste;
        if (from.cost + least >= cost) continue;
      }
      const through = step(from, hold);
      if (through < cost) {
        cost = through;
        before = from;
      }
    }
    if (before) next.push({ hold, cost: cost + hold.cost, before });
  }
  return next;
}

/** Those that can be on the best path, cheapest first: the others are dearer than the way over the cheapest to any hold. */
function worthwhile(
  reached: readonly Reached[],
  holds: readonly Hold[],
  step: (from: Reached, hold: Hold) => number,
): Reached[] {
  const cheapest = cheapestOf(reached);
  const limit = Math.max(...holds.map((hold) => step(cheapest, hold)));
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

function gapBetween(before: LineNote, note: LineNote): Gap {
  const gap = toNumber(subtract(note.at, before.at));
  return {
    haste: gap <= 0.5 ? 1 : Math.sqrt(0.5 / gap),
    repeated: before.midi === note.midi,
    rings: ringsInto(before, note),
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
