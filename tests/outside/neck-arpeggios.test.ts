import { describe, expect, test } from 'vitest';
import { drawLine } from '../../src/cards/trace/stepLine.ts';
import { CONTOURS } from '../../src/decks/deck.ts';
import { fingering, type Fingered, type LineNote } from '../../src/neck/fingering.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import type { Key } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { seeded } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { scaleNotes } from '../../src/theory/scale.ts';

/*
 * Arpeggio phrases without places, in 33 keys, from low to high on the neck. What no player would do (common practice): an
 * open string in the middle of a position at the fourth fret and up, or a jump of four frets and more over one; or a leap
 * of seven frets and more from note to note.
 *
 * The weights of the hand were chosen with phrases of seeds 7, 8 and 31 to 33 in view; those of 21 and 22 were only counted.
 * Before an open string cost more up the neck: 55 of 300 such phrases had one out of place, 37 a leap.
 */
const MAJOR = 'C G D A E B F# C# F Bb Eb Ab Db Gb Cb'.split(' ');
const MINOR = 'A E B F# C# G# D# A# D G C F Bb Eb Ab'.split(' ');
const KEYS: readonly Key[] = [
  ...MAJOR.map((tonic): Key => ({ tonic, scale: 'major' })),
  ...MINOR.map((tonic): Key => ({ tonic, scale: 'minor' })),
  { tonic: 'D', scale: 'dorian' },
  { tonic: 'E', scale: 'harmonic minor' },
  { tonic: 'A', scale: 'mixolydian' },
];

/** Two or more arpeggios of a key in triplets or eighths, inside two octaves somewhere on the neck. */
function phraseOf(number: number, seed: number): LineNote[] {
  const random = seeded(seed * 1000 + number);
  const key = KEYS[(number * 7 + 3 * Math.floor(number / 33)) % KEYS.length]!;
  const low = random.pick([42, 45, 48, 52, 55, 57, 59]);
  const high = low + random.pick([21, 24]);
  const notes = scaleNotes(key);
  const tonic = low + ((chroma(key.tonic) - (low % 12) + 12) % 12);
  const midiOf = (step: number) => {
    const above = chroma(notes[((step % 7) + 7) % 7]!) - chroma(key.tonic);
    return tonic + 12 * Math.floor(step / 7) + ((above + 12) % 12);
  };
  let [from, to] = [0, 0];
  while (midiOf(from - 1) >= low) from--;
  while (midiOf(to + 1) <= high) to++;
  const rhythm = random.pick(['triplets', 'triplets', 'triplets', 'eighths'] as const);
  let degree = random.pick([1, 2, 3, 4, 5, 6, 7]);
  const lines = Array.from({ length: rhythm === 'triplets' ? random.pick([1, 2]) : 1 }, () => {
    const line = drawLine(
      {
        degree,
        size: random.pick(['triad', 'triad', 'seventh'] as const),
        contour: random.pick(CONTOURS),
        groups: random.pick([3, 4]),
        rhythm,
        range: [from, to],
        embellished: random.pick([false, false, true]),
      },
      random,
    );
    degree = ((degree + random.pick([2, 3, 0])) % 7) + 1;
    return line.steps;
  });
  const part = rhythm === 'triplets' ? 3 : 2;
  return lines
    .flat()
    .map((step, i) => ({ midi: midiOf(step), at: beats(i, part), length: beats(1, part) }));
}

/** Whether an open string stands between two fretted notes where no player would take it. */
function hasOpenOutOfPlace(notes: readonly Fingered[]): boolean {
  return notes.some(({ fret }, i) => {
    if (fret > 0) return false;
    const before = notes.slice(0, i).findLast((note) => note.fret > 0);
    const after = notes.slice(i).find((note) => note.fret > 0);
    if (!before || !after) return false;
    const within = Math.min(before.fret, after.fret) >= 4 || Math.min(before.hand, after.hand) >= 4;
    return within || Math.abs(before.fret - after.fret) >= 4;
  });
}

function hasLeap(notes: readonly Fingered[]): boolean {
  return notes.slice(1).some(({ fret }, i) => {
    const before = notes[i]!.fret;
    return fret > 0 && before > 0 && Math.abs(fret - before) >= 7;
  });
}

describe('arpeggios without places', () => {
  test.each([
    ['seen when weights were chosen', [7, 8], 60],
    ['only counted', [21, 22], 100],
  ] as const)('%s: are played as a player would', (which, seeds, each) => {
    const phrases = seeds.flatMap((seed) =>
      Array.from({ length: each }, (_, i) => phraseOf(i, seed)),
    );
    const played = phrases.map((line) => {
      const found = fingering(GUITAR, line);
      return found.playable ? found.notes : [];
    });
    const open = played.filter(hasOpenOutOfPlace).length;
    const leaps = played.filter(hasLeap).length;
    console.info(
      `arpeggios ${which}: ${open} open strings out of place, ${leaps} leaps of ${phrases.length}`,
    );
    expect(played.every((notes) => notes.length > 0)).toBe(true);
    expect(open / phrases.length).toBeLessThan(0.02);
    expect(leaps / phrases.length).toBeLessThan(0.01);
  });

  // A high phrase in E minor, and a B flat in sixth position whose D could be open.
  test.each([
    ['E minor, high', [64, 67, 71, 76, 71, 67, 66, 69, 72, 74, 71, 67]],
    ['B flat, sixth position', [70, 74, 77, 70, 65, 62, 58, 62, 65]],
  ])('%s: without an open string', (_, midi) => {
    const line = midi.map((pitch, i) => ({ midi: pitch, at: beats(i, 3), length: beats(1, 3) }));
    const found = fingering(GUITAR, line);
    expect(found.playable && hasOpenOutOfPlace(found.notes)).toBe(false);
  });
});
