import type { Embellishment } from '../../src/theory/analysis/embellishmentNames.ts';
import { chordOn, type Chord, type Size } from '../../src/theory/chord.ts';
import { type Key } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { chroma, semitonesAbove } from '../../src/theory/note.ts';
import type { PhraseNote } from '../../src/theory/phrase.ts';
import { seeded, type Random } from '../../src/theory/random.ts';
import { add, beats, type Beats, times } from '../../src/theory/rhythm.ts';
import { degreeOfStep, scaleNotes, type ScaleKind } from '../../src/theory/scale.ts';
import type { Told } from './analysis-phrases.ts';

const TONICS = ['C', 'G', 'D', 'A', 'E', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'F#', 'B'];
const SCALES: readonly ScaleKind[] = [
  ...(['major', 'major', 'major', 'major', 'minor', 'minor', 'minor'] as const),
  ...(['dorian', 'mixolydian', 'harmonic minor', 'melodic minor', 'lydian'] as const),
];

/** How long the groups of a phrase are, in notes of one length. */
interface Layout {
  readonly unit: Beats;
  readonly lengths: readonly number[];
}

const THIRD = beats(1, 3);
const LAYOUTS: readonly Layout[] = [
  ...Array.from({ length: 5 }, () => ({ unit: THIRD, lengths: [6] })),
  ...Array.from({ length: 2 }, () => ({ unit: THIRD, lengths: [3] })),
  { unit: THIRD, lengths: [12] },
  { unit: THIRD, lengths: [12, 6, 6] },
  { unit: beats(1, 2), lengths: [4] },
  { unit: beats(1, 4), lengths: [8] },
  { unit: beats(1, 2), lengths: [3, 3, 2] },
];

/** A note as a step of the scale above the tonic's octave, raised where harmonic minor raises it. */
interface Note {
  readonly step: number;
  readonly kind: Embellishment | null;
}

/** A phrase drawn from a seed, with its truth: arpeggios in many keys, layouts, sizes and inversions, embellished. */
export function drawPhrase(seed: number): Told {
  const random = seeded(seed);
  const key: Key = { tonic: random.pick(TONICS), scale: random.pick(SCALES) };
  const layout = random.pick(LAYOUTS);
  const chords = drawChords(key, layout, random);
  const drawn: Note[][] = [];
  chords.forEach((chord, i) => {
    const length = layout.lengths[i % layout.lengths.length]!;
    const closes = i === chords.length - 1 && chord.degree === 1 && chord.size === 'triad';
    drawn.push(
      closes ? closing(chord, drawn.at(-1)!) : drawGroup(chord, length, drawn.at(-1), random),
    );
  });
  return told(`seed ${seed}`, key, layout, chords, drawn);
}

function drawChords(key: Key, { lengths }: Layout, random: Random): Chord[] {
  const count = 4 + random.below(5);
  const sizes = random.pick<readonly Size[]>([
    ['triad'],
    ['triad'],
    ['seventh'],
    ['triad', 'seventh'],
    ['triad', 'seventh', 'seventh', 'ninth'],
  ]);
  const path = random.pick(['fourths', 'ladder', 'free', 'free']);
  let degree = random.below(3) > 0 ? 1 : 1 + random.below(7);
  return Array.from({ length: count }, (_, i) => {
    if (i > 0) degree = next(degree, path, random);
    if (i === count - 1 && degree !== 1 && random.below(2) === 0) degree = 1;
    const length = lengths[i % lengths.length]!;
    const wanted =
      i === count - 1 && degree === 1 && random.below(3) > 0 ? 'triad' : random.pick(sizes);
    const size = length < 4 ? 'triad' : length < 6 && wanted === 'ninth' ? 'seventh' : wanted;
    const borrows = key.scale === 'minor' && size !== 'ninth' && (degree === 5 || degree === 7);
    const from: Key = borrows && random.below(4) > 0 ? { ...key, scale: 'harmonic minor' } : key;
    return chordOn(from, degree, size);
  }).filter((chord, i, all) => i === 0 || chord.degree !== all[i - 1]!.degree);
}

function next(degree: number, path: string, random: Random): number {
  const by = path === 'fourths' ? 3 : path === 'ladder' ? 1 : 1 + random.below(6);
  return ((degree - 1 + by) % 7) + 1;
}

const inChord = (chord: Chord, step: number) =>
  chord.members.some((member) => (chord.degree + member - 2 - step) % 7 === 0);

/** The steps of a chord within two octaves and a half, lowest first. */
const rungs = (chord: Chord) =>
  Array.from({ length: 19 }, (_, i) => i - 4).filter((step) => inChord(chord, step));

function closing(chord: Chord, before: readonly Note[]): Note[] {
  const roots = rungs(chord).filter((step) => (step - chord.degree + 1) % 7 === 0);
  const near = before.at(-1)!.step;
  const step = roots.reduce((a, b) => (Math.abs(b - near) < Math.abs(a - near) ? b : a));
  return [{ step, kind: null }];
}

function drawGroup(
  chord: Chord,
  length: number,
  before: readonly Note[] | undefined,
  random: Random,
): Note[] {
  for (;;) {
    const extra = length >= 4 && random.below(3) === 0;
    const notes = extra
      ? embellished(chord, length, before, random)
      : plain(walk(chord, length, before, random));
    if (notes && notes.length === length && sounds(chord, notes, before)) return notes;
  }
}

