import type { Chord, Member } from '../theory/chord.ts';
import { chroma, pitchClass, type NoteName } from '../theory/note.ts';
import { beats } from '../theory/rhythm.ts';
import { takesLowest, type ShapeChoice } from './shapeChoice.ts';
import { flawsOf, FORMS, formOf, type Form } from './form.ts';
import { fretDistances } from './fret.ts';
import { fingering, type LineNote } from './fingering.ts';
import { openMidi, type Instrument } from './instrument.ts';
import { midiAt, placesOf, type Place } from './place.ts';

/** A place that says which member of a chord lies there. */
export interface MemberPlace extends Place {
  readonly member: Member;
  readonly note: NoteName;
}

/** A chord's notes on the neck, each once. */
export interface LaidOut {
  /** From the lowest sounding note to the highest. */
  readonly places: readonly MemberPlace[];
  /** 0 with the root lowest, 1 with the third, 2 with the fifth, … */
  readonly inversion: number;
  readonly form: Form;
  /** How many things a teacher would rather not draw: see `flawsOf`. */
  readonly flaws: number;
}

/** The same, and what it costs a hand to play it upwards: finding that out is what takes long. */
export interface Shape extends LaidOut {
  readonly cost: number;
}

/** Where a shape may lie. */
export interface Region {
  /** The string set, in any order. */
  readonly strings: readonly number[];
  /** Lowest and highest fret, both included. */
  readonly frets: readonly [number, number];
  /** Whether open strings are in it too; where left out, they are if the frets begin at 0. */
  readonly open?: boolean;
}

/**
 * The stretches of the neck that are asked about one by one: windows of `width` frets that share their border fret, the
 * last one ending at the highest fret; one window where there are fewer frets. Width 5: 1–8 gives 1–5, 4–8.
 */
export function regions([lo, hi]: readonly [number, number], width: number): [number, number][] {
  const windows: [number, number][] = [];
  for (let start = lo; start + width - 1 < hi; start += width - 1)
    windows.push([start, start + width - 1]);
  windows.push([Math.max(lo, hi - width + 1), hi]);
  return windows;
}

/** What one hand reaches from note to note without leaving its place: six frets, and not more than this many mm. */
const FRETS_REACHED = 5;
const MM_REACHED = 130;

/** The highest fret that a hand reaches whose lowest fret is `lowest`. */
function reachFrom(instrument: Instrument, lowest: number, hi: number): number {
  const at = fretDistances(instrument);
  let fret = lowest;
  while (fret < hi && fret - lowest < FRETS_REACHED && at[fret + 1]! - at[lowest]! <= MM_REACHED)
    fret++;
  return fret;
}

/**
 * Whether `shapes` would find any, or any of those chosen. Cheap, for it is asked of every item of a lesson: whether one
 * stretch of the hand holds every member, the others above one that may be lowest.
 */
export function hasShape(
  instrument: Instrument,
  chord: Chord,
  region: Region,
  choice?: ShapeChoice,
): boolean {
  const sounding = soundingIn(instrument, chord, region);
  const [lo, hi] = region.frets;
  for (let lowest = Math.max(1, lo); lowest <= Math.max(1, hi); lowest++) {
    const highest = reachFrom(instrument, lowest, hi);
    if (isWhole(chord, sounding, [lowest, highest], choice)) return true;
    if (highest >= hi) return false;
  }
  return false;
}

/** What sounds of a chord in a region: on which string and fret, MIDI, and which of its members, counted from 0. */
interface Sounding {
  readonly fret: number;
  readonly midi: number;
  readonly member: number;
}

function soundingIn(instrument: Instrument, { notes }: Chord, region: Region): Sounding[] {
  const members = notes.map(chroma);
  const open = openMidi(instrument);
  const [lo, hi] = region.frets;
  const found: Sounding[] = [];
  for (const string of region.strings) {
    const add = (fret: number) => {
      const midi = open[string - 1]! + fret;
      const member = members.indexOf(pitchClass(midi));
      if (member >= 0) found.push({ fret, midi, member });
    };
    if (region.open) add(0);
    for (let fret = region.open === undefined ? lo : Math.max(1, lo); fret <= hi; fret++) add(fret);
  }
  return found;
}

/** Whether frets and open strings hold every member of a chord above one that may be lowest. */
function isWhole(
  chord: Chord,
  sounding: readonly Sounding[],
  [lowest, highest]: readonly [number, number],
  choice: ShapeChoice | undefined,
): boolean {
  // How high each member sounds, and how low one that may be lowest.
  const tops = chord.members.map(() => -Infinity);
  let base = choice === undefined ? -Infinity : Infinity;
  for (const { fret, midi, member } of sounding) {
    if (fret !== 0 && (fret < lowest || fret > highest)) continue;
    if (midi > tops[member]!) tops[member] = midi;
    if (choice !== undefined && midi < base && takesLowest(choice, chord.members[member]!))
      base = midi;
  }
  return tops.every((top) => top > -Infinity && top >= base);
}

