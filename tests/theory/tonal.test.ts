/** Against a library that has its own scales and chords and its own way of counting intervals. */
import { Chord, Scale } from 'tonal';
import { expect, test } from 'vitest';
import { chordOn } from '../../src/theory/chord.ts';
import { hasSevenNotes, SCALE_KINDS, scaleNotes, type ScaleKind } from '../../src/theory/scale.ts';

const TONICS = 'C C# Db D D# Eb E E# Fb F F# Gb G G# Ab A A# Bb B Cb'.split(' ');

/** Where it calls a scale otherwise. */
const CALLED: Partial<Record<ScaleKind, string>> = {
  'locrian #6': 'locrian 6',
  'major #5': 'ionian #5',
  'lydian #2': 'lydian #9',
  'altered bb7': 'ultralocrian',
  blues: 'minor blues',
};

// It spells the altered scale 1 b2 #2 3 #4 b6 b7, two letters twice.
const KINDS = SCALE_KINDS.filter((scale) => scale !== 'altered');

test.each(KINDS)('%s is spelled as tonal 6.4.3 spells it, on every tonic', (scale) => {
  expect(TONICS.map((tonic) => scaleNotes({ tonic, scale }).join(' '))).toEqual(
    TONICS.map((tonic) => Scale.get(`${tonic} ${CALLED[scale] ?? scale}`).notes.join(' ')),
  );
});

test('triads and sevenths have the notes that tonal 6.4.3 reads from their symbols', () => {
  const sorted = (notes: readonly string[]) => notes.toSorted().join(' ');
  const faulty = SCALE_KINDS.filter(hasSevenNotes).flatMap((scale) =>
    TONICS.flatMap((tonic) =>
      [1, 2, 3, 4, 5, 6, 7].flatMap((degree) =>
        (['triad', 'seventh'] as const).flatMap((size) => {
          const { symbol, notes } = chordOn({ tonic, scale }, degree, size);
          return sorted(Chord.get(symbol).notes) === sorted(notes) ? [] : [symbol];
        }),
      ),
    ),
  );
  expect(faulty).toEqual([]);
});
