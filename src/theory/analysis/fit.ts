import type { Incremental } from '../incremental.ts';
import { chroma } from '../note.ts';
import type { Chord } from '../chord.ts';
import { embellishment, embellishmentCost, type Standing } from './embellishment.ts';
import { runOf, type MelodyNote } from './melody.ts';
import type { Tones } from './enforced.ts';
import type { Spans } from './spans.ts';
import * as W from './weights.ts';

/** How the notes of a melody fit one chord, note by note: what group costs are added up from. */
interface Fits {
  /** Index among the chord's notes, −1 for a note that is none of them. */
  readonly member: Int8Array;
  /** How far the note makes its member present, 0 to 1. */
  readonly presence: Float64Array;
  /** What a note costs by where it stands in its group. */
  readonly cost: Readonly<Record<Standing, Float64Array>>;
}

/** What is the same whatever chord notes are read as. */
interface Facts {
  readonly melody: readonly MelodyNote[];
  readonly chromas: Int8Array;
  readonly spans: Spans;
  readonly tones: Tones;
  /** Of each note as a seventh or ninth between two steps; 0 where it is not between two. */
  readonly stepped: Float64Array;
  /** How a note may go on by thirds: 1 from the note before it, 2 past that from the one before; what of a tone's cost is then left. */
  readonly link: Int8Array;
  readonly reached: Float64Array;
  /** See `foreignCost`. NaN where it was not yet asked for. */
  readonly foreign: Float64Array;
  /** Of each group, by spans: which of its notes is the lowest, and what it costs that it is short. */
  readonly lowest: Int32Array;
  readonly short: Float64Array;
}

/** More than any reading costs: what somebody denied is read only where nothing else is left. */
const DENIED = 1000;

const STANDINGS: readonly Standing[] = ['first', 'middle', 'last'];

/** What it costs to read notes as each chord, for every group of them, apart from where the group lies in the bar and what comes before it. */
export function* groupCosts(
  melody: readonly MelodyNote[],
  chords: readonly Chord[],
  spans: Spans,
  tones: Tones,
): Incremental<Float64Array[]> {
  const facts = {
    melody,
    chromas: Int8Array.from(melody, (note) => note.chroma),
    spans,
    tones,
    stepped: Float64Array.from(melody, ({ into, out, weight }) =>
      into?.isStep && out?.isStep ? W.stepped.cost * weight : 0,
    ),
    link: Int8Array.from(melody, linkOf),
    reached: Float64Array.from(melody, reachedBy),
    foreign: new Float64Array(melody.length * 8 * STANDINGS.length).fill(NaN),
    ...lowestAndShort(melody, spans),
  };
  const table = () => new Float64Array(melody.length);
  const fits: Fits = {
    member: new Int8Array(melody.length),
    presence: table(),
    cost: { first: table(), middle: table(), last: table() },
  };
  const costs: Float64Array[] = [];
  for (const chord of chords) {
    const notes = chord.notes.map(chroma);
    fitNotes(facts, notes, fits);
    costs.push(costsAs(facts, fits, chord.size, notes.length));
    yield;
  }
  return costs;
}

/** The notes' fit to a chord, one by one. What is ruled to embellish costs nothing: there is no question about it. */
function fitNotes(facts: Facts, notes: readonly number[], fits: Fits): void {
  const { chromas, tones, stepped } = facts;
  const { member, presence, cost } = fits;
  const members = new Int8Array(12).fill(-1);
  for (let i = notes.length - 1; i >= 0; i--) members[notes[i]!] = i;
  for (let i = 0; i < chromas.length; i++) member[i] = members[chromas[i]!]!;
  for (const [i, kind] of tones) if (kind) member[i] = -1;
  const tone = chordToneCost(notes.length);
  for (let i = 0; i < chromas.length; i++) {
    const is = member[i]!;
    presence[i] = is < 0 ? 0 : 1;
    if (is < 0) fitForeign(facts, i, fits);
    else if (is >= 3 && stepped[i]! > 0) {
      presence[i] = W.stepped.present;
      alike(fits, i, stepped[i]!);
    } else {
      alike(fits, i, tone * left(facts, i, member));
      cost.first[i] = tone;
    }
  }
  for (const [i, kind] of tones) {
    presence[i] = member[i]! < 0 ? 0 : 1;
    alike(fits, i, member[i]! >= 0 ? tone : kind ? 0 : DENIED);
  }
}

/** A note that costs the same wherever it stands. */
function alike({ cost }: Fits, i: number, each: number): void {
  cost.first[i] = each;
  cost.middle[i] = each;
  cost.last[i] = each;
}

/** A note that is none of the chord's, by which notes around it are. */
function fitForeign(facts: Facts, i: number, { member, cost }: Fits): void {
  const is = (at: number) => (at >= 0 && at < member.length && member[at]! >= 0 ? 1 : 0);
  const around = is(i - 2) + 2 * is(i - 1) + 4 * is(i + 1);
  cost.first[i] = foreignCost(facts, i, around, 0);
  cost.middle[i] = foreignCost(facts, i, around, 1);
  cost.last[i] = foreignCost(facts, i, around, 2);
}

/**
 * What a note costs that is none of its chord's; the same for all chords that have the same notes around it: 1 for the
 * second one before it, 2 for the one before, 4 for the one after.
 */
