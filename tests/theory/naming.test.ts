import { describe, expect, test } from 'vitest';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import {
  chordLabel,
  inversionLabel,
  keyLabel,
  MEMBER_NAMES,
  NAMINGS,
  noteLabel,
  intervalLabel,
  numeralLabel,
  scaleLabel,
  type Naming,
} from '../../src/theory/naming.ts';
import { hasSevenNotes, SCALE_KINDS, scaleNotes } from '../../src/theory/scale.ts';

const key = (name: string) => parseKey(name)!;
const scale = (name: string, naming: Naming) =>
  scaleNotes(key(name))
    .map((note) => noteLabel(note, naming, key(name)))
    .join(' ');

const numerals = (name: string, size: (typeof SIZES)[number]) =>
  [1, 2, 3, 4, 5, 6, 7].map((d) => numeralLabel(chordOn(key(name), d, size))).join(' ');

describe('noteLabel', () => {
  // Common practice of each language.
  test.each<[string, Naming, string]>([
    ['Bb major', 'english', 'B♭ C D E♭ F G A'],
    ['Bb major', 'german', 'B C D Es F G A'],
    ['Bb major', 'solfege', 'Si♭ Do Re Mi♭ Fa Sol La'],
    ['Bb major', 'movable', 'do re mi fa sol la ti'],
    ['Bb major', 'degrees', '1 2 3 4 5 6 7'],
    ['B major', 'german', 'H Cis Dis E Fis Gis Ais'],
    ['G# harmonic minor', 'german', 'Gis Ais H Cis Dis E Fisis'],
    ['Cb major', 'german', 'Ces Des Es Fes Ges As B'],
    ['Gb minor', 'german', 'Ges As Heses Ces Des Eses Fes'],
    ['C minor', 'movable', 'do re me fa sol le te'],
    ['C melodic minor', 'movable', 'do re me fa sol la ti'],
    ['C minor', 'degrees', '1 2 3 4 5 6 7'],
    ['C blues', 'degrees', '1 3 4 ♭5 5 7'],
    ['F# minor', 'solfege', 'Fa♯ Sol♯ La Si Do♯ Re Mi'],
    ['C# major', 'german', 'Cis Dis Eis Fis Gis Ais His'],
    ['Fb major', 'german', 'Fes Ges As Heses Ces Des Es'],
    ['Ab minor', 'solfege', 'La♭ Si♭ Do♭ Re♭ Mi♭ Fa♭ Sol♭'],
    ['C locrian', 'movable', 'do ra me fa se le te'],
    ['C lydian augmented', 'movable', 'do re mi fi si la ti'],
    ['C lydian #2', 'movable', 'do ri mi fi sol la ti'],
    ['C altered', 'movable', 'do ra me fa♭ se le te'],
    ['C altered bb7', 'movable', 'do ra me fa♭ se le ti♭♭'],
    ['D dorian', 'degrees', '1 2 3 4 5 6 7'],
    ['C major pentatonic', 'degrees', '1 2 3 5 6'],
    ['A minor pentatonic', 'movable', 'do me fa sol te'],
  ])('%s in %s', (name, naming, labels) => expect(scale(name, naming)).toBe(labels));

  test('foreign notes are raised or lowered degrees', () => {
    const C = key('C major');
    const all = (naming: Naming) =>
      Array.from({ length: 12 }, (_, i) => noteLabel(spell(C, i), naming, C)).join(' ');
    expect(all('degrees')).toBe('1 ♭2 2 ♭3 3 4 ♯4 5 ♭6 6 ♭7 7');
    expect(all('movable')).toBe('do ra re me mi fa fi sol le la te ti');
    const label = (note: string, name: string, naming: Naming) =>
      noteLabel(note, naming, key(name));
    // What is sharpened has another syllable than what is flattened.
    expect(['C#', 'D#', 'F#', 'G#', 'A#'].map((note) => label(note, 'C major', 'movable'))).toEqual(
      ['di', 'ri', 'fi', 'si', 'li'],
    );
    expect(['Db', 'Eb', 'Gb', 'Ab', 'Bb'].map((note) => label(note, 'C major', 'movable'))).toEqual(
      ['ra', 'me', 'se', 'le', 'te'],
    );
    expect(label('F#', 'C minor', 'degrees')).toBe('♯4');
    expect(label('B', 'C minor', 'degrees')).toBe('♯7');
    expect(label('E', 'C minor', 'degrees')).toBe('♯3');
    expect(label('B#', 'C# major', 'german')).toBe('His');
    expect(label('Ebb', 'Gb minor', 'german')).toBe('Eses');
    expect(label('Abb', 'Db minor', 'german')).toBe('Ases');
  });
});

