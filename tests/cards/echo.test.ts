import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { echo } from '../../src/cards/echo/index.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { chroma, pitchClass } from '../../src/theory/note.ts';
import { deckIn } from './decks.ts';
import { itemIn, itemsIn } from './items.ts';

const items = ['Bb major', 'G minor'].flatMap((key) =>
  itemsIn(echo, deckIn(key, ['triad', 'seventh'])),
);
const cards = fc
  .tuple(fc.constantFrom(...items), fc.nat({ max: 2 ** 31 }))
  .map(([item, seed]) => echo.ask(item, seed));

describe('a line to be played back', () => {
  it('is one arpeggio, or two where its item is well known', () => {
    fc.assert(
      fc.property(cards, ({ notes, seed, item, key }) => {
        expect(notes).toHaveLength(seed % 2 === 1 ? 6 : 3);
        const chromas = chordOn(key, item.degree, item.size).notes.map(chroma);
        for (const { midi, name } of notes.slice(0, 3)) {
          expect(chromas).toContain(pitchClass(midi));
          expect(chroma(name)).toBe(pitchClass(midi));
        }
      }),
    );
  });

  it('goes the way of its contour', () => {
    fc.assert(
      fc.property(cards, ({ notes, item }) => {
        const [a, b, c] = notes.map(({ midi }) => midi);
        const goes = { up: a! < b! && b! < c!, down: a! > b! && b! > c!, turn: a === c };
        const { contour } = item.drawn!;
        if (contour !== 'skip') expect(goes[contour]).toBe(true);
      }),
    );
  });

  it('is that of a phrase where it is drilled from one', () => {
    const item = itemIn(echo, 'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3')!;
    const { notes, tempo } = echo.ask(item, 1);
    expect(notes.map(({ midi }) => midi)).toEqual([60, 63, 67]);
    expect(tempo).toBe(72);
  });

  it('reads no id that it would not write', () => {
    for (const rest of [
      'up',
      'up:7',
      'up:72.5',
      'up:72:triplets',
      'round:72',
      'up:72:eighths:x',
      '72 ii 3/5?',
    ])
      expect(itemIn(echo, `echo:Bb major:2:triad:guitar:${rest}`), rest).toBeNull();
  });

  // C4 E♭4 G4.
  it.each([
    ['60 63 67', true, 'Every note right', 'It goes C E♭ G.'],
    ['60@0 63@0.3 67@0.6', true, 'Every note right', 'It goes C E♭ G.'],
    ['60 65 67', false, 'F, not E♭', 'Note 2 was F, not E♭.'],
    ['48 51 55', false, 'An octave too low', 'All of it was an octave too low.'],
    ['60 63 -', false, 'G was missing', 'Note 3 was missing.'],
    ['60 ? 67', false, 'Not yet', 'It goes C E♭ G.'],
  ])('is told of %s what was heard', (answer, right, title, sentence) => {
    const card = echo.ask(itemIn(echo, 'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3')!, 2);
    const verdict = echo.judge(card, answer);
    expect(verdict).toEqual({ right, takenFor: null });
    expect(echo.explain(card, verdict, answer, 'english')).toMatchObject({ title, sentence });
  });
});
