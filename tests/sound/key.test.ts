import { describe, expect, test } from 'vitest';
import { keySounding } from '../../src/sound/key.ts';
import type { Sounding } from '../../src/sound/sounding.ts';
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
