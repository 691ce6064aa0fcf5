import { memberOf, type Chord, type Member } from '../chord.ts';
import { degreeOf, letterDegree, spell, type Key } from '../key.ts';
import type { NoteName } from '../note.ts';
import type { Phrase } from '../phrase.ts';
import { beats, type Beats } from '../rhythm.ts';
import { candidates } from './candidates.ts';
import { embellishment, type Standing } from './embellishment.ts';
import type { Embellishment } from './embellishmentNames.ts';
import { groupCosts } from './fit.ts';
import { grids } from './grid.ts';
import type { Costs } from './lattice.ts';
import { melodyOf, type Metre, type MelodyNote } from './melody.ts';
import { groupEvennessOf } from './evenness.ts';
import { cheapestPath, type Path, type Segment } from './path.ts';
import { spanOf, type Ruling } from './ruling.ts';
import { checkRulings, forbid, tonesRuled, withRuled, type Tones } from './enforced.ts';
import { succession } from './succession.ts';
import { ARPEGGIOS as W } from './weights.ts';

/** One way to read a group, and how sure it is, 0 to 1. */
interface Reading {
  readonly chord: Chord;
  readonly confidence: number;
}

/** Notes of a phrase that outline one arpeggio: `from` up to and not including `to`. */
export interface Group extends Reading {
  readonly from: number;
  readonly to: number;
  /** The next best chords for the same notes, at most two. */
  readonly alternatives: readonly Reading[];
  /** The best chord for these notes and the next group's as one; null for the last group, or where that cannot be. */
  readonly joined: Reading | null;
}

/** What one note of a phrase is. A foreign note is neither a member nor an embellishment. */
interface AnalysedNote {
  /** As the key spells it. */
  readonly name: NoteName;
  /** 1 to 7, by the letter. */
  readonly degree: number;
  /** Whether the key's scale has it as it is, unaltered. */
  readonly inKey: boolean;
  /** Which number of its group's chord it is: 1 for the root, 3, 5, … */
  readonly member: Member | null;
  readonly embellishment: Embellishment | null;
}

/** A phrase explained: every note is in one group. */
export interface Analysis {
  readonly groups: readonly Group[];
  readonly notes: readonly AnalysedNote[];
}

/** What is known beforehand. */
export interface AnalysisOptions {
  /** Beats of a bar; 4 where left out. */
  readonly bar?: number;
  /** Beats before the first bar line: 0 where left out, null where nobody knows. */
  readonly pickup?: Beats | null;
  /** What is not to be guessed. */
  readonly rulings?: readonly Ruling[];
}

/** Below this confidence a group's reading is a question to whoever knows. */
export const SURE_READING = 0.7;

/**
 * Which notes of a phrase belong together, which arpeggio of the key each group outlines, and which notes only
 * embellish: the optimum path through all ways to cut and to read the phrase.
 * @throws RangeError where a ruling speaks of notes that are not there, or rulings contradict each other.
 */
export function analyse(phrase: Phrase, key: Key, options: AnalysisOptions = {}): Analysis {
  const { rulings = [] } = options;
  checkRulings(rulings, phrase.notes.length);
  if (phrase.notes.length === 0) return { groups: [], notes: [] };
  const { melody, tones, costs, path } = readingOf(phrase, key, options);
  return {
    groups: path.segments.map((segment, i) =>
      groupOf(segment, path.segments[i + 1] ?? null, path, costs),
    ),
    notes: path.segments.flatMap((segment) =>
      notesOf(segment, costs.chords[segment.chord]!, melody, key, tones),
    ),
  };
}

/**
 * How unlikely the best reading of a phrase is, in nats, to be held against that of the same notes at other places in
 * their bars: least where its arpeggios start on beats. 0 for no notes.
 */
export function unlikelihood(phrase: Phrase, key: Key): number {
  if (phrase.notes.length === 0) return 0;
  return readingOf(phrase, key, {}).path.cost / W.temperature;
}

function readingOf(phrase: Phrase, key: Key, options: AnalysisOptions) {
  const { bar = 4, pickup = beats(0), rulings = [] } = options;
  const metre: Metre = { bar, pickup };
  const melody = melodyOf(phrase, key, metre);
  const tones = tonesRuled(rulings);
  const costs = costsOf(melody, key, rulings, tones);
  const path = cheapestPath(
    costs,
    grids(melody, metre),
    groupEvennessOf(melody, costs.longest),
    succession(key),
  );
  if (!path) throw new RangeError('These rulings contradict each other: take one of them back.');
  return { melody, tones, costs, path };
}

