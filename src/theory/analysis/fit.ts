import { chroma } from '../note.ts';
import type { Chord } from '../chord.ts';
import { embellishment, embellishmentCost, type Standing } from './embellishment.ts';
import { runOf, type MelodyNote } from './melody.ts';
import type { Tones } from './enforced.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** How the notes of a melody fit one chord, note by note: what group costs are added up from. */
interface NoteFit {
  /** Index among the chord's notes, −1 for a note that is none of them. */
  readonly member: number;
  /** How far the note makes its member present, 0 to 1. */
  readonly presence: number;
  readonly cost: Readonly<Record<Standing, number>>;
}

/** More than any reading costs: what somebody denied is read only where nothing else is left. */
const DENIED = 1000;

/** The notes' fit to a chord, one by one. What is ruled to embellish costs nothing: there is no question about it. */
function noteFits(melody: readonly MelodyNote[], chord: Chord, tones: Tones): NoteFit[] {
  const chromas = chord.notes.map(chroma);
  const members = melody.map((note, i) => (tones.get(i) ? -1 : chromas.indexOf(note.chroma)));
  const chordal = (index: number) => members[index] !== undefined && members[index]! >= 0;
  const alike = (member: number, presence: number, cost: number): NoteFit => ({
    member,
    presence,
    cost: { first: cost, middle: cost, last: cost },
  });
  return melody.map((note, i) => {
    const member = members[i]!;
    if (member < 0) {
      if (tones.has(i)) return alike(member, 0, tones.get(i) ? 0 : DENIED);
      const cost = (standing: Standing) =>
        embellishmentCost(note, embellishment(melody, i, standing, chordal));
      return {
        member,
        presence: 0,
        cost: { first: cost('first'), middle: cost('middle'), last: cost('last') },
      };
    }
    const cost = chordToneCost(chromas.length);
    if (tones.has(i)) return alike(member, 1, cost);
    if (member >= 3 && note.into?.isStep && note.out?.isStep)
      return alike(member, W.stepped.present, W.stepped.cost * note.weight);
    const inside = cost * reached(melody, i, chordal);
    return { member, presence: 1, cost: { first: cost, middle: inside, last: inside } };
  });
}

/** How much of a chord tone's cost is left where it is reached by a third from one: the longer the run, the less. */
function reached(
  melody: readonly MelodyNote[],
  i: number,
  chordal: (index: number) => boolean,
): number {
  const { into, run } = melody[i]!;
  const steps = Math.abs(into?.scaleSteps ?? 0);
  const passed = steps === 1 && run.thirds > 0 && !chordal(i - 1) && chordal(i - 2);
  if (!passed && !(steps === 2 && chordal(i - 1))) return 1;
  if (run.thirds < 3) return W.third.alone;
  return run.thirds === 3 ? W.third.three : W.third.four;
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

/**
 * The cost of reading notes as one chord, for every group of them: `costs[from][length − 1]`, apart from where the
 * group lies in the bar and what comes before it.
 */
export function groupCosts(
  melody: readonly MelodyNote[],
  chord: Chord,
  longest: number,
  ruled: Tones,
): Float64Array[] {
  const fits = noteFits(melody, chord, ruled);
  const notes = Math.min(chord.notes.length, 6);
  const missing = missingCosts(notes);
  const fixed = W.group + W.size[chord.size === 'thirteenth' ? 'eleventh' : chord.size];
  const present = new Float64Array(chord.notes.length);
  return melody.map((_, from) => {
    const costs = new Float64Array(Math.min(longest, melody.length - from));
    present.fill(0);
    let inner = 0;
    let lowest = from;
    let beats = 0;
    for (let length = 1; length <= costs.length; length++) {
      const at = from + length - 1;
      const { member, presence, cost } = fits[at]!;
      if (length > 1 && member >= 0 && fits[at - 1]!.member >= 0 && melody[at]!.into!.isStep)
        inner += W.step;
      beats += melody[at]!.length;
      if (member >= 0) present[member] = Math.max(present[member]!, presence);
      if (melody[at]!.midi < melody[lowest]!.midi) lowest = at;
      const tones = length === 1 ? single(fits[at]!) : inner + cost.last;
      costs[length - 1] =
        fixed +
        runOf(melody[from]!).cut +
        (W.short[length - 1] ?? 0) / Math.max(1, beats) +
        tones +
        missingCost(present, missing, length) +
        rootCost(fits[from]!.member === 0, fits[lowest]!.member === 0, notes);
      inner += length === 1 ? cost.first : cost.middle;
    }
    return costs;
  });
}

/** A group of one note is its own first and last. */
function single({ cost }: NoteFit): number {
  return Math.min(cost.first, cost.last);
}

function missingCost(present: Float64Array, missing: readonly number[], length: number): number {
  const short = W.missingInShort[length - 1];
  let cost = 0;
  for (let i = 0; i < missing.length; i++)
    cost += missing[i]! * (1 - present[i]!) * (short?.[i] ?? 1);
  return cost;
}

function rootCost(first: boolean, lowest: boolean, notes: number): number {
  if (!first && !lowest) return W.root.neither * (notes - 3);
  return (first ? W.root.first : 0) + (lowest ? W.root.lowest : 0);
}
