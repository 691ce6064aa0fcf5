import { CONTOURS, WAYS, type Deck, type Drill } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import type { Size } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';

const DEGREES = [1, 2, 3, 4, 5, 6, 7];

/** A deck in a key with one drill of every kind. */
export function deckIn(
  key: string,
  sizes: readonly Size[] = ['triad'],
  strings: readonly (readonly number[])[] = [
    [5, 4],
    [4, 3, 2, 1],
  ],
): Deck {
  const neck = { degrees: DEGREES, sizes, strings, frets: [1, 12] as const };
  const drills: Drill[] = [
    ...kindsOf('neck').map((kind) => ({ kind, ...neck })),
    ...kindsOf('ear').map((kind) => ({
      kind,
      degrees: DEGREES,
      sizes,
      contours: CONTOURS,
      tempo: 72,
    })),
    ...kindsOf('played').map((kind) => ({ kind, ...neck, ways: WAYS })),
    ...kindsOf('echoed').map((kind) => ({
      kind,
      degrees: DEGREES,
      sizes,
      contours: CONTOURS,
      tempo: 72,
    })),
    ...kindsOf('time').map((kind) => ({
      kind,
      figures: ['triplets', 'eighths'] as const,
      tempos: [60, 80],
      clicks: ['beat', 'gone'] as const,
    })),
  ];
  return {
    title: `Paths in ${key}`,
    note: '',
    lessonDay: null,
    instrument: GUITAR,
    key: parseKey(key)!,
    drills,
    phrases: [],
  };
}
