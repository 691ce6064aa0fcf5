import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingering } from '../../src/neck/fingering.ts';
import { GUITAR, openMidi } from '../../src/neck/instrument.ts';
import { finished } from '../../src/theory/incremental.ts';
import { placed, positionsByNote, stringsByNote } from '../../src/neck/placement.ts';
import type { Phrase } from '../../src/theory/phrase.ts';
import { beats } from '../../src/theory/rhythm.ts';

const phraseOf = (pitches: readonly (readonly [number, string])[]): Phrase => ({
  tempo: 80,
  notes: pitches.map(([midi, name], i) => ({ midi, name, at: beats(i, 3), length: beats(1, 3) })),
});
const triad = phraseOf([
  [58, 'Bb'],
  [62, 'D'],
  [65, 'F'],
  [70, 'Bb'],
]);
const placesOf = (phrase: Phrase) =>
  phrase.notes.map(({ place }) => `${place!.string}/${place!.fret}`).join(' ');

/** Four notes within an octave and a half of each other, anywhere a guitar has them twice. */
const phrases = fc
  .tuple(
    fc.integer({ min: 50, max: 62 }),
    fc.array(fc.integer({ min: 0, max: 14 }), { minLength: 2, maxLength: 8 }),
  )
  .map(([low, above]) => phraseOf(above.map((semitones) => [low + semitones, 'C'] as const)));

describe('a phrase elsewhere on the neck', () => {
  it('can be played in other positions, and says in which', () => {
    const all = finished(positionsByNote(GUITAR, triad));
    expect(all.length).toBeGreaterThan(3);
    expect(all[0]!.says).toMatch(/^The same notes with the index finger at fret \d+\.$/);
    expect(new Set(all.map(({ phrase }) => placesOf(phrase))).size).toBe(all.length);
  });

  it('goes one string lower, five frets up or four where the third string was next', () => {
    const now = {
      ...triad,
      notes: triad.notes.map((note, i) => ({
        ...note,
        place: [
          { string: 4, fret: 8 },
          { string: 3, fret: 7 },
          { string: 2, fret: 6 },
          { string: 1, fret: 6 },
        ][i]!,
      })),
    };
    const [lower] = finished(stringsByNote(GUITAR, now));
    expect(placesOf(lower!.phrase)).toBe('5/13 4/12 3/10 2/11');
    expect(lower!.name).toBe('on strings 5 4 3 2');
    expect(lower!.says).toBe('The same notes, each one string lower and further up the neck.');
  });

  it('goes one string higher and down the neck as well', () => {
    const at = [5, 4, 3, 2].map((string, i) => ({ string, fret: [13, 12, 10, 11][i]! }));
    const now = { ...triad, notes: triad.notes.map((note, i) => ({ ...note, place: at[i]! })) };
    const all = finished(stringsByNote(GUITAR, now));
    expect(all.map(({ name, says }) => [name, says])).toEqual([
      ['on strings 6 5 4 3', 'The same notes, each one string lower and further up the neck.'],
      ['on strings 4 3 2 1', 'The same notes, each one string higher and further down the neck.'],
    ]);
    expect(placesOf(all[1]!.phrase)).toBe('4/8 3/7 2/6 1/6');
  });

  it('is always playable, at places that sound its notes', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        const open = openMidi(GUITAR);
        for (const { phrase: there } of [
          ...finished(positionsByNote(GUITAR, phrase)),
          ...finished(stringsByNote(GUITAR, phrase)),
        ]) {
          expect(fingering(GUITAR, there.notes).playable).toBe(true);
          expect(there.notes.map(({ place }) => open[place!.string - 1]! + place!.fret)).toEqual(
            phrase.notes.map(({ midi }) => midi),
          );
        }
      }),
      { numRuns: 15 },
    );
  });

  it('has no place where the neck has none of its notes', () =>
    expect(placed(GUITAR, phraseOf([[30, 'F#']]))).toBeNull());
});
