/** A lesson's items are made with pauses: of the longest lessons that are accepted none is far from the next. */
import { describe, expect, it } from 'vitest';
import { itemsByStep, itemsOf } from '../../src/cards/index.ts';
import { MOST, type Deck } from '../../src/decks/deck.ts';
import { readDeck } from '../../src/decks/document.ts';
import { writeNotes } from '../../src/decks/notes.ts';
import { GUITAR, openMidi } from '../../src/neck/instrument.ts';
import { parseKey } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { seeded } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';

const KEY = parseKey('Bb minor')!;
const PHRASED = ['outline', 'follow', 'order', 'vary', 'fill', 'play', 'echo'].map((kind) => ({
  kind,
}));

function phrases(count: number, notes: number, isPlaced: boolean) {
  const random = seeded(3);
  return Array.from({ length: count }, () => {
    const line = Array.from({ length: notes }, (_, i) => {
      const midi = 46 + random.below(26);
      const string = 1 + openMidi(GUITAR).findIndex((open) => open <= midi);
      const place = { string, fret: midi - openMidi(GUITAR)[string - 1]! };
      const note = { midi, name: spell(KEY, midi), at: beats(i, 3), length: beats(1, 3) };
      return isPlaced ? { ...note, place } : note;
    });
    return { tempo: 72, notes: writeNotes(line) };
  });
}

function deckOf(lesson: object): Deck {
  const read = readDeck({ version: 2, title: 'Tuesday', key: 'Bb minor', ...lesson });
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
}

function counted(deck: Deck) {
  const work = itemsByStep(deck);
  for (let pauses = 0; ; pauses++) {
    const step = work.next();
    if (step.done) return { pauses, items: step.value };
  }
}

describe('the items of a lesson', () => {
  it('come with a pause for every note that is to be placed', () => {
    const notes = MOST.drilledNotes / 4;
    const lesson = { drills: PHRASED, phrases: phrases(2, notes, false) };
    const { pauses, items } = counted(deckOf(lesson));
    expect(pauses).toBeGreaterThan(2 * notes);
    // The same as without.
    expect(items).toEqual(itemsOf(deckOf(lesson)));
  });

  it('come with a pause for every chord and every grid that a phrase is read by', () => {
    const [chords, grids] = [34, 5];
    const { pauses } = counted(deckOf({ drills: PHRASED, phrases: phrases(2, 150, true) }));
    expect(pauses).toBeGreaterThan(2 * (chords + grids));
  });

  it('come with a pause for every degree in every size, and for every phrase of every drill', () => {
    const sizes = ['triad', 'seventh', 'ninth'];
    const neck = { kind: 'spot', sizes, strings: ['3-2-1', '4-3-2'], frets: [0, 22] };
    expect(counted(deckOf({ drills: [neck] })).pauses).toBe(7 * sizes.length);
    const few = phrases(12, 24, true);
    const all = deckOf({ drills: PHRASED, phrases: few });
    const first = deckOf({ drills: PHRASED.slice(0, 1), phrases: few });
    expect(counted(all).pauses - counted(first).pauses).toBe(12 * (PHRASED.length - 1));
  });

  it('are those of twelve phrases of 24 notes, as a teacher may give', () => {
    const { items } = counted(deckOf({ drills: PHRASED, phrases: phrases(12, 24, true) }));
    expect(items.length).toBeGreaterThan(100);
  });
});
