import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { trace } from '../../src/cards/trace/index.ts';
import { placesOf } from '../../src/cards/trace/explain.ts';
import { midiAt } from '../../src/neck/place.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { degreeOf } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { toNumber } from '../../src/theory/rhythm.ts';
import { deckIn } from './decks.ts';

const items = ['Bb major', 'G minor', 'F# major', 'D dorian', 'C harmonic minor']
  .flatMap((key) => itemsOf(deckIn(key, ['triad', 'seventh', 'ninth'])))
  .filter(({ kind }) => kind === 'trace');
const cards = fc
  .tuple(fc.constantFrom(...items), fc.integer({ min: 0, max: 2 ** 32 - 1 }))
  .map(([item, seed]) => trace.ask(item, seed));

describe('a phrase to be traced', () => {
  it('has three to nine notes in even triplets, each a note of its arpeggio', () => {
    fc.assert(
      fc.property(cards, ({ phrase, line, key, item }) => {
        expect([3, 6, 9]).toContain(phrase.notes.length);
        const size = item.id.split(':')[3] as 'triad';
        phrase.notes.forEach((note, index) => {
          expect(toNumber(note.at)).toBeCloseTo(index / 3, 12);
          expect(note.midi % 12).toBe(chroma(note.name));
          expect(degreeOf(key, note.name)).toBe(Number(pathOf(line.steps)[index]));
          const chord = chordOn(key, line.degrees[Math.floor(index / 3)]!, size);
          expect(chord.notes).toContain(note.name);
        });
      }),
    );
  });

  it('begins on the arpeggio of its item', () => {
    fc.assert(
      fc.property(cards, ({ line, item }) => {
        expect(line.degrees[0]).toBe(item.degree);
      }),
    );
  });

  it('offers four different paths, one of them right', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const paths = card.choices.map(({ path }) => path);
        expect(new Set(paths).size).toBe(4);
        expect(paths.filter((path) => trace.judge(card, path).right)).toEqual([card.path]);
        const { length } = card.path.split(' ');
        for (const path of paths) expect(path.split(' ')).toHaveLength(length);
      }),
    );
  });

  it('is shown at places that sound it', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const sounds = placesOf(card).map((place) => midiAt(card.instrument, place));
        expect(sounds).toEqual(card.phrase.notes.map(({ midi }) => midi));
      }),
      { numRuns: 60 },
    );
  });

  it('has wrong paths that are near on odd seeds: most notes no further than a step off', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const wrong = card.choices.filter(({ path }) => path !== card.path);
        const off = wrong.map(({ heights }) =>
          Math.max(...heights.map((height, i) => Math.abs(height - card.line.steps[i]!))),
        );
        if (card.seed % 2 === 1) expect(Math.min(...off)).toBe(1);
        if (card.seed % 2 === 1) expect(Math.max(...off)).toBeLessThanOrEqual(3);
        else expect(Math.max(...off)).toBeGreaterThan(1);
      }),
    );
  });
});

const pathOf = (steps: readonly number[]) =>
  steps.map((step) => String((((step % 7) + 7) % 7) + 1));
