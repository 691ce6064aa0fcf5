import { describe, expect, it } from 'vitest';
import { itemsOf, itemOf, KINDS } from '../../src/cards/index.ts';
import type { SpotCard } from '../../src/cards/spot/ask.ts';
import type { TraceCard } from '../../src/cards/trace/ask.ts';
import { placesOf } from '../../src/cards/trace/explain.ts';
import { INSTRUMENTS, type Instrument } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { chroma } from '../../src/theory/note.ts';
import { deckIn } from './decks.ts';

const custom: Instrument = {
  name: 'a capo and the other hand',
  tuning: ['D2', 'A2', 'D3', 'G3', 'A3', 'D4'],
  frets: 14,
  scaleLength: 620,
  capo: 2,
  leftHanded: true,
};

describe.each([...INSTRUMENTS, custom])('on $name', (instrument) => {
  const strings = instrument.tuning.length;
  const sets = [
    [2, 1],
    [strings, strings - 1, strings - 2],
  ];
  const deck = {
    ...deckIn('Eb major', ['triad', 'seventh', 'ninth'], sets),
    instrument,
  };
  const items = itemsOf(deck);

  it('every kind of card has items on every degree, and ids that name them', () => {
    for (const kind of ['spot', 'place', 'trace']) {
      const degrees = items.filter((item) => item.kind === kind).map(({ degree }) => degree);
      expect(new Set(degrees).size, kind).toBe(7);
    }
    for (const item of items) expect(itemOf(item.id)?.id).toBe(item.id);
  });

  it('what is drawn sounds the chord', () => {
    for (const item of items.filter(({ kind }) => kind === 'spot')) {
      const { chord, shape } = KINDS.spot.ask(item, 5) as SpotCard;
      const drawn = shape.places.map((place) => midiAt(instrument, place) % 12);
      expect(new Set(drawn), item.id).toEqual(new Set(chord.notes.map(chroma)));
    }
  });

  it('what is heard can be played', () => {
    for (const item of items.filter(({ kind }) => kind === 'trace')) {
      for (const seed of [2, 3]) {
        const card = KINDS.trace.ask(item, seed) as TraceCard;
        const sounds = placesOf(card).map((place) => midiAt(instrument, place));
        expect(sounds, item.id).toEqual(card.phrase.notes.map(({ midi }) => midi));
      }
    }
  });
});
