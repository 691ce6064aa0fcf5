import { describe, expect, test } from 'vitest';
import { heldSounding, keySounding } from '../../src/sound/key.ts';
import type { Sounding } from '../../src/sound/sounding.ts';
import { parseKey } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { SCALE_KINDS } from '../../src/theory/scale.ts';

const TONICS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

/** The chords of a sounding, from the lowest voice up. */
function chordsOf({ notes }: Sounding): number[][] {
  const chords = new Map<number, number[]>();
  for (const { at, midi } of notes) {
    const beat = Math.floor(at + 1e-9);
    chords.set(beat, [...(chords.get(beat) ?? []), midi]);
  }
  return [...chords.values()];
}

const classes = (midis: readonly number[]) =>
  [...new Set(midis.map((midi) => midi % 12))].toSorted((a, b) => a - b);

describe('a cadence', () => {
  // Pitch classes from C = 0; common practice.
  test.each([
    {
      key: 'Bb major',
      chords: [
        [2, 5, 10],
        [3, 7, 10],
        [0, 5, 9],
        [2, 5, 10],
      ],
    },
    {
      key: 'A minor',
      chords: [
        [0, 4, 9],
        [2, 5, 9],
        [4, 8, 11],
        [0, 4, 9],
      ],
    },
    {
      key: 'D dorian',
      chords: [
        [2, 5, 9],
        [2, 7, 11],
        [0, 4, 7],
        [2, 5, 9],
      ],
    },
  ] as const)('in $key is the chords that the trade plays', ({ key, chords }) => {
    const [tonic, scale] = key.split(' ') as ['Bb', 'major'];
    expect(chordsOf(keySounding({ tonic, scale })).map(classes)).toEqual(chords);
  });

  // The chords with what sets the mode apart; in minor the leading note raised on the way home (common practice).
  test.each([
    ['E phrygian', '4 7 11 | 0 4 9 | 0 5 9 | 4 7 11', 'E A F E'],
    ['F lydian', '0 5 9 | 2 7 11 | 0 4 7 | 0 5 9', 'F G C F'],
    ['G mixolydian', '2 7 11 | 0 5 9 | 0 4 7 | 2 7 11', 'G F C G'],
    ['B locrian', '2 5 11 | 4 7 11 | 0 5 9 | 2 5 11', 'B E F B'],
    ['C harmonic minor', '0 3 7 | 0 5 8 | 2 7 11 | 0 3 7', 'C F G C'],
    ['A minor pentatonic', '0 4 9 | 2 5 9 | 4 8 11 | 0 4 9', 'A D E A'],
    ['D major pentatonic', '2 6 9 | 2 7 11 | 1 4 9 | 2 6 9', 'D G A D'],
    ['F# major', '1 6 10 | 3 6 11 | 1 5 8 | 1 6 10', 'F# B C# F#'],
  ])('in %s is %s over %s', (name, chords, basses) => {
    const sounding = keySounding(parseKey(name)!);
    const heard = chordsOf(sounding);
    expect(heard.map((chord) => classes(chord).join(' '))).toEqual(chords.split(' | '));
    expect(heard.map((chord) => chord[0]! % 12)).toEqual(basses.split(' ').map(chroma));
    for (const chord of heard) expect(Math.min(...chord)).toBe(chord[0]);
    // A quarter each at 100, the last one twice as long.
    expect(sounding.tempo).toBe(100);
    expect(Math.max(...sounding.notes.map(({ at, length }) => at + length))).toBeCloseTo(5, 9);
  });

  test('is no louder than one note of a phrase, all its voices together', () => {
    for (const how of ['cadence', 'drone', 'chord'] as const) {
      const { notes } = keySounding({ tonic: 'Bb', scale: 'major' }, how);
      for (const beat of [0, 1, 2, 3]) {
        const together = notes.filter(({ at }) => Math.floor(at) === beat);
        const power = together.reduce((sum, { strength }) => sum + strength! ** 2, 0);
        expect(power).toBeLessThanOrEqual(0.8 ** 2);
      }
    }
  });

  test('keeps its voices close: none but the bass moves more than a fourth', () => {
    for (const tonic of TONICS) {
      for (const scale of ['major', 'minor', 'dorian', 'mixolydian'] as const) {
        const chords = chordsOf(keySounding({ tonic, scale }));
        for (let i = 1; i < chords.length; i++) {
          for (let voice = 1; voice < 4; voice++) {
            const move = Math.abs(chords[i]![voice]! - chords[i - 1]![voice]!);
            expect(move, `${tonic} ${scale}`).toBeLessThanOrEqual(5);
          }
        }
      }
    }
  });
});

