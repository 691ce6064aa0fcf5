import { analyse, SURE_READING } from '../analysis/analysis.ts';
import { motion } from '../analysis/motion.ts';
import type { Chord } from '../chord.ts';
import type { Key } from '../key.ts';
import type { Phrase } from '../phrase.ts';

/** An arpeggio of the key, and how often it was outlined. */
export interface OutlineCount {
  readonly chord: Chord;
  readonly times: number;
}

/** So many members of a chord outline it, reached by so many leaps, as such a share of the notes. */
const MEMBERS = 3;
const LEAPS = 2;
const SHARE = 2 / 3;
/** So many steps one way are a run, not a chord with passing tones. */
const RUN = 4;

/**
 * Which arpeggios a free line outlined, by degree. The analysis reads every note into some group, but whoever walks
 * through a scale outlines nothing: runs are cut out before it, and of the rest a group counts where its reading is
 * sure, three members of the chord sound in it, they are two thirds of its notes at least, and two of its moves are
 * leaps (a judgement).
 */
export function outlined(phrase: Phrase, key: Key): OutlineCount[] {
  const found = new Map<number, OutlineCount>();
  for (const part of withoutRuns(phrase, key)) {
    for (const chord of outlinedIn(part, key)) {
      const times = 1 + (found.get(chord.degree)?.times ?? 0);
      found.set(chord.degree, { chord: found.get(chord.degree)?.chord ?? chord, times });
    }
  }
  return [...found.values()].toSorted((a, b) => a.chord.degree - b.chord.degree);
}

function outlinedIn(part: Phrase, key: Key): Chord[] {
  const { groups, notes } = analyse(part, key);
  return groups.flatMap(({ chord, from, to, confidence }) => {
    const members = notes.slice(from, to).flatMap(({ member }) => (member ? [member] : []));
    const { leaps } = motion({ ...part, notes: part.notes.slice(from, to) }, key);
    const isOutlined =
      confidence >= SURE_READING &&
      new Set(members).size >= MEMBERS &&
      members.length >= SHARE * (to - from) &&
      leaps >= LEAPS;
    return isOutlined ? [chord] : [];
  });
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
