/** Finds the weights of `src/listening/evidence.ts` by logistic regression over the guitars that are tuned on. */
import { Evidence, FEATURES, featuresOf } from '../../../src/listening/evidence.ts';
import { OnsetFinder, type Onset } from '../../../src/listening/onset.ts';
import { LOWEST_HEARD } from '../../../src/listening/salience.ts';
import { Track } from '../../../src/listening/track.ts';
import { RATE, type Guitar } from './bank.ts';
import { makePiece, type Conditions, type Piece } from './phrases.ts';

/** The features of an onset as the pluck of one note, or of one of two, whether it was that, and how much it counts. */
interface Sample {
  readonly features: Float64Array;
  readonly pluck: boolean;
  readonly weight: number;
}

interface Example extends Sample {
  readonly kind: string;
}

const START = Math.round(0.55 * RATE);
/** Seconds by which an onset may be off its pluck. */
const NEAR = 0.02;

/** Every onset of a piece with the note that was plucked there, or null. */
function onsetsOf(piece: Piece) {
  const finder = new OnsetFinder(RATE);
  const evidence = new Evidence(RATE);
  const silence = piece.samples.subarray(Math.round(0.05 * RATE), START);
  finder.expectNoise(silence);
  evidence.expectNoise(silence);
  const track = new Track(piece.samples.length);
  track.add(piece.samples.subarray(START));
  const onsets: Onset[] = finder.hear(piece.samples.subarray(START));
  const looked = onsets.map((onset, i) => {
    const reference = 440 * 2 ** (piece.offset / 1200);
    const { at, partials, heard } = evidence.consider(track, onset, onsets.slice(i + 1, i + 6));
    return { at, features: featuresOf(partials, heard, reference) };
  });
  const taken = new Map<number, number>();
  piece.plucks.forEach(({ time }, i) => {
    const off = looked.map(({ at }) => Math.abs((at + START) / RATE - time));
    const nearest = off.indexOf(Math.min(...off));
    if (off[nearest]! < NEAR && !taken.has(nearest)) taken.set(nearest, i);
  });
  return looked.map((onset, i) => ({ ...onset, pluck: piece.plucks[taken.get(i) ?? -1] ?? null }));
}

type Looked = ReturnType<typeof onsetsOf>;

function examplesOf(piece: Piece, onsets: Looked): Example[] {
  const out: Example[] = [];
  let [answered, before] = [-1, 0];
  for (const { at, features, pluck } of onsets) {
    const time = (at + START) / RATE;
    const near = piece.plucks.some((other) => Math.abs(other.time - time) < 0.06);
    const put = (midi: number, is: boolean, weight: number, kind: string) => {
      if (isLearnt(midi)) out.push({ features: asNote(features, midi), pluck: is, weight, kind });
    };
    const coming = [-1, 0, 1, 2]
      .map((by) => piece.expected[answered + by])
      .filter((midi) => midi !== undefined);
    const best = strongest(features);
    if (pluck) {
      put(pluck.midi, true, 1, 'pluck');
      for (const by of [-1, 1]) put(pluck.midi + by, false, 0.3, 'semitone');
      for (const by of [-12, 12]) put(pluck.midi + by, false, 0.3, 'octave');
      for (const midi of new Set([...coming, before]))
        if (midi !== pluck.midi) put(midi, false, 0.3, 'other');
      if (best !== pluck.midi) put(best, false, 1, 'best');
      if (pluck.answers >= 0) answered = pluck.answers;
      before = pluck.midi;
    } else if (!near) {
      for (const midi of new Set([...coming, before])) put(midi, false, 0.3, 'none');
      put(best, false, 0.6, 'none, best');
    }
  }
  return out;
}

/** Each pluck as a note or as its octave above; one that was a mistake by an octave counts most, for there it matters. */
function pairsOf(onsets: Looked): Sample[] {
  return onsets.flatMap(({ features, pluck }) => {
    if (!pluck) return [];
    const weight = pluck.mistake === 'octave' ? 3 : 1;
    return [pluck.midi - 12, pluck.midi]
      .filter((lower) => isLearnt(lower) && isLearnt(lower + 12))
      .map((lower) => ({
        features: Float64Array.from([...asNote(features, lower), ...asNote(features, lower + 12)]),
        pluck: lower < pluck.midi,
        weight,
      }));
  });
}

const isLearnt = (midi: number) => midi > LOWEST_HEARD + 1 && midi < 89;

