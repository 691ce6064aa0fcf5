import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degreeOf, keyName, letterDegree, parseKey, type Key } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { chroma } from '../../src/theory/note.ts';
import { hasSevenNotes, parentKey, SCALE_KINDS, scaleNotes } from '../../src/theory/scale.ts';

const SIGNS = ['', '#', 'b', '##', 'bb'];
const KEYS: Key[] = [...'CDEFGAB'].flatMap((letter) =>
  SIGNS.flatMap((signs) => SCALE_KINDS.map((scale) => ({ tonic: letter + signs, scale }))),
);
const key = fc.constantFrom(...KEYS);

test('a key’s name reads back as the key', () =>
  fc.assert(
    fc.property(key, (k) => {
      expect(parseKey(keyName(k))).toEqual(k);
    }),
  ));

test.each([
  ['B♭ major', 'Bb major'],
  ['  c  Natural Minor ', 'C minor'],
  ['d ionian', 'D major'],
  ['E aeolian', 'E minor'],
  ['F locrian ♯2', 'F locrian #2'],
])('parseKey reads %s as %s', (text, name) => expect(keyName(parseKey(text)!)).toBe(name));

// What every plain object has: names that a look-up in one would find.
const INHERITED = Object.getOwnPropertyNames(Object.prototype);

test.each(INHERITED)('no key is called %s, whatever its tonic', (name) => {
  expect(parseKey(`C ${name}`)).toBeNull();
  expect(parseKey(`${name} major`)).toBeNull();
});

test('a key that is taken in has a scale', () =>
  fc.assert(
    fc.property(
      fc.constantFrom('C', 'Bb', 'F#'),
      fc.oneof(fc.constantFrom(...INHERITED, ...SCALE_KINDS), fc.string()),
      (tonic, name) => {
        const read = parseKey(`${tonic} ${name}`);
        if (read) expect(SCALE_KINDS).toContain(read.scale);
      },
    ),
  ));

test.each(['', 'major', 'H major', 'C', 'C###  major', 'C mayor'])('“%s” is no key', (text) =>
  expect(parseKey(text)).toBeNull(),
);

test('every seven-note scale has each letter once, on every tonic', () => {
  const faulty = KEYS.filter(
    (k) =>
      hasSevenNotes(k.scale) &&
      scaleNotes(k)
        .map((note) => letterDegree(k, note))
        .join('') !== '1234567',
  );
  expect(faulty).toEqual([]);
});

test('the degrees of short scales are those of their letters', () => {
  const pentatonic = { tonic: 'A', scale: 'minor pentatonic' } as const;
  expect(scaleNotes(pentatonic).map((note) => degreeOf(pentatonic, note))).toEqual([1, 3, 4, 5, 7]);
});

// Each of its notes is one of the parent's, but for the blue one.
test.each([
  ['Bb major pentatonic', 'Bb major'],
  ['G minor pentatonic', 'G minor'],
  ['G blues', 'G minor'],
  ['D dorian', 'D dorian'],
])('the chords of %s stand in %s', (name, parent) => {
  const own = parseKey(name)!;
  expect(keyName(parentKey(own))).toBe(parent);
  const strange = scaleNotes(own).filter((note) => degreeOf(parentKey(own), note) === null);
  expect(strange).toEqual(name === 'G blues' ? ['Db'] : []);
});

describe('spell', () => {
  test('names the pitch it was given, for every key and pitch', () =>
    fc.assert(
      fc.property(key, fc.integer({ min: 0, max: 127 }), (k, midi) => {
        expect(chroma(spell(k, midi))).toBe(midi % 12);
      }),
    ));

  test('keeps the notes of the key as they are, in every octave', () =>
    fc.assert(
      fc.property(key, fc.integer({ min: 0, max: 8 }), (k, octave) => {
        for (const note of scaleNotes(k)) expect(spell(k, chroma(note) + 12 * octave)).toBe(note);
      }),
    ));

  // Common practice.
  test.each([
    ['Bb major', 'Bb Cb C Db D Eb E F Gb G Ab A'],
    ['C minor', 'C Db D Eb E F F# G Ab A Bb B'],
    ['A minor', 'A Bb B C C# D D# E F F# G G#'],
  ])('spells all twelve in %s', (name, notes) => {
    const k = parseKey(name)!;
    const tonic = chroma(k.tonic);
    expect(Array.from({ length: 12 }, (_, i) => spell(k, tonic + i)).join(' ')).toBe(notes);
  });
});

test('a note of the key in another spelling is no degree of it', () => {
  const k = parseKey('Bb major')!;
  expect(degreeOf(k, 'Eb')).toBe(4);
  expect(degreeOf(k, 'D#')).toBeNull();
});
