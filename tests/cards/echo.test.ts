import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { echo } from '../../src/cards/echo/index.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { chroma, pitchClass } from '../../src/theory/note.ts';
import { deckIn } from './decks.ts';
import { itemIn, itemsIn } from './items.ts';
import { phraseDeck } from './phrases.ts';

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

  it('has a second arpeggio of another degree where it has two, a fourth, a fifth or a second up', () => {
    const drawn = items.filter(({ size }) => size === 'triad');
    const found = new Set<number>();
    for (const item of drawn)
      for (let seed = 1; seed < 12; seed += 2) {
        const heard = echo
          .ask(item, seed)
          .notes.slice(3)
          .map(({ midi }) => pitchClass(midi));
        const moves = [0, 1, 2, 3, 4, 5, 6].filter((move) => {
          const { notes } = chordOn(item.key, ((item.degree - 1 + move) % 7) + 1, 'triad');
          return heard.every((one) => notes.map(chroma).includes(one));
        });
        if (new Set(heard).size === 3) {
          expect([1, 3, 4]).toContain(moves[0]);
          found.add(moves[0]!);
        } else expect(moves.some((move) => [1, 3, 4].includes(move))).toBe(true);
      }
    expect(found).toEqual(new Set([1, 3, 4]));
  });

  // Two octaves from a fifth above the lowest string, and so with a capo; of a ukulele what it has.
  it.each([
    ['guitar', 47, 71],
    ['guitar+5', 52, 76],
    ['bass', 31, 55],
    ['ukulele', 60, 81],
  ])('on a %s lies between MIDI %i and %i', (instrument, low, high) => {
    const found: number[] = [];
    for (const degree of [1, 2, 3, 4, 5, 6, 7])
      for (const contour of ['up', 'down', 'turn', 'skip']) {
        const item = itemIn(echo, `echo:Bb major:${degree}:triad:${instrument}:${contour}:72`)!;
        for (let seed = 0; seed < 8; seed++)
          found.push(...echo.ask(item, seed).notes.map(({ midi }) => midi));
      }
    const [least, most] = [Math.min(...found), Math.max(...found)];
    expect(least).toBeGreaterThanOrEqual(low);
    expect(least).toBeLessThan(low + 3);
    expect(most).toBeLessThanOrEqual(high);
    expect(most).toBeGreaterThan(high - 3);
  });

  it('of a phrase has from two to eight notes: more nobody keeps', () => {
    const line = ['3/5', '2/4', '1/3', '2/4', '3/5', '2/4', '1/3', '2/4', '3/5'];
    const read = (count: number) =>
      itemIn(echo, `echo:Bb major:2:triad:guitar:72 ii ${line.slice(0, count).join(' ')}`);
    expect([1, 2, 8, 9].map((count) => read(count) !== null)).toEqual([true, true, true, false]);
    const made = (count: number) => {
      const pitches = ['C4', 'Eb4', 'G4', 'Eb4', 'C4', 'Eb4', 'G4', 'Eb4', 'C4'].slice(0, count);
      const notes = pitches.map((pitch, i) =>
        i === 0 ? `${pitch} for 1/3 on ${line[0]}` : `${pitch} on ${line[i]}`,
      );
      const phrase = { tempo: 72, notes, outline: [`1-${count} ii`] };
      return itemsIn(
        echo,
        phraseDeck({ phrases: [phrase], drills: [{ kind: 'echo', phrases: [1] }] }),
      );
    };
    expect([2, 8, 9].map((count) => made(count).length)).toEqual([1, 1, 0]);
  });

  it('of a phrase is no note that stands alone', () => {
    const notes = ['C4 for 1/3 on 3/5', 'Eb4 on 2/4', 'G4 on 1/3', 'F4 for 2 on 1/1'];
    const phrase = { tempo: 72, notes, outline: ['1-3 ii', '4 V'] };
    const deck = phraseDeck({ phrases: [phrase], drills: [{ kind: 'echo', phrases: [1] }] });
    expect(itemsIn(echo, deck).map(({ id }) => id)).toEqual([
      'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3',
    ]);
  });

  it('of a phrase in minor is called by the chord that the phrase has', () => {
    const item = itemIn(echo, 'echo:G minor:5:triad:guitar:72 V 4/0 4/4 3/2')!;
    expect(echo.words.item(item)).toBe('V played back in a phrase at 72');
    const drawn = itemIn(echo, 'echo:G minor:5:triad:guitar:up:72')!;
    expect(echo.words.item(drawn)).toBe('v played back at 72');
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
      '72 ii 3/5 2/4 V 1/1 1/5',
      'sideways:72',
      'up:72:dotted',
      'up:29',
      'up:241',
    ])
      expect(itemIn(echo, `echo:Bb major:2:triad:guitar:${rest}`), rest).toBeNull();
  });

  it.each(['up:30', 'skip:240', 'turn:72:eighths'])('reads %s as it would write it', (rest) => {
    const id = `echo:Bb major:2:triad:guitar:${rest}`;
    expect(itemIn(echo, id)!.id).toBe(id);
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
