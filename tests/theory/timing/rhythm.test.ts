import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, beats } from '../../../src/theory/rhythm.ts';
import { beatsText } from '../../../src/theory/rhythmText.ts';
import { phraseFigure } from '../../../src/theory/timing/figure.ts';
import { readRhythm, rhythmWords } from '../../../src/theory/timing/rhythmWords.ts';

/** Eleven triplets and a note held for a beat. */
const HELD = ['1/3x11', '1'];

describe('a rhythm in words', () => {
  it('is that of a phrase with its held note', () => {
    const notes = Array.from({ length: 12 }, (_, i) => ({
      at: beats(i, 3),
      length: i === 11 ? beats(1) : beats(1, 3),
    }));
    expect(rhythmWords(notes)).toEqual(HELD);
    expect(readRhythm(HELD)).toEqual(notes);
    const { onsets, length, division } = phraseFigure({ notes });
    expect(division).toBe(3);
    // Held to the end of its bar, and over again until there are 48 onsets.
    expect(onsets).toHaveLength(48);
    expect(length).toEqual(beats(32));
    expect(beatsText(onsets[12]!)).toBe('8');
  });

  it('comes back as it went', () => {
    const step = fc.tuple(fc.integer({ min: 1, max: 8 }), fc.constantFrom(1, 2, 3, 4, 6));
    fc.assert(
      fc.property(
        fc.array(step, { minLength: 1, maxLength: 30 }),
        fc.constantFrom(beats(0), beats(1, 2), beats(2)),
        (steps, rest) => {
          let now = rest;
          const notes = steps.map(([n, d]) => {
            const [at, length] = [now, beats(n, d)];
            now = add(now, length);
            return { at, length };
          });
          expect(readRhythm(rhythmWords(notes)!)).toEqual(notes);
        },
      ),
    );
  });

  it('has notes and rests from a forty-eighth of a beat to sixty-four, forty-eight at most', () => {
    for (const words of [['64'], ['r64', '1'], ['1/48'], ['1/3x48'], ['3072/48']])
      expect(readRhythm(words), words.join()).not.toBeNull();
    const turns = Array.from({ length: 36 }, (_, i) => (i % 2 ? '1' : '1/2'));
    expect(readRhythm(turns)).toHaveLength(36);
  });

  it('is none where the words tell none', () => {
    for (const words of [
      [],
      ['0'],
      ['r1'],
      ['1', 'r1'],
      ['r1x2', '1'],
      ['1/3x49'],
      ['1/49'],
      ['65'],
      ['1/3 x2'],
      ['1/0'],
      Array.from({ length: 37 }, (_, i) => (i % 2 ? '1' : '1/2')),
    ])
      expect(readRhythm(words), words.join()).toBeNull();
    expect(rhythmWords([])).toBeNull();
    const together = [0, 0].map(() => ({ at: beats(0), length: beats(1) }));
    expect(rhythmWords(together)).toBeNull();
  });
});