/**
 * A phrase explained by whoever knows its groups, every note in one of them: there is no path to look for.
 *
 * @param rulings of single notes
 */
export function explainedBy(
  phrase: Phrase,
  key: Key,
  groups: readonly Pick<Group, 'from' | 'to' | 'chord'>[],
  rulings: readonly Ruling[] = [],
): Analysis {
  checkRulings(rulings, phrase.notes.length);
  const melody = melodyOf(phrase, key, { bar: 4, pickup: beats(0) });
  const tones = tonesRuled(rulings);
  return {
    groups: groups.map((group) => ({ ...group, confidence: 1, alternatives: [], joined: null })),
    notes: groups.flatMap((group) => notesOf(group, group.chord, melody, key, tones)),
  };
}

function costsOf(
  melody: readonly MelodyNote[],
  key: Key,
  rulings: readonly Ruling[],
  tones: Tones,
): Costs {
  const ruled = rulings.map(spanOf).map(([from, to]) => to - from);
  const longest = Math.max(W.longest, ...ruled);
  const chords = withRuled(candidates(key), rulings);
  const costs = {
    notes: melody.length,
    longest,
    chords,
    costs: chords.map((chord) => groupCosts(melody, chord, longest, tones)),
  };
  forbid(costs, rulings);
  return costs;
}

/** The softmax over the cheapest readings of the phrase with each chord here, and with these notes cut otherwise. */
function groupOf(segment: Segment, next: Segment | null, path: Path, costs: Costs): Group {
  const { from, to } = segment;
  const likelihood = (cost: number) => Math.exp((path.cost - cost) / W.temperature);
  const readings = (end: number) =>
    costs.chords.map((chord, i) => ({
      chord,
      confidence: likelihood(path.costWith({ from, to: end, chord: i })),
    }));
  const own = readings(to);
  const sum = own.reduce(
    (all, { confidence }) => all + confidence,
    likelihood(path.costOtherwise(segment)),
  );
  const ranked = (some: readonly Reading[]) =>
    some
      .filter(({ confidence }) => confidence > 0)
      .toSorted((a, b) => b.confidence - a.confidence)
      .map(({ chord, confidence }) => ({ chord, confidence: confidence / sum }));
  const best = own[segment.chord]!;
  const joinable = next && next.to - from <= costs.longest;
  return {
    from,
    to,
    chord: best.chord,
    confidence: best.confidence / sum,
    alternatives: ranked(own.filter((reading) => reading !== best)).slice(0, 2),
    joined: joinable ? (ranked(readings(next.to))[0] ?? null) : null,
  };
}

function notesOf(
  { from, to }: Pick<Segment, 'from' | 'to'>,
  chord: Chord,
  melody: readonly MelodyNote[],
  key: Key,
  tones: Tones,
): AnalysedNote[] {
  const member = (i: number) => (tones.get(i) ? null : memberOf(chord, melody[i]!.chroma));
  const chordal = (i: number) => i >= 0 && i < melody.length && member(i) !== null;
  return melody.slice(from, to).map(({ midi }, i) => {
    const name = spell(key, midi);
    const at = from + i;
    const kind = tones.get(at) ?? embellishment(melody, at, standing(at, from, to), chordal);
    return {
      name,
      degree: letterDegree(key, name),
      inKey: degreeOf(key, name) !== null,
      member: member(at),
      embellishment: member(at) === null ? kind : null,
    };
  });
}

/** The kinds of embellishing tone that a note can be by the way it is reached and left, whatever chord it is in. */
export function possibleEmbellishments(phrase: Phrase, key: Key, note: number): Embellishment[] {
  const melody = melodyOf(phrase, key, { bar: 4, pickup: beats(0) });
  const kinds = (['first', 'middle', 'last'] as const).map((where) =>
    embellishment(melody, note, where, () => true),
  );
  return [...new Set(kinds)].filter((kind) => kind !== null);
}

function standing(at: number, from: number, to: number): Standing {
  if (at === to - 1) return 'last';
  return at === from ? 'first' : 'middle';
}
