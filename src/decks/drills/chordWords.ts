/** Drills of chords in the words of a document: from the drill, and from the letters of a link. */
import { SHAPE_CHOICES, type ShapeChoice } from '../../neck/shapeChoice.ts';
import { SIZES, type Size } from '../../theory/chord.ts';
import { DEGREES } from '../../theory/scale.ts';
import { CONTOURS, type EarDrill, type NeckDrill } from '../deck.ts';

interface Chords {
  readonly degrees: readonly number[];
  readonly sizes: readonly Size[];
}

function writeChords({ degrees, sizes }: Chords) {
  const all = degrees.join() === DEGREES.join();
  return { ...(all ? {} : { degrees: [...degrees] }), sizes: [...sizes] };
}

/** `01.what.range.2`: each size by its place in the list of sizes, two fields of the form's own, degrees unless all. */
function unfoldChords(letters: string) {
  const [sizes = '', what = '', range = '', degrees] = letters.split('.');
  const chords = {
    sizes: Array.from(sizes, (place) => SIZES[Number(place)]),
    ...(degrees === undefined ? {} : { degrees: [...degrees].map(Number) }),
  };
  return { chords, what, range };
}

/** Inverts `neckEntries`. */
export function writeNeck(drill: Omit<NeckDrill, 'kind'>) {
  const [lowest, highest] = drill.frets;
  return {
    ...writeChords(drill),
    strings: drill.strings.map((set) => set.join('-')),
    frets: [lowest, highest] as [number, number],
    ...(drill.shapes && { shapes: drill.shapes }),
  };
}

/** In a link string sets without dashes, frets in base 36 and a letter for chosen shapes: `01.54,43.2a`, `01.54,43.2ar`. */
export function unfoldNeck(letters: string) {
  const { chords, what, range } = unfoldChords(letters);
  const [frets, letter] = [range.slice(0, 2), range.slice(2)];
  const shapes: ShapeChoice | undefined = SHAPE_CHOICES.find((choice) => choice[0] === letter);
  return {
    ...chords,
    strings: what.split(',').map((set) => [...set].join('-')),
    frets: Array.from(frets, (fret) => Number.parseInt(fret, 36)),
    ...(letter && { shapes }),
  };
}

/** A string set, `5-4`, from the highest string number down; null for any other text. */
export function readStringSet(written: string): readonly number[] | null {
  if (!/^[1-9](?:[-–][1-9]){0,8}$/.test(written)) return null;
  const strings = written.split(/[-–]/).map(Number);
  return strings.every((string, i) => i === 0 || string < (strings[i - 1] ?? 0)) ? strings : null;
}

/** Inverts `earEntries`. */
export function writeEar(drill: Omit<EarDrill, 'kind'>) {
  const { rhythm } = drill;
  return {
    ...writeChords(drill),
    contours: [...drill.contours],
    tempo: drill.tempo,
    ...(rhythm === 'eighths' && { rhythm }),
  };
}

/** In a link a letter for each contour and an `e` behind the tempo for eighths: `0.udts.72e`. */
export function unfoldEar(letters: string) {
  const { chords, what, range } = unfoldChords(letters);
  return {
    ...chords,
    contours: Array.from(what, (letter) => CONTOURS.find((contour) => contour[0] === letter)),
    tempo: Number(range.replace(/e$/, '')),
    ...(range.endsWith('e') && { rhythm: 'eighths' as const }),
  };
}
