import { fretsLeft, openMidi, type Instrument } from '../../neck/instrument.ts';
import { isSounded } from '../../neck/sounded.ts';
import type { Key } from '../../theory/key.ts';
import { chroma, pitchClass, semitonesAbove } from '../../theory/note.ts';
import type { Phrase } from '../../theory/phrase.ts';
import { seeded } from '../../theory/random.ts';
import { beats } from '../../theory/rhythm.ts';
import { degreeOfStep, scaleNotes } from '../../theory/scale.ts';
import type { Card } from '../kind.ts';
import type { TraceItem } from './items.ts';
import { difficulty, drawLine, isExtended, pathOf, type StepLine } from './stepLine.ts';
import { wrongPaths } from './wrong.ts';

/** One of the paths to choose from: its degrees, and how high each note is in scale steps. */
interface PathChoice {
  readonly path: string;
  readonly heights: readonly number[];
}

/** A phrase to be heard, and four paths of degrees. */
export interface TraceCard extends Card<TraceItem> {
  readonly line: StepLine;
  readonly phrase: Phrase;
  readonly path: string;
  readonly choices: readonly PathChoice[];
}

/** How many lines are drawn for one to be kept. */
const DRAWN = 3;

/**
 * Draws a phrase of three to twelve notes. An even seed keeps the easiest of three lines and offers far wrong paths; an
 * odd one, for an item well known, keeps the hardest, which may have an embellishing tone, and offers near ones.
 */
export function ask(item: TraceItem, seed: number): TraceCard {
  const { key, size, contour, degree, tempo, rhythm, instrument } = item;
  const random = seeded(seed);
  const range = stepsInRange(key, instrument, isExtended(size));
  const hard = seed % 2 === 1;
  const lines = Array.from({ length: DRAWN }, () =>
    drawLine(
      {
        degree,
        size,
        contour,
        range,
        // Of one stack of thirds there is no other on the same note to be told from.
        groups: random.pick(hard ? [2, 3, 3, 4] : isExtended(size) ? [2] : [1, 2, 2, 3]),
        rhythm,
        embellished: hard && random.below(2) === 0,
      },
      random,
    ),
  ).toSorted((a, b) => difficulty(a, tempo) - difficulty(b, tempo));
  const line = lines.at(hard ? -1 : 0)!;
  const tonic = tonicMidi(key, instrument);
  const has = (step: number) => isSounded(instrument, midiOfStep(step, key, tonic));
  const wrong = wrongPaths(line, { size, contour, rhythm, range, has, near: hard }, random);
  const choices = random
    .shuffle([line.steps, ...wrong])
    .map((steps) => ({ path: pathOf(steps), heights: steps }));
  const phrase = phraseOfSteps(line.steps, { key, instrument, tempo, rhythm });
  return { item, seed, key, instrument, line, phrase, path: pathOf(line.steps), choices };
}

/** Scale steps as even notes, the last one held for a beat. */
export function phraseOfSteps(
  steps: readonly number[],
  { key, instrument, tempo, rhythm }: Pick<TraceItem, 'key' | 'instrument' | 'tempo' | 'rhythm'>,
): Phrase {
  const tonic = tonicMidi(key, instrument);
  const part = rhythm === 'triplets' ? 3 : 2;
  const notes = steps.map((step, index) => ({
    midi: midiOfStep(step, key, tonic),
    name: scaleNotes(key)[degreeOfStep(step) - 1]!,
    at: beats(index, part),
    length: index === steps.length - 1 ? beats(1) : beats(1, part),
  }));
  return { notes, tempo };
}

/**
 * How far phrases go, MIDI: two octaves from a fifth above the lowest open string, or what a short neck has of them;
 * `wide`, for stacks of an octave and more, all that there is.
 */
function rangeOf(instrument: Instrument, wide = false): [number, number] {
  const open = openMidi(instrument);
  const lowest = Math.min(...open);
  const top = Math.max(...open) + Math.min(12, fretsLeft(instrument));
  if (wide) return [lowest, top];
  const low = Math.max(lowest, Math.min(lowest + 7, top - 24));
  return [low, Math.min(low + 24, top)];
}

/** The same range in scale steps. */
function stepsInRange(key: Key, instrument: Instrument, wide: boolean): [number, number] {
  const [low, high] = rangeOf(instrument, wide);
  const tonic = tonicMidi(key, instrument);
  let [from, to] = [0, 0];
  // On a short neck the tonic may lie below all that there is.
  while (midiOfStep(from, key, tonic) < low) from++;
  while (midiOfStep(from - 1, key, tonic) >= low) from--;
  while (midiOfStep(to + 1, key, tonic) <= high) to++;
  return [from, to];
}

/** The tonic nearest below the middle of the range. */
function tonicMidi(key: Key, instrument: Instrument): number {
  const [low, high] = rangeOf(instrument);
  const middle = Math.floor((low + high) / 2);
  return middle - pitchClass(middle - chroma(key.tonic));
}

function midiOfStep(step: number, key: Key, tonic: number): number {
  const note = scaleNotes(key)[degreeOfStep(step) - 1]!;
  return tonic + 12 * Math.floor(step / 7) + semitonesAbove(key.tonic, note);
}
