import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORMS } from '../../src/neck/form.ts';
import { GUITAR, INSTRUMENTS, fretsLeft } from '../../src/neck/instrument.ts';
import { midiAt, placesOf, type Place } from '../../src/neck/place.ts';
import { placeText } from '../../src/neck/placeText.ts';
import { SHAPE_CHOICES, takesLowest } from '../../src/neck/shapeChoice.ts';
import { hasShape, laidOut, regions, shapes, type Region } from '../../src/neck/shapes.ts';
import { chordOn, SIZES, type Chord } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';

const BB = parseKey('Bb major')!;

test('regions are windows of five frets, four apart, ending where the frets end', () => {
  expect(regions([1, 8], 5)).toEqual([
    [1, 5],
    [4, 8],
  ]);
  expect(regions([2, 10], 5)).toEqual([
    [2, 6],
    [6, 10],
  ]);
  expect(regions([1, 3], 5)).toEqual([[1, 3]]);
  expect(regions([5, 9], 5)).toEqual([[5, 9]]);
  expect(regions([0, 12], 5)).toEqual([
    [0, 4],
    [4, 8],
    [8, 12],
  ]);
});

test('regions cover every fret and none outside', () => {
  fc.assert(
    fc.property(fc.nat(12), fc.nat(12), fc.integer({ min: 2, max: 7 }), (lo, more, width) => {
      const windows = regions([lo, lo + more], width);
      const covered = new Set(
        windows.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => from + i)),
      );
      expect([...covered].toSorted((a, b) => a - b)).toEqual(
        Array.from({ length: more + 1 }, (_, i) => lo + i),
      );
    }),
  );
});

/** Every choice of one place a member, without a word about hands. */
function everySet(chord: Chord, { strings, frets }: Region): Place[][] {
  return chord.notes.reduce<Place[][]>(
    (sets, note) =>
      sets.flatMap((set) =>
        placesOf(GUITAR, chroma(note), strings, frets).map((place) => [...set, place]),
      ),
    [[]],
  );
}

