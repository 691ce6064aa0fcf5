import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { grips } from '../../src/neck/grip.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { chroma } from '../../src/theory/note.ts';
import { parseKey } from '../../src/theory/key.ts';

const C = parseKey('C major')!;
const text = (grip: { places: readonly { fret: number; finger: number }[] } | undefined) =>
  grip?.places.map(({ fret, finger }) => `${fret}:${finger}`).join(' ');

// Common practice.
test('the open C chord comes first on five strings, fingered 3 2 0 1 0', () => {
  const found = grips(GUITAR, chordOn(C, 1, 'triad'), { strings: [5, 4, 3, 2, 1], frets: [0, 4] });
  expect(text(found[0])).toBe('3:3 2:2 0:0 1:1 0:0');
});

test('F major on six strings is held with a barre', () => {
  const found = grips(GUITAR, chordOn(C, 4, 'triad'), {
    strings: [1, 2, 3, 4, 5, 6],
    frets: [1, 4],
  });
  expect(text(found[0])).toBe('1:1 3:3 3:4 2:2 1:1 1:1');
  expect(found[0]!.barre).toBe(true);
});

test('grips hold chord notes only, a note a string, with fingers that rise with the frets', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 7 }),
      fc.constantFrom('triad', 'seventh'),
      fc.integer({ min: 0, max: 9 }),
      fc.subarray([1, 2, 3, 4, 5, 6], { minLength: 3, maxLength: 5 }),
      (degree, size, lowest, strings) => {
        const chord = chordOn(C, degree, size);
        const found = grips(GUITAR, chord, { strings, frets: [lowest, lowest + 4] });
        for (const { places } of found) {
          expect(places.map(({ string }) => string)).toEqual(strings.toSorted((a, b) => b - a));
          const fretted = places.filter(({ fret }) => fret > 0);
          for (const place of places) {
            expect(midiAt(GUITAR, place) % 12).toBe(chroma(place.note));
            expect(place.finger === 0).toBe(place.fret === 0);
          }
          // Four frets under one hand, wherever it lies.
          const frets = fretted.map(({ fret }) => fret);
          if (frets.length > 0)
            expect(Math.max(...frets) - Math.min(...frets)).toBeLessThanOrEqual(3);
          for (const a of fretted)
            for (const b of fretted) expect(a.finger > b.finger && a.fret < b.fret).toBe(false);
        }
      },
    ),
    { numRuns: 50 },
  );
});

test('five frets are no grip, however near they lie high up the neck', () => {
  // Of B D F there is B on fret 14 of string 5, D on fret 12 of string 4 and F on fret 10 of string 3: 75 mm.
  const chord = chordOn(C, 7, 'triad');
  expect(grips(GUITAR, chord, { strings: [5, 4, 3], frets: [10, 14] })).toEqual([]);
});
