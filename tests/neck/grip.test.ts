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

// Common practice: what is fretted alike is barred by the index, else by the ring finger; else a finger each.
test.each([
  ['B major', 1, 'triad', [5, 4, 3, 2], [2, 4], '2:1 4:3 4:3 4:3', false],
  ['A major', 1, 'triad', [4, 3, 2], [2, 2], '2:2 2:3 2:4', false],
  ['C major', 1, 'triad', [4, 3, 2, 1], [5, 8], '5:1 5:1 5:1 8:4', true],
  ['C major', 6, 'seventh', [4, 3, 2, 1], [5, 5], '5:1 5:1 5:1 5:1', true],
  ['D major', 1, 'triad', [3, 2, 1], [2, 3], '2:2 3:4 2:3', false],
  ['G major', 5, 'seventh', [4, 3, 2, 1], [3, 5], '4:2 5:3 3:1 5:4', false],
  ['Bb major', 1, 'seventh', [6, 4, 3, 2], [6, 7], '6:1 7:2 7:3 6:1', true],
] as const)('%s %i %s on strings %o', (name, degree, size, strings, frets, fingers, barre) => {
  const [first] = grips(GUITAR, chordOn(parseKey(name)!, degree, size), { strings, frets });
  expect(text(first)).toBe(fingers);
  expect(first!.barre).toBe(barre);
});

test('complete grips come first, and of those and the others the easier', () => {
  const chord = chordOn(C, 1, 'triad');
  const found = grips(GUITAR, chord, { strings: [4, 3, 2], frets: [0, 12] });
  const keys = found.map(({ places, cost }) => {
    const members = new Set(places.map(({ member }) => member));
    return [3 - members.size, cost] as const;
  });
  expect(keys).toEqual(keys.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]));
  const complete = keys.filter(([missing]) => missing === 0);
  expect(complete.length).toBeLessThan(keys.length);
  // Some that lack a note are easier than the hardest that lack none.
  expect(Math.max(...complete.map(([, cost]) => cost))).toBeGreaterThan(
    Math.min(...keys.slice(complete.length).map(([, cost]) => cost)),
  );
});

// From the first to the fourth fret 97 mm on a guitar, 103 on a baritone; there from the third on less than 100.
test.each([
  [648, [4, 3], [1, 4], ['1:1 4:4']],
  [686, [4, 3], [1, 4], []],
  [686, [4, 3], [3, 6], ['3:1 6:4']],
] as const)(
  'at a scale length of %i mm a hand holds of %o on frets %o %o',
  (scaleLength, strings, frets, held) => {
    // E flat and B of E flat, G and B, two frets higher F and C sharp of F, A and C sharp.
    const key = parseKey(frets[0] === 1 ? 'C harmonic minor' : 'D harmonic minor')!;
    const found = grips({ ...GUITAR, scaleLength }, chordOn(key, 3, 'triad'), { strings, frets });
    expect(found.map(text).filter((one) => one!.split(' ').length === 2)).toEqual(held);
  },
);

test('five frets are no grip, however near they lie high up the neck', () => {
  // Of B D F there is B on fret 14 of string 5, D on fret 12 of string 4 and F on fret 10 of string 3: 75 mm.
  const chord = chordOn(C, 7, 'triad');
  expect(grips(GUITAR, chord, { strings: [5, 4, 3], frets: [10, 14] })).toEqual([]);
});
