import type { PhraseNote } from '../theory/phrase.ts';
import { subtract, toNumber } from '../theory/rhythm.ts';
import {
  holdsAt,
  neckOf,
  stepCost,
  WEIGHTS,
  type Finger,
  type Gap,
  type Hold,
  type Neck,
} from './effort.ts';
import { fretsLeft, openMidi, type Instrument } from './instrument.ts';
import type { Place } from './place.ts';

export { fretDistance } from './fret.ts';
export type { Finger } from './effort.ts';

/** What a line needs to tell to be fingered. A place that is given is kept. */
export type LineNote = Pick<PhraseNote, 'midi' | 'at' | 'length' | 'place' | 'join'>;

/** What narrows a fingering. */
export interface FingeringOptions {
  /** Lowest and highest fret to be used; open strings are another matter. The whole neck where left out. */
  readonly frets?: readonly [number, number];
  /** Whether open strings may be used; they may where left out. A movable shape has none. */
  readonly open?: boolean;
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
export type Fingering =
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
  if (line.length === 0) return { playable: true, notes: [], cost: 0 };
  const neck = neckOf(instrument);
  const highest = fretsLeft(instrument);
  const columns: Column[] = [];
  for (const [i, note] of line.entries()) {
    const places = placesFor(instrument, note, options);
    const holds = places.flatMap((place) =>
      holdsAt(neck, place, highest, options.position ?? null),
    );
    const previous = columns.at(-1);
    const column = previous
      ? advance(neck, previous, holds, gapOf(line[i - 1]!, note), note.join)
      : begin(holds);
    if (column.order.length === 0)
      return { playable: false, at: i, reason: whyNot(instrument, line, i, places, options) };
    columns.push(column);
  }
  return trace(columns);
}

/** The ways to hold one note, each with the cheapest cost of getting there and where from. */
interface Column {
  readonly holds: readonly Hold[];
  readonly costs: Float64Array;
  readonly from: Int32Array;
  /** Indices of the holds that can be reached, cheapest first. */
  readonly order: Int32Array;
}

function begin(holds: readonly Hold[]): Column {
  const costs = Float64Array.from(
    holds,
    (hold) => hold.cost + (hold.barre ? WEIGHTS.barreLaid : 0),
  );
  return ordered(holds, costs, new Int32Array(holds.length).fill(-1));
}

const leastShift = Math.min(WEIGHTS.shift[0], WEIGHTS.shiftOpen[0], WEIGHTS.shiftGuided[0]);

function advance(
  neck: Neck,
  previous: Column,
  holds: readonly Hold[],
  gap: Gap,
  join: LineNote['join'],
): Column {
  const costs = new Float64Array(holds.length).fill(Infinity);
  const from = new Int32Array(holds.length).fill(-1);
  const shift = leastShift * gap.haste;
  for (let to = 0; to < holds.length; to++) {
    const hold = holds[to]!;
    let best = Infinity;
    for (let i = 0; i < previous.order.length; i++) {
      const candidate = previous.order[i]!;
      const reached = previous.costs[candidate]!;
      // Steps cost nothing below 0 and the cheapest come first, so nothing better can follow.
      if (reached >= best) break;
      const before = previous.holds[candidate]!;
      if (before.hand !== hold.hand && reached + shift >= best) continue;
      if (!joins(before, hold, join)) continue;
      const cost = reached + stepCost(neck, before, hold, gap);
      if (cost < best) {
        best = cost;
        from[to] = candidate;
      }
    }
    costs[to] = best + hold.cost;
  }
  return ordered(holds, costs, from);
}

function ordered(holds: readonly Hold[], costs: Float64Array, from: Int32Array): Column {
  const order = Int32Array.from(holds.keys())
    .filter((i) => costs[i]! < Infinity)
    .toSorted((a, b) => costs[a]! - costs[b]! || a - b);
  return { holds, costs, from, order };
}

function trace(columns: readonly Column[]): Fingering {
  let at = columns.at(-1)!.order[0]!;
  const cost = columns.at(-1)!.costs[at]!;
  const notes: Fingered[] = [];
  for (const column of columns.toReversed()) {
    const { string, fret, finger, hand, barre } = column.holds[at]!;
    notes.push({ string, fret, finger, hand, barre });
    at = column.from[at]!;
  }
  return { playable: true, notes: notes.toReversed(), cost };
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

function gapOf(before: LineNote, note: LineNote): Gap {
  const between = subtract(note.at, before.at);
  const gap = toNumber(between);
  return {
    haste: gap <= 0.5 ? 1 : Math.sqrt(0.5 / gap),
    repeated: before.midi === note.midi,
    rings: toNumber(subtract(before.length, between)) > 0,
  };
}

/** A slide keeps its finger; the hammering finger comes from below, the pulling one from above; all stay on the string. */
function joins(from: Hold, to: Hold, join: LineNote['join']): boolean {
  if (!join) return true;
  if (from.string !== to.string) return false;
  if (join === 'slide') return from.finger === to.finger && from.finger !== 0;
  return (
    from.finger !== to.finger && (join === 'hammer-on' ? from.fret < to.fret : from.fret > to.fret)
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
  if (places.length === 0) {
    if (note.place) return `${name} does not sound at its place inside the frets allowed.`;
    const anywhere = placesFor(instrument, note, {}).length > 0;
    return anywhere
      ? `${name} lies outside the frets allowed.`
      : `${name} lies outside what the ${instrument.name} can sound.`;
  }
  if (note.join)
    return `${name} cannot be joined to the one before it: there is no ${note.join} to it on one string.`;
  return `${name} is out of the hand's reach in position ${options.position}.`;
}