/**
 * Every set of places that holds each member of the chord exactly once and that one hand reaches, what a teacher draws
 * first: see `fingered`. Any number of notes may lie on a string. With `wanted`, those only whose places, from the lowest
 * sounding up, it takes.
 */
export function shapes(
  instrument: Instrument,
  chord: Chord,
  region: Region,
  wanted: (places: readonly MemberPlace[]) => boolean = () => true,
): Shape[] {
  return fingered(instrument, laidOut(instrument, chord, region, wanted));
}

/** The same in no order, before a hand is asked about them. */
export function laidOut(
  instrument: Instrument,
  chord: Chord,
  region: Region,
  wanted: (places: readonly MemberPlace[]) => boolean = () => true,
): LaidOut[] {
  const options = memberPlaces(instrument, chord, region);
  const found: LaidOut[] = [];
  const taken: MemberPlace[] = [];
  const grow = (lowest: number, highest: number) => {
    if (taken.length === options.length) {
      const line = upwards(instrument, taken);
      if (wanted(line)) found.push(laidOutAs(instrument, line, region.strings));
      return;
    }
    for (const place of options[taken.length]!) {
      const low = place.fret === 0 ? lowest : Math.min(lowest, place.fret);
      const high = Math.max(highest, place.fret);
      if (high > low && high > reachFrom(instrument, low, high)) continue;
      taken.push(place);
      grow(low, high);
      taken.pop();
    }
  };
  grow(Infinity, 0);
  return found;
}

/**
 * Shapes with what each costs a hand, what a teacher draws first: root position in the order of the stack, on all
 * strings, inside one position; then its inversions; clusters last; of those alike the easier for a hand.
 */
export function fingered(instrument: Instrument, some: readonly LaidOut[]): Shape[] {
  return some
    .map((shape) => ({ ...shape, cost: costOf(instrument, shape) }))
    .toSorted((a, b) => rank(a) - rank(b) || a.cost - b.cost || (order(a) < order(b) ? -1 : 1));
}

/** Of so many shapes a hand is asked about each: more are only there in thirteenths on six strings, and on seven and up. */
const MOST_FINGERED = 100;

/** As many shapes as a hand is soon asked about, from all over the list. */
export function thinned<S extends LaidOut>(some: readonly S[]): readonly S[] {
  const every = Math.ceil(some.length / MOST_FINGERED);
  return every <= 1 ? some : some.filter((_, i) => i % every === 0);
}

/** Those that a teacher draws before all others, which are alike to the eye. */
export function plainest<S extends LaidOut>(some: readonly S[]): S[] {
  const least = some.reduce((so, shape) => Math.min(so, rank(shape)), Infinity);
  return some.filter((shape) => rank(shape) === least);
}

/** Where a shape comes: a clean inversion after a root position with one flaw and before one with three. */
export function rank({ form, flaws }: LaidOut): number {
  return 2 * FORMS.indexOf(form) + flaws;
}

/** For each member of a chord the places in a region that sound it. */
export function memberPlaces(
  instrument: Instrument,
  { notes, members }: Pick<Chord, 'notes' | 'members'>,
  region: Region,
): MemberPlace[][] {
  return notes.map((note, i) =>
    placesIn(instrument, note, region).map(({ string, fret }) => ({
      string,
      fret,
      member: members[i]!,
      note,
    })),
  );
}

function placesIn(
  instrument: Instrument,
  note: NoteName,
  { strings, frets, open }: Region,
): Place[] {
  const semitones = chroma(note);
  const [lo, hi] = frets;
  if (open === undefined) return placesOf(instrument, semitones, strings, frets);
  return [
    ...(open ? placesOf(instrument, semitones, strings, [0, 0]) : []),
    ...placesOf(instrument, semitones, strings, [Math.max(1, lo), hi]),
  ];
}

function upwards(instrument: Instrument, taken: readonly MemberPlace[]): MemberPlace[] {
  return taken.toSorted(
    (a, b) => midiAt(instrument, a) - midiAt(instrument, b) || b.string - a.string,
  );
}

/** Places one after the other in even triplets, to be fingered. */
export function inTriplets(instrument: Instrument, line: readonly Place[]): LineNote[] {
  return line.map((place, i) => ({
    midi: midiAt(instrument, place),
    at: beats(i, 3),
    length: beats(1, 3),
    place,
  }));
}

function laidOutAs(
  instrument: Instrument,
  line: readonly MemberPlace[],
  strings: readonly number[],
): LaidOut {
  return {
    places: line,
    inversion: (line[0]!.member - 1) / 2,
    form: formOf(instrument, line),
    flaws: flawsOf(line, strings),
  };
}

function costOf(instrument: Instrument, { places }: LaidOut): number {
  const played = fingering(instrument, inTriplets(instrument, places));
  return played.playable ? Math.round(played.cost * 1e6) / 1e6 : Infinity;
}

const order = (shape: LaidOut) =>
  shape.places.map(({ string, fret }) => String(string * 100 + fret)).join(' ');