describe('shapes', () => {
  test('inside five frets are all sets there are', () => {
    for (const size of SIZES.slice(0, 3))
      for (const degree of [1, 2, 5, 7]) {
        const chord = chordOn(BB, degree, size);
        const region = { strings: [5, 4, 3], frets: [4, 8] } as const;
        const found = shapes(GUITAR, chord, region);
        expect(
          found.map(({ places }) => places.map(placeText).toSorted().join(' ')).toSorted(),
        ).toEqual(
          everySet(chord, region)
            .map((places) => places.map(placeText).toSorted().join(' '))
            .toSorted(),
        );
      }
  });

  const anywhere = fc.record({
    instrument: fc.constantFrom(...INSTRUMENTS),
    tonic: fc.constantFrom('C', 'Bb', 'F#', 'Ab'),
    scale: fc.constantFrom('major', 'harmonic minor', 'dorian'),
    degree: fc.integer({ min: 1, max: 7 }),
    size: fc.constantFrom(...SIZES.slice(0, 3)),
    from: fc.integer({ min: 0, max: 9 }),
    lowest: fc.integer({ min: 2, max: 4 }),
    open: fc.option(fc.boolean(), { nil: undefined }),
  });

  test('hold each member once, are in reach, and are there exactly where hasShape says', () => {
    fc.assert(
      fc.property(anywhere, ({ instrument, tonic, scale, degree, size, from, lowest, open }) => {
        const chord = chordOn({ tonic, scale: scale as 'major' }, degree, size);
        const frets = [from, Math.min(from + 5, fretsLeft(instrument))] as const;
        const region: Region = {
          strings: [lowest, lowest - 1],
          frets,
          ...(open === undefined ? {} : { open }),
        };
        const found = shapes(instrument, chord, region);
        expect(found.length > 0).toBe(hasShape(instrument, chord, region));
        for (const choice of SHAPE_CHOICES)
          expect(hasShape(instrument, chord, region, choice)).toBe(
            found.some(({ places }) => takesLowest(choice, places[0]!.member)),
          );
        for (const { places, inversion, cost } of found) {
          const pitches = places.map((place) => midiAt(instrument, place));
          expect(pitches).toEqual(pitches.toSorted((a, b) => a - b));
          expect(places.map(({ member }) => member).toSorted((a, b) => a - b)).toEqual(
            chord.members,
          );
          for (const place of places)
            expect(midiAt(instrument, place) % 12).toBe(chroma(place.note));
          expect(chord.members[inversion]).toBe(places[0]!.member);
          expect(cost).toBeLessThan(Infinity);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('come as a teacher draws them: root position first, then inversions, the easier first of those alike', () => {
    const region = { strings: [4, 3, 2, 1], frets: [1, 6] } as const;
    const found = shapes(GUITAR, chordOn(BB, 2, 'seventh'), region);
    expect(found[0]!.places.map(({ member }) => member)).toEqual([1, 3, 5, 7]);
    const rank = ({ form, flaws }: (typeof found)[number]) => 2 * FORMS.indexOf(form) + flaws;
    for (const [i, shape] of found.slice(1).entries()) {
      const before = found[i]!;
      expect(rank(shape)).toBeGreaterThanOrEqual(rank(before));
      if (rank(shape) === rank(before)) expect(shape.cost).toBeGreaterThanOrEqual(before.cost);
    }
    expect(new Set(found.map(({ form }) => form))).toEqual(
      new Set(['stacked', 'inversion', 'spread']),
    );
  });

  // On a scale of 648 mm five frets are 153 mm from the first one on, 129 from the fourth.
  test('are reached within five frets, and 130 mm', () => {
    const span = (frets: readonly [number, number]) =>
      Math.max(
        ...[1, 2, 3, 4, 5, 6, 7].flatMap((degree) =>
          laidOut(GUITAR, chordOn(BB, degree, 'triad'), { strings: [6, 5, 4], frets }).map(
            ({ places }) => {
              const pressed = places.map(({ fret }) => fret);
              return Math.max(...pressed) - Math.min(...pressed);
            },
          ),
        ),
      );
    expect(span([1, 8])).toBe(4);
    expect(span([8, 18])).toBe(5);
  });

  test('are the same an octave up the neck', () => {
    const long = { ...GUITAR, frets: 24 };
    for (const size of SIZES.slice(0, 3)) {
      const chord = chordOn(BB, 5, size);
      const forms = (lowest: number) =>
        shapes(long, chord, { strings: [5, 4, 3], frets: [lowest, lowest + 4] })
          .map(({ places }) =>
            places.map(({ string, fret }) => `${string}/${fret - lowest}`).join(' '),
          )
          .toSorted();
      expect(forms(16)).toEqual(forms(4));
    }
  });

  test('may have open strings or not', () => {
    const chord = chordOn(parseKey('C major')!, 1, 'triad');
    const on = (region: Partial<Region>) =>
      shapes(GUITAR, chord, { strings: [3, 2, 1], frets: [0, 5], ...region }).map(({ places }) =>
        places.some(({ fret }) => fret === 0),
      );
    expect(on({})).toContain(true);
    expect(on({ open: false })).not.toContain(true);
    expect(on({ frets: [5, 9] })).not.toContain(true);
    expect(on({ frets: [5, 9], open: true })).toContain(true);
  });

  test('on a bass keep within what one hand reaches', () => {
    const bass = INSTRUMENTS.find(({ name }) => name === 'bass')!;
    const chord = chordOn(BB, 1, 'triad');
    const spans = shapes(bass, chord, { strings: [4, 3, 2, 1], frets: [1, 5] }).map(
      ({ places }) => {
        const frets = places.map(({ fret }) => fret);
        return Math.max(...frets) - Math.min(...frets);
      },
    );
    expect(spans.length).toBeGreaterThan(0);
    expect(Math.max(...spans)).toBeLessThanOrEqual(3);
  });
});
