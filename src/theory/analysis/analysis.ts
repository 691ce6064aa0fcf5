import { memberOf, type Chord, type Member } from '../chord.ts';
import { degreeOf, letterDegree, type Key } from '../key.ts';
import { spell } from '../spell.ts';
import { finished, type Incremental } from '../incremental.ts';
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
import { cheapestPath, likelihood, type Path, type Segment } from './path.ts';
import type { Ruling } from './ruling.ts';
import { spansOf } from './spans.ts';
import { checkRulings, forbid, tonesRuled, withRuled, type Tones } from './enforced.ts';
import { succession } from './succession.ts';
import * as W from './weights.ts';

/** One way to read a group, and how sure it is, 0 to 1. */
interface Reading {
  readonly chord: Chord;
  readonly confidence: number;
}

/** Notes of a phrase that outline one arpeggio: `from` up to and not including `to`. */
export interface ReadGroup extends Reading {
  readonly from: number;
  readonly to: number;
}

/** The same with what else it may be. */
export interface Group extends ReadGroup {
  /** The next best chords for the same notes, at most two. */
  readonly alternatives: readonly Reading[];
  /** The best chord for these notes and the next group's as one; null for the last group, or where that cannot be. */
  readonly joined: Reading | null;
  /** The likeliest arpeggios of other notes, some of these among them; at most four. */
  readonly regrouped: readonly ReadGroup[];
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
  const { melody, tones, costs, path } = finished(readingOf(phrase, key, options));
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
 * The groups alone that `analyse` finds, without what else they may be and what their notes are; with a pause every few
 * thousand steps.
 * @throws RangeError as `analyse` does
 */
export function* readGroups(
  phrase: Phrase,
  key: Key,
  options: Pick<AnalysisOptions, 'rulings'> = {},
): Incremental<ReadGroup[]> {
  checkRulings(options.rulings ?? [], phrase.notes.length);
  if (phrase.notes.length === 0) return [];
  const { costs, path } = yield* readingOf(phrase, key, options);
  const groups: ReadGroup[] = [];
  for (const segment of path.segments) {
    groups.push(readGroup(segment, path, costs));
    yield;
  }
  return groups;
}

/**
 * How unlikely the best reading of a phrase is, in nats, to be held against that of the same notes at other places in
 * their bars: least where its arpeggios start on beats. 0 for no notes.
 */
export function unlikelihood(phrase: Phrase, key: Key): number {
  if (phrase.notes.length === 0) return 0;
  return finished(readingOf(phrase, key, {})).path.cost / W.temperature;
}

/** A phrase that was read, and what it was read by. */
interface Found {
  readonly melody: readonly MelodyNote[];
  readonly tones: Tones;
  readonly costs: Costs;
  readonly path: Path;
}

function* readingOf(phrase: Phrase, key: Key, options: AnalysisOptions): Incremental<Found> {
  const { bar = 4, pickup = beats(0), rulings = [] } = options;
  const metre: Metre = { bar, pickup };
  const melody = melodyOf(phrase, key, metre);
  const tones = tonesRuled(rulings);
  const costs = yield* costsOf(melody, key, rulings, tones);
  const path = yield* cheapestPath(
    costs,
    grids(melody, costs.spans, metre),
    groupEvennessOf(melody, costs.spans),
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
  return {
    groups: groups.map((group) => ({ ...group, confidence: 1, ...NOTHING_ELSE })),
    // Few ask for them.
    get notes() {
      const melody = melodyOf(phrase, key, { bar: 4, pickup: beats(0) });
      const tones = tonesRuled(rulings);
      return groups.flatMap((group) => notesOf(group, group.chord, melody, key, tones));
    },
  };
}

const NOTHING_ELSE = { alternatives: [], joined: null, regrouped: [] };

function* costsOf(
  melody: readonly MelodyNote[],
  key: Key,
  rulings: readonly Ruling[],
  tones: Tones,
): Incremental<Costs> {
  const spans = spansOf(melody.length, W.longest, rulings);
  const chords = withRuled(candidates(key), rulings);
  const costs = {
    notes: melody.length,
    spans,
    chords,
    costs: yield* groupCosts(melody, chords, spans, tones),
  };
  forbid(costs, rulings);
  return costs;
}

/**
 * What the cheapest readings of the phrase with each chord here cost, and how sure a reading is that costs so much: the
 * softmax over these and over those with these notes cut otherwise.
 */
function sureness(segment: Segment, path: Path) {
  const own = path.costsWith(segment.from, segment.to);
  const likely = (cost: number) => likelihood(cost - path.cost);
  const sum = own.reduce((all, cost) => all + likely(cost), path.otherwise(segment));
  return { own, confidence: (cost: number) => likely(cost) / sum };
}

function readGroup(segment: Segment, path: Path, { chords }: Costs): ReadGroup {
  const { from, to, chord } = segment;
  const { own, confidence } = sureness(segment, path);
  return { from, to, chord: chords[chord]!, confidence: confidence(own[chord]!) };
}

/** How many arpeggios of other notes are told of beside a group. */
const MOST_REGROUPED = 4;

function groupOf(segment: Segment, next: Segment | null, path: Path, { chords }: Costs): Group {
  const { from, to, chord: best } = segment;
  const { own, confidence } = sureness(segment, path);
  const ranked = (costs: Float64Array): Reading[] =>
    chords
      .map((chord, i) => ({ chord, confidence: confidence(costs[i]!) }))
      .filter((reading) => reading.confidence > 0)
      .toSorted((a, b) => b.confidence - a.confidence);
  return {
    from,
    to,
    chord: chords[best]!,
    confidence: confidence(own[best]!),
    alternatives: ranked(own.with(best, Infinity)).slice(0, 2),
    joined: next && (ranked(path.costsWith(from, next.to))[0] ?? null),
    regrouped: path.regroupings(segment, MOST_REGROUPED).map(({ cost, chord, ...notes }) => ({
      ...notes,
      chord: chords[chord]!,
      confidence: confidence(cost),
    })),
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
