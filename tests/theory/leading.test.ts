import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { leading, sharedNotes } from '../../src/theory/leading.ts';

const BB = parseKey('Bb major')!;

test('I and vi share two notes, and one moves by a step', () => {
  const [one, six] = [chordOn(BB, 1, 'triad'), chordOn(BB, 6, 'triad')];
  expect(sharedNotes(one, six)).toEqual(['Bb', 'D']);
  expect(leading(one, six)).toEqual([
    { from: 'Bb', to: 'Bb', semitones: 0 },
    { from: 'D', to: 'D', semitones: 0 },
    { from: 'F', to: 'G', semitones: 2 },
  ]);
});

// Common practice: the third of ii7 stays as V7's seventh, its seventh falls to V7's third.
test('from ii7 to V7 two notes stay and two fall', () => {
  const moves = leading(chordOn(BB, 2, 'seventh'), chordOn(BB, 5, 'seventh'));
  expect(moves.map(({ from, to }) => `${from}>${to}`)).toEqual(['C>C', 'Eb>Eb', 'G>F', 'Bb>A']);
});

test('each note goes to another, in every pair of chords, and back the moves are as large', () => {
  const chord = fc
    .tuple(fc.integer({ min: 1, max: 7 }), fc.constantFrom(...SIZES.slice(0, 4)))
    .map(([degree, size]) => chordOn(BB, degree, size));
  fc.assert(
    fc.property(chord, chord, (a, b) => {
      const there = leading(a, b);
      const size = (moves: typeof there) =>
        moves.reduce((sum, { semitones }) => sum + Math.abs(semitones), 0);
      expect(there).toHaveLength(Math.min(a.notes.length, b.notes.length));
      expect(new Set(there.map(({ to }) => to)).size).toBe(there.length);
      expect(size(leading(b, a))).toBe(size(there));
    }),
  );
});
