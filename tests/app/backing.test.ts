import { describe, expect, it } from 'vitest';
import { backingSound, barsAt, roundOf, roundWords } from '../../src/app/minute/backing.ts';
import { pitchClass } from '../../src/theory/note.ts';
import { deckIn } from '../cards/decks.ts';
import { phraseDeck } from '../cards/phrases.ts';

describe('what a free minute is played over', () => {
  const lesson = phraseDeck();

  it('is a minute long at any tempo, to the end of a bar', () => {
    expect(barsAt(60)).toBe(15);
    expect(barsAt(72)).toBe(18);
    expect(barsAt(90)).toBe(23);
  });

  it('is silent but for the click, or the tonic held anew in each bar', () => {
    expect(backingSound('click', lesson, 60)).toEqual({ tempo: 60, notes: [] });
    const { notes, tempo } = backingSound('tonic', lesson, 60);
    expect(tempo).toBe(60);
    // B flat in two octaves.
    expect(new Set(notes.map(({ midi }) => pitchClass(midi)))).toEqual(new Set([10]));
    expect(notes).toHaveLength(2 * 15);
    expect(Math.max(...notes.map(({ at, length }) => at + length))).toBeCloseTo(60);
  });

  it('is a round of the chords that the first phrase goes through, one in a bar', () => {
    expect(roundWords(lesson)).toBe('ii V I vi ii vii°');
    const { notes } = backingSound('round', lesson, 60);
    const inBar = (bar: number) =>
      notes.filter(({ at }) => Math.floor(at / 4) === bar).map(({ midi }) => pitchClass(midi));
    // Cm, F, and after six bars Cm again.
    expect(new Set(inBar(0))).toEqual(new Set([0, 3, 7]));
    expect(new Set(inBar(1))).toEqual(new Set([5, 9, 0]));
    expect(inBar(6)).toEqual(inBar(0));
  });

  it('is the degrees that are asked where there is no phrase, and a usual round where all are', () => {
    expect(roundOf(deckIn('Bb major'))).toEqual([1, 6, 2, 5]);
    const drills = [
      {
        kind: 'spot',
        sizes: ['triad'],
        degrees: [2, 5],
        strings: [[5, 4]],
        frets: [1, 8],
      } as const,
    ];
    expect(roundOf({ ...deckIn('Bb major'), drills })).toEqual([2, 5]);
    const asked = (...degrees: number[]) =>
      roundOf({ ...deckIn('Bb major'), drills: drills.map((drill) => ({ ...drill, degrees })) });
    expect(asked(4)).toEqual([1, 6, 2, 5]);
    expect(asked(6, 4, 1, 5)).toEqual([6, 4, 1, 5]);
    expect(asked(1, 2, 4, 5, 6)).toEqual([1, 6, 2, 5]);
  });

  it('has a chord that lasts for several arpeggios once, and eight bars at most', () => {
    const along = (outline: readonly string[]) => {
      const notes = outline.flatMap((_, i) =>
        ['Bb3', 'D4', 'F4'].map((pitch, k) => (i + k === 0 ? `${pitch} for 1/3` : pitch)),
      );
      const ruled = outline.map((numeral, i) => `${3 * i + 1}-${3 * i + 3} ${numeral}`);
      return roundWords(phraseDeck({ phrases: [{ tempo: 72, notes, outline: ruled }] }));
    };
    expect(along(['I', 'vi', 'vi', 'I', 'I'])).toBe('I vi I');
    expect(along(['I', 'iii', 'I', 'iii', 'I', 'iii', 'I', 'iii', 'I', 'iii'])).toBe(
      'I iii I iii I iii I iii',
    );
    expect(along(['I', 'I'])).toBe('I vi ii V');
  });
});