test('every key of every scale can be heard in each way, inside the range of the strings', () => {
  for (const tonic of TONICS) {
    for (const scale of SCALE_KINDS) {
      for (const how of ['cadence', 'drone', 'chord'] as const) {
        const { notes } = keySounding({ tonic, scale }, how);
        expect(notes.length).toBeGreaterThan(1);
        const midis = notes.map(({ midi }) => midi);
        expect(Math.min(...midis), `${tonic} ${scale} ${how}`).toBeGreaterThanOrEqual(40);
        expect(Math.max(...midis)).toBeLessThanOrEqual(76);
        // It begins and ends at home.
        expect(midis[0]! % 12).toBe(chroma(tonic));
      }
    }
  }
});

test('a drone is the tonic and nothing else', () => {
  const { notes } = keySounding({ tonic: 'Eb', scale: 'lydian' }, 'drone');
  expect(new Set(notes.map(({ midi }) => midi % 12))).toEqual(new Set([3]));
});

test.each([
  ['Eb lydian', 51],
  ['E minor', 40],
  ['D# minor', 51],
])('in %s it is MIDI %i and its octave', (name, tonic) => {
  const { notes } = keySounding(parseKey(name)!, 'drone');
  expect(notes.map(({ midi }) => midi)).toEqual([tonic, tonic + 12, tonic, tonic + 12]);
});

test('a key that is held has a chord a bar, over and over, or its tonic in two octaves', () => {
  const key = parseKey('D dorian')!;
  const bars = (degrees: readonly number[], count: number) =>
    heldSounding(key, degrees, count, 80).notes.reduce<number[][]>((found, { at, midi }) => {
      (found[Math.floor(at / 4)] ??= []).push(midi % 12);
      return found;
    }, []);
  const [i, IV] = [
    [2, 5, 9],
    [2, 7, 11],
  ];
  expect(bars([1, 4], 3).map(classes)).toEqual([i, IV, i]);
  expect(bars([], 2).map(classes)).toEqual([[2], [2]]);
  expect(heldSounding(key, [1, 4], 3, 80).tempo).toBe(80);
});

test('each voice lies as near as can be to where it was, on a string of its own, strummed from the bass', () => {
  const bb = parseKey('Bb major')!;
  const written = (how: 'cadence' | 'chord') =>
    keySounding(bb, how).notes.map(
      ({ midi, at, length, string }) => `${midi}/${string} ${at.toFixed(2)} ${length.toFixed(2)}`,
    );
  const strummed = (chord: readonly number[], beat: number, length: number, spread: number) =>
    chord.map(
      (midi, i) =>
        `${midi}/${5 - i} ${(beat + i * spread).toFixed(2)} ${(length - i * spread).toFixed(2)}`,
    );
  expect(written('cadence')).toEqual([
    ...strummed([46, 53, 58, 62], 0, 1, 0.03),
    ...strummed([51, 55, 58, 63], 1, 1, 0.03),
    ...strummed([41, 53, 57, 60], 2, 1, 0.03),
    ...strummed([46, 53, 58, 62], 3, 2, 0.03),
  ]);
  expect(written('chord')).toEqual(strummed([46, 53, 58, 62], 0, 2, 0.12));
  expect(keySounding(bb)).toEqual(keySounding(bb, 'cadence'));
  expect(heldSounding(bb, [], 1, 80).notes.map(({ midi }) => midi)).toEqual([46, 58]);
});
