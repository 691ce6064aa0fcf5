import { expect, it } from 'vitest';
import { fingering } from '../../src/neck/fingering.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { midiAt, type Place } from '../../src/neck/place.ts';
import { stretches } from '../../src/neck/stretch.ts';
import { beats } from '../../src/theory/rhythm.ts';

const stretched = (places: readonly (readonly [string: number, fret: number])[]) => {
  const line = places.map(([string, fret], i) => {
    const place: Place = { string, fret };
    return { midi: midiAt(GUITAR, place), place, at: beats(i, 3), length: beats(1, 3) };
  });
  const found = fingering(GUITAR, line);
  if (!found.playable) throw new Error(found.reason);
  return stretches(found.notes);
};

it('a finger a fret is no stretch, and an open string none', () => {
  expect(
    stretched([
      [4, 5],
      [4, 6],
      [4, 7],
      [4, 8],
    ]),
  ).toEqual([]);
  expect(
    stretched([
      [4, 0],
      [4, 2],
      [4, 3],
    ]),
  ).toEqual([]);
});

it('five frets under one hand are one', () => {
  const found = stretched([
    [4, 5],
    [4, 7],
    [4, 9],
    [3, 5],
    [3, 7],
    [3, 9],
  ]);
  expect(found.length).toBeGreaterThan(0);
});

// The hand lies over the index finger's fret: the second finger over the next, and so on.
it.each([
  [1, 5, false],
  [1, 4, true],
  [2, 6, false],
  [2, 5, false],
  [2, 7, true],
  [3, 7, false],
  [4, 8, false],
  [4, 9, true],
  [0, 0, false],
] as const)(
  'finger %i on fret %i of a hand at fret 5 stretches: %s',
  (finger, fret, stretches_) => {
    expect(stretches([{ string: 4, finger, fret, hand: 5, barre: false }])).toEqual(
      stretches_ ? [0] : [],
    );
  },
);
