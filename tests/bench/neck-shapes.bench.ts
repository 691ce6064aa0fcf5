import { bench, describe } from 'vitest';
import { arpeggioItems } from '../../src/cards/arpeggio/arpeggio.ts';
import type { Deck, NeckDrill } from '../../src/decks/deck.ts';
import { grips } from '../../src/neck/grip.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { shapes } from '../../src/neck/shapes.ts';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import type { Key } from '../../src/theory/key.ts';

const KEYS = ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Db', 'Ab', 'Eb', 'Bb', 'F'].flatMap(
  (tonic): Key[] => [
    { tonic, scale: 'major' },
    { tonic, scale: 'harmonic minor' },
  ],
);

const drill: NeckDrill = {
  kind: 'spot',
  degrees: [1, 2, 3, 4, 5, 6, 7],
  sizes: SIZES.slice(0, 3),
  strings: [
    [6, 5],
    [5, 4],
    [4, 3],
    [3, 2],
    [2, 1],
  ],
  frets: [1, 16],
};

const deckIn = (key: Key): Deck => ({
  title: '',
  note: '',
  lessonDay: null,
  instrument: GUITAR,
  key,
  drills: [drill],
  phrases: [],
});

describe('items of a deck: 7 degrees, 3 sizes, 5 string sets, frets 1 to 16', () => {
  const decks = KEYS.map(deckIn);
  bench('one key', () => {
    arpeggioItems('spot', decks[0]!, drill);
  });
  bench('24 keys', () => {
    for (const deck of decks) arpeggioItems('spot', deck, drill);
  });
});

describe('all shapes of a chord over the whole neck, six strings', () => {
  const everywhere = { strings: [6, 5, 4, 3, 2, 1], frets: [0, 22] } as const;
  const key: Key = { tonic: 'Bb', scale: 'major' };
  for (const size of ['triad', 'seventh'] as const) {
    const chord = chordOn(key, 2, size);
    const { length } = shapes(GUITAR, chord, everywhere);
    bench(`${size}: ${length} shapes`, () => {
      shapes(GUITAR, chord, everywhere);
    });
  }
  const seventh = chordOn(key, 2, 'seventh');
  const four = { strings: [5, 4, 3, 2], frets: [0, 22] } as const;
  const { length } = grips(GUITAR, seventh, four);
  bench(`seventh, as grips on strings 5 to 2: ${length}`, () => {
    grips(GUITAR, seventh, four);
  });
});