describe('chords', () => {
  test('are printed with signs, not letters', () => {
    const labels = [1, 2, 3, 4, 5, 6, 7].map((degree) =>
      chordLabel(chordOn(key('Bb major'), degree, 'seventh'), 'english'),
    );
    expect(labels).toEqual(['B♭maj7', 'Cm7', 'Dm7', 'E♭maj7', 'F7', 'Gm7', 'Aø7']);
    const harmonic = key('G# harmonic minor');
    expect(chordLabel(chordOn(harmonic, 7, 'seventh'), 'english')).toBe('F♯♯°7');
    expect(chordLabel(chordOn(harmonic, 1, 'seventh'), 'german')).toBe('Gism(maj7)');
    expect(chordLabel(chordOn(harmonic, 3, 'triad'), 'solfege')).toBe('Si+');
  });

  test('say their inversion by the bass', () => {
    const chord = chordOn(key('Bb major'), 2, 'seventh');
    expect(chordLabel(chord, 'english', 1)).toBe('Cm7/E♭');
    expect([0, 1, 2, 3, 4, 5, 6].map(inversionLabel)).toEqual([
      'root position',
      'first inversion',
      'second inversion',
      'third inversion',
      'fourth inversion',
      'fifth inversion',
      'sixth inversion',
    ]);
    expect(chordLabel(chord, 'english', 0)).toBe('Cm7');
    expect(chordLabel(chord, 'german', 3)).toBe('Cm7/B');
    expect(chordLabel(chord, 'solfege', 1)).toBe('Dom7/Mi♭');
    expect(chordLabel(chord, 'degrees', 2)).toBe('ii7/6');
    expect(chordLabel(chord, 'movable', 2)).toBe('ii7/la');
  });

  // Suffixes as charts are printed: ø half-diminished, ° diminished, + augmented, alterations behind the number.
  test.each<[string, string]>([
    ['C major', 'C Dm Em F G Am B°'],
    ['C harmonic minor', 'Cm D° E♭+ Fm G A♭ B°'],
    ['C melodic minor', 'Cm Dm E♭+ F G A° B°'],
    ['C dorian', 'Cm Dm E♭ F Gm A° B♭'],
  ])('on the degrees of %s are %s', (name, labels) => {
    expect(
      [1, 2, 3, 4, 5, 6, 7]
        .map((d) => chordLabel(chordOn(key(name), d, 'triad'), 'english'))
        .join(' '),
    ).toBe(labels);
  });

  test.each<[string, string]>([
    ['C harmonic minor', 'Cm(maj7) Dø7 E♭+maj7 Fm7 G7 A♭maj7 B°7'],
    ['C melodic minor', 'Cm(maj7) Dm7 E♭+maj7 F7 G7 Aø7 Bø7'],
    ['D mixolydian', 'D7 Em7 F♯ø7 Gmaj7 Am7 Bm7 Cmaj7'],
  ])('with sevenths on the degrees of %s are %s', (name, labels) => {
    expect(
      [1, 2, 3, 4, 5, 6, 7]
        .map((d) => chordLabel(chordOn(key(name), d, 'seventh'), 'english'))
        .join(' '),
    ).toBe(labels);
  });

  // In harmonic minor on the seventh degree the ninth is flat, the eleventh a diminished fourth, the thirteenth minor.
  test.each<[string, number, (typeof SIZES)[number], string]>([
    ['C harmonic minor', 7, 'ninth', 'B°7♭9'],
    ['C harmonic minor', 7, 'eleventh', 'B°7♭9♭11'],
    ['C harmonic minor', 7, 'thirteenth', 'B°7♭9♭11♭13'],
    ['C harmonic minor', 5, 'thirteenth', 'G11♭9♭13'],
    ['C harmonic minor', 6, 'ninth', 'A♭maj7♯9'],
    ['C harmonic minor', 6, 'thirteenth', 'A♭maj13♯9♯11'],
    ['C altered bb7', 1, 'thirteenth', 'C°7♭9♭11♭13'],
    ['C major', 3, 'thirteenth', 'Em11♭9♭13'],
    ['C major', 4, 'eleventh', 'Fmaj9♯11'],
    ['C major', 5, 'thirteenth', 'G13'],
  ])('in %s on %i a %s is %s', (name, degree, size, label) => {
    expect(chordLabel(chordOn(key(name), degree, size), 'english')).toBe(label);
  });

  test('numerals carry the size', () => {
    expect(numerals('Bb major', 'triad')).toBe('I ii iii IV V vi vii°');
    expect(numerals('Bb major', 'seventh')).toBe('Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7');
    expect(numerals('C harmonic minor', 'seventh')).toBe('imaj7 iiø7 III+maj7 iv7 V7 VImaj7 vii°7');
    expect(numerals('C major', 'ninth')).toBe('Imaj9 ii9 iii7♭9 IVmaj9 V9 vi9 viiø7♭9');
  });

  test('no label of any chord keeps an ASCII accidental or a word for a sign', () => {
    const labels = SCALE_KINDS.filter(hasSevenNotes).flatMap((kind) =>
      ['Bb', 'F#', 'G##', 'Dbb'].flatMap((tonic) =>
        SIZES.flatMap((size) =>
          [1, 2, 3, 4, 5, 6, 7].flatMap((degree) => {
            const chord = chordOn({ tonic, scale: kind }, degree, size);
            return [numeralLabel(chord), ...NAMINGS.map((naming) => chordLabel(chord, naming))];
          }),
        ),
      ),
    );
    expect(labels.filter((label) => /#|b|dim|aug|undefined/.test(label))).toEqual([]);
  });
});

test('keys and scales are named as the player reads them', () => {
  expect(keyLabel(key('Bb major'), 'german')).toBe('B major');
  expect(keyLabel(key('Eb minor'), 'degrees')).toBe('E♭ minor');
  expect(keyLabel(key('Eb minor'), 'movable')).toBe('E♭ minor');
  expect(keyLabel(key('F# dorian b2'), 'solfege')).toBe('Fa♯ dorian ♭2');
  expect(scaleLabel('dorian b2')).toBe('dorian ♭2');
  expect(scaleLabel('altered bb7')).toBe('altered ♭♭7');
  expect(scaleLabel('locrian #2')).toBe('locrian ♯2');
});

test('a chord’s members are called by how far they lie above its root', () => {
  const members = chordOn(key('Bb major'), 2, 'thirteenth').members;
  expect(members.map((member) => `${member} ${MEMBER_NAMES[member]}`)).toEqual([
    '1 root',
    '3 third',
    '5 fifth',
    '7 seventh',
    '9 ninth',
    '11 eleventh',
    '13 thirteenth',
  ]);
});

test('intervals are counted from the tonic', () => {
  const C = key('C harmonic minor');
  expect(scaleNotes(C).map((note) => intervalLabel(note, C))).toEqual([
    'P1',
    'M2',
    'm3',
    'P4',
    'P5',
    'm6',
    'M7',
  ]);
});
