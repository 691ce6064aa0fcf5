import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingering } from '../../src/neck/fingering.ts';
import { GUITAR, openMidi, type Instrument } from '../../src/neck/instrument.ts';
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
const withFrets = (frets: number): Instrument => ({ ...GUITAR, frets });
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

  // On the first string alone: one string lower lies five frets further up, but not beyond the last fret.
  it.each([
    [64, 0, ['2/5 2/7 2/9']],
    [69, 5, ['2/10 2/12 2/14']],
    [83, 19, []],
    [79, 15, ['2/20 2/22 2/24']],
  ])('MIDI %i from fret %i on the first string goes to %o', (midi, fret, there) => {
    const notes = phraseOf([0, 2, 4].map((step) => [midi + step, 'C'] as const)).notes.map(
      (note, i) => ({ ...note, place: { string: 1, fret: fret + 2 * i } }),
    );
    const all = finished(stringsByNote(withFrets(24), { tempo: 80, notes }));
    expect(all.map(({ phrase }) => placesOf(phrase))).toEqual(there);
  });

  it('is nowhere where it cannot be played at all, and keeps how each note is reached', () => {
    const nowhere = phraseOf([[30, 'F#']]);
    expect(finished(stringsByNote(GUITAR, nowhere))).toEqual([]);
    expect(finished(positionsByNote(GUITAR, nowhere))).toEqual([]);
    const notes = triad.notes.map((note, i) =>
      i === 1 ? { ...note, articulation: 'slide' as const } : note,
    );
    for (const { phrase } of finished(positionsByNote(GUITAR, { ...triad, notes })))
      expect(phrase.notes.map(({ articulation }) => articulation)).toEqual([
        undefined,
        'slide',
        undefined,
        undefined,
      ]);
  });

  it('is not told where it is played already, and named by its position elsewhere, never with an open string', () => {
    const now = placed(GUITAR, triad)!;
    const all = finished(positionsByNote(GUITAR, now));
    expect(all.map(({ phrase }) => placesOf(phrase))).not.toContain(placesOf(now));
    for (const { name, says, phrase } of all) {
      expect(says).toContain(`at fret ${name.replace('position ', '')}.`);
      expect(phrase.notes.every(({ place }) => place!.fret > 0)).toBe(true);
    }
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
