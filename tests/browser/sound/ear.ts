/**
 * An ear that has never seen the app's code: McLeod's method (pitchy) hears single notes, a spectrum hears chords, and
 * what they are in a key is worked out by @musodojo/music-theory-data alone.
 */
import {
  getNoteIntegerFromString,
  noteCollections,
  type NoteCollectionKey,
} from '@musodojo/music-theory-data';
import { PitchDetector } from 'pitchy';
import type { Sounding } from './tape.ts';

/** A note as it was heard. */
export interface HeardNote {
  /** Seconds from the beginning of what sounded. */
  readonly at: number;
  /** MIDI number, and how many cents the pitch is off it where A is 440 Hz. */
  readonly midi: number;
  readonly cents: number;
}

/** Seconds of treble that are compared; so many of them long it lasts, and with so many before them it is compared. */
const FRAME = 0.003;
const LASTING = 2;
const BEFORE = 6;
/** A string is plucked where there is so many times as much treble as there was, and so much of the most there is. */
const RISE = 2.2;
const PART = 0.004;
/** What begins within so many seconds begins together: the strings of one chord. */
const TOGETHER = 0.09;

/** When strings were plucked, in seconds: where treble, that fades first, is there at once. */
export function onsetsOf(sounding: Sounding): number[] {
  const treble = trebleOf(sounding);
  const lasting = treble.map((_, frame) => Math.min(...treble.slice(frame, frame + LASTING)));
  const most = lasting.reduce((a, b) => Math.max(a, b), 0);
  const found: number[] = [];
  lasting.forEach((now, frame) => {
    const before = Math.max(...treble.slice(Math.max(0, frame - BEFORE), frame), 0);
    if (now < PART * most || now < RISE * before) return;
    const at = frame * FRAME;
    if (found.length === 0 || at - found.at(-1)! > TOGETHER) found.push(at);
  });
  return found;
}

/** How much treble there is in each frame; in one of which something is lost, as much as before. */
function trebleOf({ samples, rate }: Sounding): number[] {
  const length = Math.round(FRAME * rate);
  const lost = lostIn(samples);
  const treble: number[] = [];
  for (let from = 0; from + length <= samples.length; from += length) {
    let sum = 0;
    for (let n = Math.max(from, 2); n < from + length; n++)
      sum += (samples[n]! - 2 * samples[n - 1]! + samples[n - 2]!) ** 2;
    const isLost = lost.some(([first, last]) => first < from + length && last >= from);
    treble.push(isLost ? (treble.at(-1) ?? 0) : sum);
  }
  return treble;
}

/** Samples that a browser hands on at a time. */
const BLOCK = 128;

/** Where a machine that was too busy lost a block: nothing at all, and a step at either side, a block before it too. */
function lostIn(samples: Float32Array): [number, number][] {
  const lost: [number, number][] = [];
  let nothing = 0;
  samples.forEach((sample, n) => {
    if (sample === 0) nothing += 1;
    else {
      if (nothing > BLOCK / 4) lost.push([n - nothing - BLOCK - 2, n + 2]);
      nothing = 0;
    }
  });
  return lost;
}

/** Samples that a pitch is heard in: 46 ms of 44,100 Hz, four periods of the lowest string. */
const WINDOW = 2048;
/** Seconds after the pluck until its noise is over. */
const SETTLED = 0.03;

/** The notes of a line, one after another. */
export function notesOf(sounding: Sounding): HeardNote[] {
  const { samples, rate } = sounding;
  const onsets = onsetsOf(sounding);
  const detector = PitchDetector.forFloat32Array(WINDOW);
  return onsets.map((at, i) => {
    const until = Math.min(onsets[i + 1] ?? Infinity, at + 0.25);
    const hertz: number[] = [];
    for (let from = (at + SETTLED) * rate; from + WINDOW < until * rate; from += WINDOW / 4) {
      const part = samples.slice(Math.round(from), Math.round(from) + WINDOW);
      if (part.length === WINDOW) hertz.push(detector.findPitch(part, rate)[0]);
    }
    const heard = 69 + 12 * Math.log2(median(hertz) / 440);
    return { at, midi: Math.round(heard), cents: 100 * (heard - Math.round(heard)) };
  });
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN;
}

/** Quarter notes a minute of a line of even notes, so many to a beat: their median distance. */
export function tempoOf(notes: readonly HeardNote[], toABeat: number): number {
  const gaps = notes.slice(1).map(({ at }, i) => at - notes[i]!.at);
  return 60 / (toABeat * median(gaps));
}

/** Pitch classes of a collection of the library's on a note. */
function above(root: number, name: NoteCollectionKey): number[] {
  const tones: readonly number[] = noteCollections[name].integers;
  return tones.map((tone) => (root + tone) % 12);
}

/** A triad: its root as a pitch class, and which it is. */
export interface HeardTriad {
  readonly root: number;
  readonly quality: (typeof QUALITIES)[number];
}

