import { distance, transpose } from '@tonaljs/pitch-distance';
import { chordOn } from '../../src/theory/chord.ts';
import { letterDegree, type Key } from '../../src/theory/key.ts';
import { chroma, type NoteName } from '../../src/theory/note.ts';
import { parentKey } from '../../src/theory/scale.ts';
import { succession, type Succession } from '../../src/theory/analysis/succession.ts';

/** A note of a tune in plain numbers: MIDI number, beats since a bar line, beats of length. */
export interface TuneNote {
  readonly midi: number;
  readonly at: number;
  readonly length: number;
}

/** The triad that goes with a stretch of a tune. */
export interface TuneChord {
  readonly root: NoteName;
  readonly triad: 'major' | 'minor' | 'diminished' | 'augmented';
  /** Of the key, 1 to 7, by the root's letter. */
  readonly degree: number;
  /** Whether the key's own scale, or in minor harmonic minor, has it. */
  readonly own: boolean;
}

/**
 * What is weighed where a tune, not an arpeggio phrase, is given chords. Gains: the highest sum wins. Apart from
 * `weights.ts`, because neither set of weights serves the other purpose.
 */
export const TUNES = {
  /** A note's weight: length in beats to this power, × for the first of its stretch, × on a beat. */
  weight: { power: 0.2, first: 1.6, onBeat: 1.3 },
  root: 0.8,
  third: 0.9,
  fifth: 0.7,
  seventh: -0.9,
  seventhOfFive: 0.35,
  /** A foreign note by how it is reached and left: by leaps, reached by step, left by step, both. */
  foreign: { leapt: -1.3, steppedTo: -1.2, steppedFrom: -0.6, both: -1.1 },
  lowestIsRoot: 0.4,
  /** × ln of a chord's frequency and of its chance after the one before; of the same chord again. */
  frequency: 0.5,
  succession: 0.5,
  again: 0.3,
  /** How much rarer a chord is that is not the key's own, as −ln of its share. */
  borrowed: 1.5,
  firstIsOne: 1.2,
  lastIsOne: 0.7,
  fiveBeforeLast: 1.9,
} as const;

/** The most likely triads under stretches of a tune, one for each: the best path (Viterbi). */
export function chordsUnder(stretches: readonly (readonly TuneNote[])[], key: Key): TuneChord[] {
  const chords = triads(key);
  const usual = succession(key);
  const all = stretches.flat();
  let offset = 0;
  const last = stretches.length - 1;
  let sums: number[] = [];
  const from: number[][] = [];
  stretches.forEach((notes, i) => {
    const own = chords.map(
      (chord) => fit(chord, notes, all, offset) + prior(chord, usual) + framing(chord, i, last),
    );
    offset += notes.length;
    const previous = sums;
    const origins: number[] = [];
    sums = chords.map((chord, c) => {
      if (i === 0) return own[c]!;
      const ways = chords.map((before, b) => previous[b]! + link(before, chord, usual));
      origins[c] = ways.indexOf(Math.max(...ways));
      return own[c]! + ways[origins[c]!]!;
    });
    from.push(origins);
  });
  const path: TuneChord[] = [];
  let at = sums.indexOf(Math.max(...sums));
  for (let i = last; i >= 0; i--) {
    path.unshift(chords[at]!);
    at = from[i]![at] ?? at;
  }
  return path;
}

/** The key's own triads, V of harmonic minor in minor, and the major triads II, III, VI and ♭VII. */
function triads(key: Key): TuneChord[] {
  const own = parentKey(key);
  const { tonic } = own;
  const diatonic = [1, 2, 3, 4, 5, 6, 7].map((degree) => {
    const { root, quality } = chordOn(own, degree, 'triad');
    return { root, triad: quality.triad, degree, own: true };
  });
  const major = ['2M', '3M', '6M', '7m'].map((interval) =>
    majorOn(transpose(tonic, interval), own),
  );
  const five = majorOn(transpose(tonic, '5P'), own, own.scale === 'minor');
  const known = (chord: TuneChord) =>
    diatonic.some(({ root, triad }) => root === chord.root && triad === chord.triad);
  return [...diatonic, ...[five, ...major].filter((chord) => !known(chord))];
}

const majorOn = (root: NoteName, key: Key, own = false): TuneChord => ({
  root,
  triad: 'major',
  degree: letterDegree(key, root),
  own,
});

const THIRDS = { major: 4, minor: 3, diminished: 3, augmented: 4 };
const FIFTHS = { major: 7, minor: 7, diminished: 6, augmented: 8 };

/** How well notes go with a chord; `offset` is where they stand among all notes of the tune. */
function fit(
  chord: TuneChord,
  notes: readonly TuneNote[],
  all: readonly TuneNote[],
  offset: number,
): number {
  const root = chroma(chord.root);
  const lowest = notes.reduce((a, b) => (b.midi < a.midi ? b : a));
  const gains = notes.map((note, i) => {
    const { power, first, onBeat } = TUNES.weight;
    const beat = Math.abs(note.at - Math.round(note.at)) < 1e-6;
    const weight = note.length ** power * (i === 0 ? first : 1) * (beat ? onBeat : 1);
    return weight * gain(chord, (note.midi - root + 120) % 12, all, offset + i);
  });
  const sum = gains.reduce((a, b) => a + b, 0);
  return sum + ((lowest.midi - root) % 12 === 0 ? TUNES.lowestIsRoot : 0);
}

function gain(
  { triad, degree }: TuneChord,
  above: number,
  all: readonly TuneNote[],
  i: number,
): number {
  if (above === 0) return TUNES.root;
  if (above === THIRDS[triad]) return TUNES.third;
  if (above === FIFTHS[triad]) return TUNES.fifth;
  if (above === 10 || (above === 11 && triad === 'major'))
    return degree === 5 ? TUNES.seventhOfFive : TUNES.seventh;
  const step = (a?: TuneNote, b?: TuneNote) =>
    a !== undefined && b !== undefined && a.midi !== b.midi && Math.abs(a.midi - b.midi) <= 2;
  const [into, out] = [step(all[i - 1], all[i]), step(all[i], all[i + 1])];
  const { leapt, steppedTo, steppedFrom, both } = TUNES.foreign;
  if (into) return out ? both : steppedTo;
  return out ? steppedFrom : leapt;
}

const prior = ({ degree, own }: TuneChord, { rarity }: Succession) =>
  -TUNES.frequency * (rarity(degree) + (own ? 0 : TUNES.borrowed));

function framing({ degree }: TuneChord, i: number, last: number): number {
  if (i === last - 1 && degree === 5) return TUNES.fiveBeforeLast;
  if (degree !== 1) return 0;
  return (i === 0 ? TUNES.firstIsOne : 0) + (i === last ? TUNES.lastIsOne : 0);
}

function link(before: TuneChord, chord: TuneChord, { surprise }: Succession): number {
  if (distance(before.root, chord.root) === '1P') return TUNES.again;
  if (before.degree === chord.degree) return -TUNES.succession * TUNES.borrowed * 2;
  return -TUNES.succession * surprise(before.degree, chord.degree);
}
