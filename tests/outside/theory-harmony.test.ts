import { describe, expect, test } from 'vitest';
import { chordOn, SIZES, type Size } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { numeralLabel } from '../../src/theory/naming.ts';
import { scaleNotes } from '../../src/theory/scale.ts';

const DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** Every chord of a key, by one of its properties. */
function chords(name: string, size: Size) {
  const key = parseKey(name)!;
  return DEGREES.map((degree) => chordOn(key, degree, size));
}

// Open Music Theory v1 ("Triads and seventh chords", "Scales"); R. Kelley, "Diatonic Chord Qualities"; Kostka & Payne,
// Tonal Harmony, ch. 4. One widely found table prints melodic-minor VI as a diminished seventh; that is wrong (ø7).
describe('diatonic qualities', () => {
  const triads: Readonly<Record<string, string>> = {
    major: 'I ii iii IV V vi vii°',
    minor: 'i ii° III iv v VI VII',
    'harmonic minor': 'i ii° III+ iv V VI vii°',
    'melodic minor': 'i ii III+ IV V vi° vii°',
  };
  const sevenths: Readonly<Record<string, string>> = {
    major: 'maj7 m7 m7 maj7 7 m7 m7b5',
    minor: 'm7 m7b5 maj7 m7 m7 maj7 7',
    'harmonic minor': 'mMaj7 m7b5 maj7#5 m7 7 maj7 dim7',
    'melodic minor': 'mMaj7 m7 maj7#5 7 7 m7b5 m7b5',
  };

  test.each(Object.entries(triads))('triads of %s are %s', (scale, numerals) => {
    for (const tonic of ['C', 'Bb', 'F#', 'Cb', 'G#'])
      expect(
        chords(`${tonic} ${scale}`, 'triad')
          .map((chord) => chord.numeral)
          .join(' '),
      ).toBe(numerals);
  });

  test.each(Object.entries(sevenths))('sevenths of %s are %s', (scale, symbols) => {
    for (const tonic of ['C', 'Bb', 'F#', 'Cb', 'G#'])
      expect(
        chords(`${tonic} ${scale}`, 'seventh')
          .map(({ symbol, root }) => symbol.slice(root.length))
          .join(' '),
      ).toBe(symbols);
  });

  test('harmonic minor holds each of the seven types of seventh exactly once', () => {
    const types = chords('C harmonic minor', 'seventh').map(({ symbol, root }) =>
      symbol.slice(root.length),
    );
    expect(new Set(types).size).toBe(7);
  });

  test('half-diminished and diminished sevenths are told apart by ø and °', () => {
    expect(numeralLabel(chords('C major', 'seventh')[6]!)).toBe('viiø7');
    expect(numeralLabel(chords('C harmonic minor', 'seventh')[6]!)).toBe('vii°7');
  });

  test('ninths of major', () => {
    expect(chords('C major', 'ninth').map(({ symbol }) => symbol.slice(1))).toEqual([
      'maj9',
      'm9',
      'm7b9',
      'maj9',
      '9',
      'm9',
      'm7b5b9',
    ]);
  });
});

// Letter arithmetic; two libraries agree.
describe('awkward keys', () => {
  test.each<[string, number, Size, string, string]>([
    ['F# major', 7, 'seventh', 'E#m7b5', 'E# G# B D#'],
    ['Gb major', 4, 'seventh', 'Cbmaj7', 'Cb Eb Gb Bb'],
    ['C# major', 7, 'triad', 'B#dim', 'B# D# F#'],
    ['C# major', 7, 'seventh', 'B#m7b5', 'B# D# F# A#'],
    ['G# harmonic minor', 1, 'seventh', 'G#mMaj7', 'G# B D# F##'],
    ['G# harmonic minor', 5, 'seventh', 'D#7', 'D# F## A# C#'],
    ['G# harmonic minor', 7, 'seventh', 'F##dim7', 'F## A# C# E'],
    ['Ab harmonic minor', 3, 'triad', 'Cbaug', 'Cb Eb G'],
    ['Ab harmonic minor', 3, 'seventh', 'Cbmaj7#5', 'Cb Eb G Bb'],
  ])('%s, degree %i, %s: %s', (name, degree, size, symbol, notes) => {
    const chord = chords(name, size)[degree - 1]!;
    expect(chord.symbol).toBe(symbol);
    expect(chord.notes.join(' ')).toBe(notes);
  });

  test('D# locrian', () => {
    expect(scaleNotes(parseKey('D# locrian')!).join(' ')).toBe('D# E F# G# A B C#');
    expect(
      chords('D# locrian', 'seventh')
        .map(({ symbol }) => symbol)
        .join(' '),
    ).toBe('D#m7b5 Emaj7 F#m7 G#m7 Amaj7 B7 C#m7');
  });
});

// Letter arithmetic of its own, so that no library's way of counting is trusted: letters a third apart, semitones from
// the letters' places in C major and their accidentals.
test('the notes of every chord lie thirds apart by letters and semitones', () => {
  const natural: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
  const semitones = (note: string) =>
    natural[note[0]!]! + (note.match(/#/g) ?? []).length - (note.match(/b/g) ?? []).length;
  const faulty: string[] = [];
  for (const letter of 'CDEFGAB')
    for (const signs of ['bb', 'b', '', '#', '##'])
      for (const scale of ['major', 'minor', 'harmonic minor', 'melodic minor'])
        for (const size of SIZES)
          for (const { notes, symbol } of chords(`${letter}${signs} ${scale}`, size))
            for (const [i, note] of notes.slice(1).entries()) {
              const below = notes[i]!;
              const third = (semitones(note) - semitones(below) + 36) % 12;
              const letters = ('CDEFGAB'.indexOf(note[0]!) - 'CDEFGAB'.indexOf(below[0]!) + 7) % 7;
              if (letters !== 2 || third < 3 || third > 4)
                faulty.push(`${symbol}: ${below} ${note}`);
            }
  expect(faulty).toEqual([]);
});
