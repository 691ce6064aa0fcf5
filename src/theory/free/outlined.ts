import { analyse, SURE_READING } from '../analysis/analysis.ts';
import { motion } from '../analysis/motion.ts';
import { chordOn, memberOf, type Chord } from '../chord.ts';
import type { Key } from '../key.ts';
import type { Phrase } from '../phrase.ts';
import { DEGREES } from '../scale.ts';

/** An arpeggio of the key, and how often it was outlined. */
export interface OutlineCount {
  readonly chord: Chord;
  readonly times: number;
}

/** Notes of a phrase, from one to before another, that outline a chord. */
interface Outline {
  readonly chord: Chord;
  readonly from: number;
  readonly to: number;
}

/** So many members of a chord outline it, reached by so many leaps, as such a share of the notes. */
const MEMBERS = 3;
const LEAPS = 2;
const SHARE = 2 / 3;
/** So many notes on end of a triad or a seventh chord, all its members among them, outline it wherever the beat falls. */
const ON_END = 4;
/** So many steps one way are a run, not a chord with passing tones. */
const RUN = 4;

/**
 * Which arpeggios a free line outlined, by degree. The analysis reads every note into some group, but whoever walks
 * through a scale outlines nothing: runs are cut out before it, and of the rest a group counts where its reading is
 * sure, three members of the chord sound in it, they are two thirds of its notes at least, and two of its moves are
 * leaps (a judgement). Who plays freely is not bound to the beat, by which groups are read: so notes of one chord that
 * follow on one another count too, where nothing else was read.
 */
export function outlined(phrase: Phrase, key: Key): OutlineCount[] {
  const found = new Map<number, OutlineCount>();
  for (const part of withoutRuns(phrase, key)) {
    for (const { chord } of outlinesIn(part, key)) {
      const times = 1 + (found.get(chord.degree)?.times ?? 0);
      found.set(chord.degree, { chord: found.get(chord.degree)?.chord ?? chord, times });
    }
  }
  return [...found.values()].toSorted((a, b) => a.chord.degree - b.chord.degree);
}

function outlinesIn(part: Phrase, key: Key): Outline[] {
  const found = readIn(part, key);
  for (const outline of [...onEnd(part, key, 'triad'), ...onEnd(part, key, 'seventh')])
    if (found.every((other) => shared(outline, other) < 2)) found.push(outline);
  return found;
}

/** How many notes two outlines have in common. */
const shared = (a: Outline, b: Outline) => Math.min(a.to, b.to) - Math.max(a.from, b.from);

/** The groups of the analysis that outline their chords. */
function readIn(part: Phrase, key: Key): Outline[] {
  const { groups, notes } = analyse(part, key);
  return groups.filter(({ from, to, confidence }) => {
    const members = notes.slice(from, to).flatMap(({ member }) => (member ? [member] : []));
    return (
      confidence >= SURE_READING &&
      new Set(members).size >= MEMBERS &&
      members.length >= SHARE * (to - from) &&
      hasLeaps(part, key, from, to)
    );
  });
}

/** Notes on end that are all of one chord of the key, with all its members among them: the longest stretches first. */
function onEnd(part: Phrase, key: Key, size: 'triad' | 'seventh'): Outline[] {
  return DEGREES.flatMap((degree) => stretchesOf(chordOn(key, degree, size), part))
    .filter(({ from, to }) => to - from >= ON_END && hasLeaps(part, key, from, to))
    .toSorted((a, b) => b.to - b.from - (a.to - a.from));
}

function stretchesOf(chord: Chord, { notes }: Phrase): Outline[] {
  const members = notes.map(({ midi }) => memberOf(chord, midi));
  const starts = members.flatMap((member, i) => (member && !members[i - 1] ? [i] : []));
  return starts.flatMap((from) => {
    const end = members.indexOf(null, from);
    const to = end < 0 ? members.length : end;
    return new Set(members.slice(from, to)).size === chord.notes.length
      ? [{ chord, from, to }]
      : [];
  });
}

function hasLeaps(part: Phrase, key: Key, from: number, to: number): boolean {
  return motion({ ...part, notes: part.notes.slice(from, to) }, key).leaps >= LEAPS;
}

/** What is left of a line without its runs, a phrase for each piece; a run's first and last notes stay. */
function withoutRuns(phrase: Phrase, key: Key): Phrase[] {
  const { notes } = phrase;
  const ways = notes.slice(1).map((note, i) => {
    const from = notes[i]!;
    const isStep = motion({ ...phrase, notes: [from, note] }, key).steps === 1;
    return isStep ? Math.sign(note.midi - from.midi) : 0;
  });
  const cuts: [number, number][] = [];
  for (let from = 0; from < ways.length;) {
    let to = from + 1;
    while (ways[from] !== 0 && ways[to] === ways[from]) to++;
    if (to - from >= RUN) cuts.push([from, to]);
    from = to;
  }
  const starts = [0, ...cuts.map(([, to]) => to)];
  return starts
    .map((start, i) => notes.slice(start, (cuts[i]?.[0] ?? notes.length - 1) + 1))
    .filter((part) => part.length >= MEMBERS)
    .map((part) => ({ ...phrase, notes: part }));
}
