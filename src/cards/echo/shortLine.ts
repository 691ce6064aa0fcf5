import type { Contour, Rhythm } from '../../decks/deck.ts';
import { fretsLeft, openMidi, type Instrument } from '../../neck/instrument.ts';
import { chordOn, type Size } from '../../theory/chord.ts';
import { type Key } from '../../theory/key.ts';
import { spell } from '../../theory/spell.ts';
import { chroma, pitchClass } from '../../theory/note.ts';
import type { PhraseNote } from '../../theory/phrase.ts';
import type { Random } from '../../theory/random.ts';
import { beats } from '../../theory/rhythm.ts';
import { degreeOfStep } from '../../theory/scale.ts';

/** Notes of a group: those of one beat in triplets, of two in eighths. */
const GROUP: Readonly<Record<Rhythm, number>> = { triplets: 3, eighths: 4 };

/** How a group goes over the notes of its arpeggio, counted from its first one. */
const WALKS: Readonly<Record<Contour, readonly (readonly number[])[]>> = {
  up: [[0, 1, 2, 3]],
  down: [[0, -1, -2, -3]],
  turn: [
    [0, 1, 0, -1],
    [0, -1, 0, 1],
  ],
  skip: [
    [0, 2, 1, 3],
    [0, -2, -1, -3],
  ],
};

/** By how many degrees the second arpeggio's root lies higher: a fourth, a fifth, a second. */
const ROOT_MOVES = [3, 3, 4, 1];

interface LineOptions {
  readonly key: Key;
  readonly instrument: Instrument;
  readonly degree: number;
  readonly size: Size;
  readonly contour: Contour;
  readonly rhythm: Rhythm;
  /** How many arpeggios, 1 or 2. */
  readonly groups: number;
}

/** A line short enough to be played back after one hearing: from the given degree's arpeggio to the nearest of another. */
export function drawLine(options: LineOptions, random: Random): PhraseNote[] {
  const { rhythm, contour } = options;
  const walk = random.pick(WALKS[contour]).slice(0, GROUP[rhythm]);
  const midis: number[] = [];
  let degree = options.degree;
  for (let group = 0; group < options.groups; group++) {
    const found = groupsOf(degree, options, walk);
    const from = midis.at(-1);
    midis.push(...(from === undefined ? random.pick(found) : nearest(found, from)));
    degree = degreeOfStep(degree - 1 + random.pick(ROOT_MOVES));
  }
  const part = rhythm === 'triplets' ? 3 : 2;
  return midis.map((midi, i) => ({
    midi,
    name: spell(options.key, midi),
    at: beats(i, part),
    length: i === midis.length - 1 ? beats(1) : beats(1, part),
  }));
}

/** Every way to walk the arpeggio on the instrument, those that sound its root before others. */
function groupsOf(
  degree: number,
  { key, size, instrument }: LineOptions,
  walk: readonly number[],
): number[][] {
  const { notes, root } = chordOn(key, degree, size);
  const chromas = notes.map(chroma);
  const ladder = pitchesOf(instrument).filter((midi) => chromas.includes(pitchClass(midi)));
  const [lowest, highest] = [Math.min(...walk), Math.max(...walk)];
  const starts = ladder.map((_, i) => i).slice(-lowest, ladder.length - highest);
  const groups = starts.map((start) => walk.map((move) => ladder[start + move]!));
  const rooted = groups.filter((group) => group.some((midi) => pitchClass(midi) === chroma(root)));
  const found = rooted.length > 0 ? rooted : groups;
  // Too few notes of it on a small instrument: as many as there are, up.
  return found.length > 0 ? found : [ladder.slice(0, walk.length)];
}

/** What the instrument sounds, two octaves from a fifth above its lowest string, as far as it has them. MIDI. */
function pitchesOf(instrument: Instrument): number[] {
  const open = openMidi(instrument);
  const frets = fretsLeft(instrument);
  const lowest = Math.min(...open);
  const top = Math.max(...open) + Math.min(12, frets);
  const low = Math.max(lowest, Math.min(lowest + 7, top - 24));
  return Array.from({ length: Math.min(low + 24, top) - low + 1 }, (_, i) => low + i).filter(
    (midi) => open.some((string) => midi >= string && midi <= string + frets),
  );
}

/** The group that begins nearest to where the last one ended, on another note. */
function nearest(groups: readonly number[][], from: number): number[] {
  const distance = (group: readonly number[]) => Math.abs(group[0]! - from) || 5.5;
  return groups.reduce((best, group) => (distance(group) < distance(best) ? group : best));
}