const QUALITIES = ['major', 'minor', 'diminishedTriad', 'augmentedTriad'] as const;
/** The notes that chords are heard by, MIDI: E2 to E5. */
const LOWEST = 40;
const HIGHEST = 76;

/** The triads of a row of chords: of each the one whose three pitch classes hold most of what is heard. */
export function triadsOf(sounding: Sounding): HeardTriad[] {
  const { samples, rate } = sounding;
  const onsets = onsetsOf(sounding);
  return onsets.map((at, i) => {
    const until = Math.min(onsets[i + 1] ?? Infinity, at + 0.6);
    const part = samples.slice(Math.round((at + 0.08) * rate), Math.round(until * rate));
    const classes = pitchClassesIn({ samples: part, rate });
    const all = QUALITIES.flatMap((quality) =>
      Array.from({ length: 12 }, (_, root) => {
        const tones = above(root, quality);
        return { root, quality, level: tones.reduce((sum, tone) => sum + classes[tone]!, 0) };
      }),
    );
    const { root, quality } = all.reduce((a, b) => (b.level > a.level ? b : a));
    return { root, quality };
  });
}

/** Semitones from a string up to its second, third, fourth and fifth partials. */
const PARTIALS = [12, 19, 24, 28];

/**
 * How loud each pitch class is between E2 and E5. What is a partial of a note below counts only as far as it is louder than
 * that: the third partial of an A is no E of a chord.
 */
function pitchClassesIn({ samples, rate }: Pick<Sounding, 'samples' | 'rate'>): number[] {
  const classes = Array<number>(12).fill(0);
  const levels: number[] = [];
  for (let midi = LOWEST; midi <= HIGHEST; midi++) {
    levels[midi] = levelAt(samples, rate, 440 * 2 ** ((midi - 69) / 12));
    const below = PARTIALS.map((semitones) => levels[midi - semitones] ?? 0);
    classes[midi % 12]! += Math.max(0, levels[midi]! - Math.max(...below));
  }
  return classes;
}

/** The amplitude at a frequency, through a Hann window. */
function levelAt(samples: Float32Array, rate: number, hertz: number): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < samples.length; n++) {
    const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / samples.length);
    const turn = (2 * Math.PI * hertz * n) / rate;
    re += weight * samples[n]! * Math.cos(turn);
    im -= weight * samples[n]! * Math.sin(turn);
  }
  return Math.hypot(re, im) / samples.length;
}

/** What the library calls scales. */
const SCALES = {
  major: ['ionian'],
  // With the leading note raised on the way home.
  minor: ['aeolian', 'harmonicMinor'],
  'harmonic minor': ['harmonicMinor'],
  'melodic minor': ['melodicMinor'],
  dorian: ['dorian'],
  phrygian: ['phrygian'],
  lydian: ['lydian'],
  mixolydian: ['mixolydian'],
} as const satisfies Readonly<Record<string, readonly NoteCollectionKey[]>>;

export type ScaleName = keyof typeof SCALES;

/** A key as it is heard: its tonic as a pitch class, and its scale. */
export interface HeardKey {
  readonly tonic: number;
  readonly scale: ScaleName;
}

/** Pitch classes of a key, each with its degree. */
function degreesOf({ tonic, scale }: HeardKey): Map<number, number> {
  return new Map(
    SCALES[scale].flatMap((name) =>
      above(tonic, name).map((tone, step) => [tone, step + 1] as const),
    ),
  );
}

/** The keys that a cadence tells: on the tonic at both ends, and every note of its chords in the scale. */
export function keysOf(triads: readonly HeardTriad[]): HeardKey[] {
  const tonic = triads.at(-1)!.root;
  if (triads[0]!.root !== tonic) return [];
  const tones = triads.flatMap(({ root, quality }) => above(root, quality));
  return (Object.keys(SCALES) as ScaleName[])
    .map((scale) => ({ tonic, scale }))
    .filter((key) => tones.every((tone) => degreesOf(key).has(tone)));
}

/** The path of degrees that notes take in a key: `5 7 2 5`, with `?` for what is not of the key. */
export function pathIn(key: HeardKey, notes: readonly Pick<HeardNote, 'midi'>[]): string {
  const degrees = degreesOf(key);
  return notes.map(({ midi }) => degrees.get(midi % 12) ?? '?').join(' ');
}

/** Pitch classes of the thirds stacked on a degree. */
export function stackOf(key: HeardKey, degree: number, count: number): number[] {
  const scale = above(key.tonic, SCALES[key.scale][0]);
  return Array.from({ length: count }, (_, third) => scale[(degree - 1 + 2 * third) % 7]!);
}

/** A key as a card names it: `Bb major`. */
export function keyNamed(name: string): HeardKey {
  const [tonic, ...scale] = name.split(' ');
  return {
    tonic: getNoteIntegerFromString(tonic!.replace('b', '♭').replace('#', '♯'))!,
    scale: scale.join(' ') as ScaleName,
  };
}