function asNote(features: Float64Array, midi: number): Float64Array {
  const from = (midi - LOWEST_HEARD) * FEATURES;
  return features.slice(from, from + FEATURES);
}

function strongest(features: Float64Array): number {
  let best = 0;
  for (let i = 0; i < features.length / FEATURES; i++) {
    if (features[i * FEATURES + 2]! > features[best * FEATURES + 2]!) best = i;
  }
  return best + LOWEST_HEARD;
}

/** Newton's method with a little ridge. */
function regression(examples: readonly Sample[]): Float64Array {
  const size = examples[0]!.features.length;
  const w = new Float64Array(size);
  for (let step = 0; step < 40; step++) {
    const g = new Float64Array(size);
    const h = Array.from({ length: size }, () => new Float64Array(size));
    for (const { features, pluck, weight } of examples) {
      const p = 1 / (1 + Math.exp(-scoreOf(features, w)));
      for (let i = 0; i < size; i++) {
        g[i]! += weight * (p - Number(pluck)) * features[i]!;
        for (let j = 0; j < size; j++)
          h[i]![j]! += weight * p * (1 - p) * features[i]! * features[j]!;
      }
    }
    for (let i = 0; i < size; i++) {
      g[i]! += 0.3 * w[i]!;
      h[i]![i]! += 0.3;
    }
    solved(h, g).forEach((value, i) => (w[i]! -= value));
  }
  return w;
}

const scoreOf = (features: Float64Array, w: Float64Array) =>
  features.reduce((sum, value, i) => sum + value * w[i]!, 0);

/** Gauss–Jordan; the matrix is positive definite. */
function solved(a: Float64Array[], b: Float64Array): Float64Array {
  const rows = a.map((row, i) => [...row, b[i]!]);
  rows.forEach((row, i) => {
    const pivot = row[i]!;
    row.forEach((value, j) => (row[j] = value / pivot));
    rows.forEach((other, k) => {
      if (k === i) return;
      const by = other[i]!;
      other.forEach((value, j) => (other[j] = value - by * row[j]!));
    });
  });
  return Float64Array.from(rows, (row) => row.at(-1)!);
}

/** What is made of the onsets of so many pieces a guitar, by conditions. */
function learnt<T>(
  guitars: readonly Guitar[],
  conditions: readonly Conditions[],
  pieces: number,
  of: (piece: Piece, onsets: Looked) => T[],
): T[][] {
  let seed = 20_000;
  return conditions.map((condition) =>
    guitars.flatMap((guitar) =>
      Array.from({ length: pieces }, () => {
        const piece = makePiece(guitar, { ...condition, varied: true }, seed++);
        return of(piece, onsetsOf(piece));
      }).flat(),
    ),
  );
}

const printed = (w: Float64Array) => `[${[...w].map((value) => value.toFixed(3)).join(', ')}]`;

/** Prints the weights of a note and of its octave above. */
export function fitOctaves(
  guitars: readonly Guitar[],
  conditions: readonly Conditions[],
  pieces: number,
): void {
  const pairs = learnt(guitars, conditions, pieces, (_, onsets) => pairsOf(onsets)).flat();
  const w = regression(pairs);
  console.log(`${pairs.length} pairs of octaves ${printed(w.slice(0, FEATURES))}`);
  console.log(printed(w.slice(FEATURES)));
}

/** Prints the weights, and how well they tell plucks from the rest. */
export function fit(
  guitars: readonly Guitar[],
  conditions: readonly Conditions[],
  pieces: number,
): void {
  const groups = learnt(guitars, conditions, pieces, examplesOf);
  const w = regression(groups.flat());
  console.log(printed(w));
  groups.forEach((examples, i) => {
    const kinds = [...new Set(examples.map(({ kind }) => kind))].map((kind) => {
      const own = examples
        .filter((example) => example.kind === kind)
        .map(({ features }) => scoreOf(features, w))
        .toSorted((a, b) => a - b);
      const q = (p: number) => own[Math.floor(p * (own.length - 1))]!.toFixed(1);
      return kind === 'pluck'
        ? `${own.length} plucks ${q(0.01)} ${q(0.03)} ${q(0.1)} ${q(0.5)}`
        : `${kind} ${q(0.9)} ${q(0.99)}`;
    });
    console.log(JSON.stringify(conditions[i]), kinds.join('; '));
  });
}
