/**
 * A player who knows theory and has never seen the app's code: chords and scales are teoria's, the neck is arithmetic.
 * Whatever is read of a card are the attributes that the page promises.
 */
import { createRequire } from 'node:module';

interface Note {
  chroma(): number;
  toString(withoutOctave?: boolean): string;
  scale(name: string): { notes(): Note[] };
}

// teoria 2.5.0 has no types of its own.
const teoria = createRequire(import.meta.url)('teoria') as {
  note(name: string): Note;
  chord(symbol: string): { notes(): Note[] };
};

/** A string and a fret. */
export interface Place {
  readonly string: number;
  readonly fret: number;
}

/** A dot that says which note it is. */
export interface NamedDot extends Place {
  readonly note: string;
  readonly degree: number | null;
}

/** What a card says of itself before it is answered. */
export interface Question {
  readonly kind: string;
  readonly item: string;
  readonly seed: string;
  /** `Bb major` */
  readonly key: string;
  /** `Cm7`; null where the card names no chord. */
  readonly chord: string | null;
  readonly strings: readonly number[];
  readonly frets: readonly number[];
  /** From the highest string number down: `E2 A2 D3 G3 B3 E4`; empty where no neck is shown. */
  readonly tuning: readonly string[];
  readonly dots: readonly Place[];
  /** Everything that can be answered by one tap. */
  readonly answers: readonly string[];
}

/** Picks without surprise: the same numbers at every run (mulberry32). */
export function dice(seed: number): <T>(from: readonly T[]) => T {
  let state = seed;
  return (from) => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return from[((t ^ (t >>> 14)) >>> 0) % from.length]!;
  };
}

/** The notes of a key such as `Eb harmonic minor`, from its tonic up: `Eb`, `F`, … */
export function scaleOf(key: string): string[] {
  const [tonic, ...scale] = key.split(' ');
  const notes = teoria.note(tonic!.toLowerCase()).scale(scale.join('')).notes();
  return notes.map((note) => {
    const name = note.toString(true).replace('x', '##');
    return name[0]!.toUpperCase() + name.slice(1);
  });
}

const chroma = (note: string) => teoria.note(note.toLowerCase().replace('##', 'x')).chroma();

/** Pitch classes of a chord symbol, root first. */
export function chordOf(symbol: string): number[] {
  return teoria
    .chord(symbol)
    .notes()
    .map((note) => note.chroma());
}

const SEMITONES: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** The MIDI number of an open string such as `Bb3`: C4 is 60. */
function openMidi(name: string): number {
  const [, letter, signs, octave] = /^([A-G])([#b]*)(-?\d)$/.exec(name)!;
  const raised = [...signs!].reduce((sum, sign) => sum + (sign === '#' ? 1 : -1), 0);
  return 12 * (Number(octave) + 1) + SEMITONES[letter!]! + raised;
}

/** The MIDI number that a place sounds. */
export function midiOn(tuning: readonly string[], { string, fret }: Place): number {
  return openMidi(tuning[tuning.length - string]!) + fret;
}

/** The pitch class that a place sounds. */
const sounds = (tuning: readonly string[], place: Place) => midiOn(tuning, place) % 12;

/** The degree whose stacked thirds are exactly these dots. */
export function degreeSeen({ key, tuning, dots }: Question): string {
  const seen = dots.map((dot) => sounds(tuning, dot)).toSorted((a, b) => a - b);
  const scale = scaleOf(key).map(chroma);
  const fits = scale.flatMap((_, root) => {
    const stacked = seen.map((_seen, third) => scale[(root + 2 * third) % 7]!);
    return String(stacked.toSorted((a, b) => a - b)) === String(seen) ? [String(root + 1)] : [];
  });
  if (fits.length !== 1) throw new Error(`${seen} is the arpeggio of ${fits.length} degrees.`);
  return fits[0]!;
}

/** Every place that may be tapped. */
function allowed({ strings, frets }: Question): Place[] {
  const [low, high] = frets as [number, number];
  return strings.flatMap((string) =>
    Array.from({ length: high - low + 1 }, (_, i) => ({ string, fret: low + i })),
  );
}

/** Any complete set of right places, wherever it lies; or one that has a wrong note in it, or one note twice. */
export function placesFor(
  question: Question,
  right: boolean,
  pick: ReturnType<typeof dice>,
): Place[] {
  const chord = chordOf(question.chord!);
  const sounding = (tone: number) =>
    allowed(question).filter((place) => sounds(question.tuning, place) === tone);
  const set = chord.map((tone) => pick(sounding(tone)));
  if (right) return set;
  const kept = set.slice(0, -1);
  const others = allowed(question).filter(
    (place) =>
      sounds(question.tuning, place) !== chord.at(-1) &&
      !kept.some(({ string, fret }) => string === place.string && fret === place.fret),
  );
  return [...kept, pick(others)];
}

/** The path of degrees that `62@0 66@1/3 69@2/3` walks in a key; throws where a note is not of the key. */
export function pathOf(notes: string, key: string): string {
  const scale = scaleOf(key).map(chroma);
  return notes
    .split(' ')
    .map((note) => {
      const degree = scale.indexOf(Number(note.split('@')[0]) % 12) + 1;
      if (degree === 0) throw new Error(`${note} is no note of ${key}.`);
      return degree;
    })
    .join(' ');
}

/** The different pitches of a phrase. */
export function pitchesOf(notes: string): Set<number> {
  return new Set(notes.split(' ').map((note) => Number(note.split('@')[0])));
}

/** The beats of `62@0 66@1/3 69@2/3`, in thirds: 0, 1, 2. */
export function thirdsOf(notes: string): number[] {
  return notes.split(' ').map((note) => {
    const [, whole, over] = /@(\d+)(?:\/(\d+))?$/.exec(note)!;
    return (Number(whole) * 3) / Number(over ?? 1);
  });
}

/** What is wrong with a dot's name, or null: it must sound where it stands and be the degree that it says. */
export function misnamed(dot: NamedDot, { key, tuning }: Pick<Question, 'key' | 'tuning'>) {
  if (chroma(dot.note) !== sounds(tuning, dot))
    return `${dot.note} does not sound on string ${dot.string}, fret ${dot.fret}.`;
  const degree = scaleOf(key).indexOf(dot.note) + 1 || null;
  return dot.degree === degree ? null : `${dot.note} in ${key} is not ${dot.degree} but ${degree}.`;
}