function foreignCost({ melody, foreign }: Facts, i: number, around: number, standing: number) {
  const cell = (i * 8 + around) * STANDINGS.length + standing;
  if (Number.isNaN(foreign[cell]!)) {
    const chordal = (at: number) => (around & (at === i - 2 ? 1 : at === i - 1 ? 2 : 4)) > 0;
    const kind = embellishment(melody, i, STANDINGS[standing]!, chordal);
    foreign[cell] = embellishmentCost(melody[i]!, kind);
  }
  return foreign[cell]!;
}

/** How much of a chord tone's cost is left where it is reached by a third from one. */
function left({ link, reached }: Facts, i: number, member: Int8Array): number {
  const by = link[i]!;
  if (by === 0) return 1;
  const goesOn = by === 1 ? member[i - 1]! >= 0 : member[i - 1]! < 0 && member[i - 2]! >= 0;
  return goesOn ? reached[i]! : 1;
}

/** The longer the run, the less. */
function reachedBy({ run: { thirds } }: MelodyNote): number {
  if (thirds < 3) return W.third.alone;
  return thirds === 3 ? W.third.three : W.third.four;
}

function linkOf({ into, run }: MelodyNote): number {
  const steps = Math.abs(into?.scaleSteps ?? 0);
  if (steps === 1 && run.thirds > 0) return 2;
  return steps === 2 || run.moved ? 1 : 0;
}

function chordToneCost(notes: number): number {
  return W.chordTone * Math.log(notes / 3) * (notes > 4 ? W.ninthTone : 1);
}

/** Of each member of the chord that does not sound, root first. */
function missingCosts(notes: number): number[] {
  const { root, third, fifth, beyond, perNote } = W.missing;
  const more = 1 + perNote * (notes - 3);
  return [root * more, third * more, fifth, beyond, beyond, beyond].slice(0, notes);
}

/** × these in groups of one note, of two, and of more. */
const IN_SHORT = [...W.missingInShort, []].map((short) =>
  Array.from({ length: 6 }, (_, member) => short[member] ?? 1),
);

function missingCost(present: Float64Array, missing: readonly number[], length: number): number {
  const short = IN_SHORT[Math.min(length, IN_SHORT.length) - 1]!;
  let cost = 0;
  for (let i = 0; i < missing.length; i++) cost += missing[i]! * (1 - present[i]!) * short[i]!;
  return cost;
}

/** What a root costs that sounds neither first nor lowest, lowest alone, first alone, or both. */
function rootCosts(notes: number): number[] {
  const { first, lowest, neither } = W.root;
  return [neither * (notes - 3), lowest, first, first + lowest];
}

function lowestAndShort(melody: readonly MelodyNote[], spans: Spans) {
  const lowest = new Int32Array(spans.count);
  const short = new Float64Array(spans.count);
  for (let from = 0; from < melody.length; from++) {
    let [low, beats] = [from, 0];
    for (let length = 1; length <= spans.most[from]!; length++) {
      const at = from + length - 1;
      beats += melody[at]!.length;
      if (melody[at]!.midi < melody[low]!.midi) low = at;
      if (length < spans.least[from]!) continue;
      const span = spans.base[from]! + length;
      lowest[span] = low;
      short[span] = length > W.short.length ? 0 : W.short[length - 1]! / Math.max(1, beats);
    }
  }
  return { lowest, short };
}

/** What is the same for all groups that are read as one chord. */
interface Reading {
  /** Of any group. */
  readonly fixed: number;
  readonly missing: readonly number[];
  readonly roots: readonly number[];
  /** How far each member sounds in the group in question. */
  readonly present: Float64Array;
}

/** The costs of all groups as one chord of so many notes, in the order of spans. */
function costsAs(facts: Facts, fits: Fits, size: Chord['size'], notes: number): Float64Array {
  const costs = new Float64Array(facts.spans.count);
  const counted = Math.min(notes, 6);
  const reading = {
    fixed: W.group + W.size[size === 'thirteenth' ? 'eleventh' : size],
    missing: missingCosts(counted),
    roots: rootCosts(counted),
    present: new Float64Array(notes),
  };
  for (let from = 0; from < facts.melody.length; from++)
    costFrom(facts, fits, reading, from, costs);
  return costs;
}

/** Writes the costs of the groups that start at a note. */
function costFrom(
  { melody, spans, lowest, short }: Facts,
  { member, presence, cost: { first, middle, last } }: Fits,
  { fixed, missing, roots, present }: Reading,
  from: number,
  costs: Float64Array,
): void {
  const begun = fixed + runOf(melody[from]!).cut;
  const isRoot = member[from] === 0 ? 2 : 0;
  const [least, most, base] = [spans.least[from]!, spans.most[from]!, spans.base[from]!];
  let [inner, lack] = [0, 0];
  present.fill(0);
  for (let length = 1; length <= most; length++) {
    const at = from + length - 1;
    const is = member[at]!;
    const isNew = is >= 0 && presence[at]! > present[is]!;
    if (isNew) present[is] = presence[at]!;
    // In groups of more notes it stays what it was, until another member sounds.
    if (isNew || length <= IN_SHORT.length) lack = missingCost(present, missing, length);
    if (length >= least) {
      const span = base + length;
      // A group of one note is its own first and last.
      const tones = length === 1 ? Math.min(first[at]!, last[at]!) : inner + last[at]!;
      const root = roots[isRoot + (member[lowest[span]!] === 0 ? 1 : 0)]!;
      costs[span] = begun + short[span]! + tones + lack + root;
    }
    inner += length === 1 ? first[at]! : middle[at]!;
  }
}