const plain = (steps: readonly number[]) => steps.map((step) => ({ step, kind: null }));

/** Up, down or to and fro on a chord's notes, sometimes past one of them. */
function walk(
  chord: Chord,
  length: number,
  before: readonly Note[] | undefined,
  random: Random,
): number[] {
  const ladder = rungs(chord);
  const near = before?.at(-1)?.step ?? random.below(6);
  const reachable = ladder.flatMap((step, i) => (Math.abs(step - near) <= 5 ? [i] : []));
  const rooted = reachable.filter((i) => (ladder[i]! - chord.degree + 1) % 7 === 0);
  let at = random.pick(rooted.length > 0 && random.below(2) === 0 ? rooted : reachable);
  let way = random.below(2) === 0 ? 1 : -1;
  const steps = [ladder[at]!];
  while (steps.length < length) {
    if (random.below(6) === 0) way = -way;
    const by = random.below(7) === 0 ? 2 : 1;
    if (ladder[at + way * by] === undefined) way = -way;
    at += way * by;
    steps.push(ladder[at]!);
  }
  return steps;
}

/**
 * Whether a group sounds what tells its chord: all of a triad; otherwise root, third and what lies above the fifth, not
 * only between two steps, where a seventh or ninth is nothing but a neighbour or passing tone.
 */
function sounds(
  chord: Chord,
  notes: readonly Note[],
  before: readonly Note[] | undefined,
): boolean {
  const step = (a?: Note, b?: Note) =>
    a !== undefined && b !== undefined && Math.abs(a.step - b.step) === 1;
  const heard = (member: number) =>
    notes.some(
      (note, i) =>
        !note.kind &&
        (chord.degree + member - 2 - note.step) % 7 === 0 &&
        (member < 7 || !step(notes[i - 1] ?? before?.at(-1), note) || !step(note, notes[i + 1])),
    );
  if (notes.length < 3) return heard(1) && heard(3);
  const needed = chord.members.filter((member) => chord.size === 'triad' || member !== 5);
  return needed.every(heard);
}

const FORMS = [
  'passing',
  'passing',
  'neighbour',
  'neighbour',
  'double neighbour',
  'appoggiatura',
  'escape',
  'suspension',
] as const;

/** An arpeggio with one figure of embellishment put in; null where the figure does not fit. */
function embellished(
  chord: Chord,
  length: number,
  before: readonly Note[] | undefined,
  random: Random,
): Note[] | null {
  const form = random.pick(FORMS);
  const added = {
    passing: 1,
    neighbour: 2,
    'double neighbour': 3,
    appoggiatura: 1,
    escape: 1,
    suspension: 1,
  }[form];
  const steps = walk(chord, length - added, before, random);
  const at = random.below(steps.length);
  const [here, there] = [steps[at]!, steps[at + 1]];
  const side = random.below(2) === 0 ? 1 : -1;
  const outside = (step: number) => !inChord(chord, step);
  const put = (index: number, ...notes: readonly [number, Embellishment | null][]) => {
    if (notes.some(([step, kind]) => kind && !outside(step))) return null;
    const list: Note[] = plain(steps);
    list.splice(index, 0, ...notes.map(([step, kind]) => ({ step, kind })));
    return list;
  };
  if (form === 'suspension') {
    const last = before?.at(-1)?.step;
    return last !== undefined && last === steps[0]! + 1 ? put(0, [last, form]) : null;
  }
  if (form === 'neighbour') return put(at + 1, [here + side, form], [here, null]);
  if (form === 'double neighbour')
    return put(at + 1, [here + side, form], [here - side, form], [here, null]);
  if (there === undefined) return null;
  if (form === 'passing')
    return Math.abs(there - here) === 2 ? put(at + 1, [(here + there) / 2, form]) : null;
  if (form === 'escape')
    return Math.abs(there - here - side) > 1 && (there - here) * side < 0
      ? put(at + 1, [here + side, form])
      : null;
  return Math.abs(there + 1 - here) > 1 && (at + 1) % 3 === 0
    ? put(at + 1, [there + 1, 'appoggiatura'])
    : null;
}

function told(
  name: string,
  key: Key,
  { unit, lengths }: Layout,
  chords: readonly Chord[],
  drawn: readonly (readonly Note[])[],
): Told {
  const tonic = 48 + chroma(key.tonic);
  const notes: PhraseNote[] = [];
  let at = beats(0);
  const groups = drawn.map((group, i) => {
    const from = notes.length;
    const scale = scaleNotes(chords[i]!.key);
    for (const { step } of group) {
      const above = semitonesAbove(key.tonic, scale[degreeOfStep(step) - 1]!);
      const midi = tonic + 12 * Math.floor(step / 7) + above;
      const length = group.length === 1 ? times(unit, lengths[i % lengths.length]!) : unit;
      notes.push({ midi, name: spell(key, midi), at, length });
      at = add(at, length);
    }
    return { from, to: notes.length, chord: chords[i]! };
  });
  return {
    name,
    key,
    phrase: { notes, tempo: 80 },
    bar: 4,
    pickup: beats(0),
    groups,
    embellishments: drawn.flatMap((group) => group.map(({ kind }) => kind)),
  };
}
