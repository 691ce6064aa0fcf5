import { describe, expect, test } from 'vitest';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { frequency, midiOf } from '../../src/theory/note.ts';

// ISO 16:1975.
test('A4 is 440 Hz', () => {
  expect(frequency(midiOf('A4'))).toBe(440);
});

// B. H. Suits, Physics of Music – Notes, Michigan Tech: f = 440·2^((m−69)/12); the numbering is that of MIDI 1.0 (from
// memory).
test('C4 is MIDI 60 and 261.63 Hz', () => {
  expect(midiOf('C4')).toBe(60);
  expect(frequency(60)).toBeCloseTo(261.63, 2);
});

// Open Music Theory v1, "Pitches".
test('the octave follows the letter', () => {
  expect(midiOf('Cb4')).toBe(midiOf('B3'));
  expect(midiOf('Cb4')).toBe(59);
  expect(midiOf('B#3')).toBe(60);
});

// CRC Handbook, equal-tempered scale table; OEIS A329211 for E4.
describe('open strings, Hz', () => {
  test.each([
    ['E2', 82.407],
    ['A2', 110.0],
    ['D3', 146.832],
    ['G3', 195.998],
    ['B3', 246.942],
    ['E4', 329.628],
    ['B1', 61.735],
    ['B0', 30.868],
    ['E1', 41.203],
    ['A1', 55.0],
    ['D2', 73.416],
    ['G2', 97.999],
  ])('%s sounds %f', (pitch, hz) => {
    expect(frequency(midiOf(pitch))).toBeCloseTo(hz, 3);
  });
});

const tuning = (name: string) => INSTRUMENTS.find((one) => one.name === name)?.tuning.join(' ');

test('the guitar and the basses are tuned to those strings', () => {
  expect(GUITAR.tuning.join(' ')).toBe('E2 A2 D3 G3 B3 E4');
  expect(tuning('bass')).toBe('E1 A1 D2 G2');
  expect(tuning('5-string bass')).toBe('B0 E1 A1 D2 G2');
});
