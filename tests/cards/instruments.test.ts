import { describe, expect, it } from 'vitest';
import { itemsOf, itemOf, KINDS } from '../../src/cards/index.ts';
import type { SpotCard } from '../../src/cards/spot/ask.ts';
import type { TraceCard } from '../../src/cards/trace/ask.ts';
import { handPlaces } from '../../src/cards/trace/explain.ts';
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

const listed = (name: string) => INSTRUMENTS.find((instrument) => instrument.name === name)!;
const others: Instrument[] = [
  custom,
  { ...listed('guitar'), name: 'a short guitar', scaleLength: 580 },
  { ...listed('bass'), name: 'a short bass', scaleLength: 762 },
  { ...listed('baritone guitar'), name: 'a short baritone', scaleLength: 650 },
  { ...listed('guitar'), name: 'the longest guitar', scaleLength: 1000, frets: 12 },
];

describe.each([...INSTRUMENTS, ...others])('on $name', (instrument) => {
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

  it('what is placed wrong is set right', () => {
    for (const item of items.filter(({ kind }) => kind === 'place')) {
      const card = KINDS.place.ask(item, 2);
      const verdict = KINDS.place.judge(card, '');
      expect(verdict.right, item.id).toBe(false);
      const { dots } = KINDS.place.explain(card, verdict, '', 'english');
      expect(dots.length, item.id).toBeGreaterThan(1);
    }
  });

  it('is shown as the deck has it, for either hand', () => {
    for (const { kind, ...item } of items) {
      expect(KINDS[kind].ask({ kind, ...item }, 2).instrument, item.id).toEqual(instrument);
    }
  });

  it('what is heard can be played', () => {
    for (const item of items.filter(({ kind }) => kind === 'trace')) {
      for (const seed of [2, 3]) {
        const card = KINDS.trace.ask(item, seed) as TraceCard;
        const sounds = handPlaces(card).map((place) => midiAt(instrument, place));
        expect(sounds, item.id).toEqual(card.phrase.notes.map(({ midi }) => midi));
      }
    }
  });
});
