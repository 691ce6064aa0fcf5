import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chroma,
  fifths,
  frequency,
  midiOf,
  noteAt,
  parseNote,
  parsePitch,
  semitonesAbove,
} from '../../src/theory/note.ts';

const NAME = fc
  .tuple(fc.constantFrom(...'ABCDEFG'), fc.constantFrom('', '#', 'b', '##', 'bb'))
  .map(([letter, signs]) => letter + signs);

describe('parseNote', () => {
  test.each([
    ['Bb', 'Bb'],
    ['B♭', 'Bb'],
    ['f♯', 'F#'],
    [' Fx ', 'F##'],
    ['F𝄪', 'F##'],
    ['B𝄫', 'Bbb'],
    ['bb', 'Bb'],
    ['B♮', 'B'],
    ['x', null],
    ['Cx♯', 'C###'],
  ])('reads %s as %s', (text, name) => expect(parseNote(text)).toBe(name));

  test.each(['', 'H', 'B#b', 'C4', 'C#####', 'Bb major', '<b>'])('takes “%s” for no note', (text) =>
    expect(parseNote(text)).toBeNull(),
  );

  test('reads back every name with up to two accidentals', () =>
    fc.assert(
      fc.property(NAME, (name) => {
        expect(parseNote(name)).toBe(name);
      }),
    ));
});

describe('parsePitch', () => {
  test('keeps name, octave and MIDI number in agreement', () =>
    fc.assert(
      fc.property(NAME, fc.integer({ min: -1, max: 9 }), (name, octave) => {
        const pitch = parsePitch(`${name}${octave}`)!;
        expect(pitch).toMatchObject({ name, octave });
        expect(((pitch.midi % 12) + 12) % 12).toBe(chroma(name));
        expect(midiOf(`${name}${octave}`)).toBe(pitch.midi);
      }),
    ));

  test.each(['E', 'E10', 'E-2', '2E', ''])('takes “%s” for no pitch', (text) =>
    expect(parsePitch(text)).toBeNull(),
  );
});

test('midiOf says what it could not read', () => {
  expect(() => midiOf('H2')).toThrow('“H2” is not a note with an octave, like E2 or Bb3.');
});

test('a fifth up is one more on the line of fifths', () => {
  expect(['F', 'C', 'G', 'Bb', 'F#', 'Cbb'].map(fifths)).toEqual([-1, 0, 1, -2, 6, -14]);
});

test('each place on the line of fifths is one note', () => {
  expect([-8, -2, -1, 0, 1, 5, 6, 13].map(noteAt)).toEqual('Fb Bb F C G B F# F##'.split(' '));
});

test.each([
  ['C', 'C', 0],
  ['C', 'B', 11],
  ['B', 'C', 1],
  ['Bb', 'A', 11],
  ['A', 'Bb', 1],
  ['F#', 'Gb', 0],
  ['G', 'D', 7],
  ['D', 'G', 5],
])('from %s up to %s it is %i semitones', (from, to, semitones) =>
  expect(semitonesAbove(from, to)).toBe(semitones),
);

test('an octave doubles the frequency, whatever the reference', () =>
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 115 }), fc.integer({ min: 415, max: 466 }), (midi, a) => {
      expect(frequency(midi + 12, a) / frequency(midi, a)).toBeCloseTo(2, 12);
    }),
  ));
