import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlined } from '../../../src/theory/free/outlined.ts';
import { overClick } from '../../../src/theory/free/pulse.ts';
import { partOf, written } from '../../../src/theory/free/written.ts';
import { parseKey } from '../../../src/theory/key.ts';
import { numeralLabel } from '../../../src/theory/naming.ts';
import { beats, compare } from '../../../src/theory/rhythm.ts';
import { beatsText } from '../../../src/theory/rhythmText.ts';

const key = parseKey('Bb major')!;
const tempo = 90;
const beat = 60 / tempo;

/** Notes as they are written that were heard at these beats. */
function heard(midis: readonly number[], at: readonly number[]) {
  const even = overClick(
    at.map((time) => time * beat),
    beat,
  )!;
  return written(midis, even.places, tempo, key);
}

describe('a line that was heard', () => {
  it('is written on the divisions of its beats', () => {
    const at = [4, 4.34, 4.66, 5.01, 5.5, 6, 6.33, 6.67, 7, 7.5, 8.02, 11.98];
    const { notes } = heard(
      at.map((_, i) => 58 + i),
      at,
    );
    expect(notes.map((note) => beatsText(note.at)).join(' ')).toBe(
      '0 1/3 2/3 1 3/2 2 7/3 8/3 3 7/2 4 8',
    );
    expect(notes.map(({ length }) => beatsText(length)).join(' ')).toBe(
      '1/3 1/3 1/3 1/2 1/2 1/3 1/3 1/3 1/2 1/2 2 1',
    );
    expect(notes[0]!.name).toBe('Bb');
  });

  it('always has its notes one after the other, each ending before the next', () => {
    const steps = fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), {
      minLength: 12,
      maxLength: 60,
    });
    fc.assert(
      fc.property(steps, (between) => {
        let now = 0;
        const at = between.map((step) => (now += step));
        const { notes } = heard(
          at.map(() => 60),
          at,
        );
        notes.slice(1).forEach((note, i) => {
          const before = notes[i]!;
          expect(compare(before.at, note.at)).toBeLessThan(0);
          expect(before.length.n).toBeGreaterThan(0);
          expect(before.at.n / before.at.d + before.length.n / before.length.d).toBeLessThan(
            note.at.n / note.at.d + 1e-9,
          );
        });
      }),
    );
  });

  it('lets its last note last a beat, and no other longer than two', () => {
    const { notes } = written([58, 60, 62], [beats(0), beats(1), beats(6)], tempo, key);
    expect(notes.map(({ length }) => length)).toEqual([beats(1), beats(2), beats(1)]);
  });

  it('can be kept in part, from the bar of its first note', () => {
    const at = Array.from({ length: 16 }, (_, i) => i);
    const part = partOf(heard(at, at), 5, 7);
    expect(part.notes.map((note) => note.at)).toEqual([beats(1), beats(2), beats(3)]);
  });
});

describe('what a free line outlines', () => {
  const outlinedBy = (midis: readonly number[], toABeat = 3) => {
    const at = midis.map((_, i) => i / toABeat);
    return outlined(heard(midis, at), key).map(({ chord }) => numeralLabel(chord));
  };

  it('is its arpeggios', () => {
    const line = [60, 63, 67, 65, 69, 72, 58, 62, 65, 63, 67, 70];
    const degrees = outlinedBy(line).map((numeral) => numeral.replace(/\d|maj/g, ''));
    expect(degrees).toEqual(['I', 'ii', 'IV', 'V']);
  });

  it('is found behind a run too', () => {
    const run = [57, 58, 60, 62, 63, 65, 67, 69, 70, 72];
    expect(outlinedBy([...run, 65, 69, 72, 77, 60, 63, 67, 72], 2)).toEqual(['ii', 'V']);
  });

  // Four steps one way are a run, after which E flat, G and B flat, or D, F and A, are an arpeggio.
  it.each([
    [[65, 63, 62, 60, 58, 63, 67, 70], 3, 'IV'],
    [[63, 62, 60, 58, 57, 62, 65, 69], 2, 'iii'],
  ])('is cut at a run of four steps: %o', (midis, part, numeral) => {
    const at = midis.map((_, i) => beats(i, part));
    const found = outlined(written(midis, at, tempo, key), key);
    expect(found.map(({ chord }) => numeralLabel(chord))).toEqual([numeral]);
  });

  // Of eight notes five are of the arpeggio, then six: the others go past it by step.
  it.each([
    [[58, 53, 51, 53, 50, 48, 51, 50], []],
    [[58, 53, 50, 53, 50, 48, 53, 50], ['I']],
  ])('is told where two thirds of the notes are of it: %o', (midis, numerals) => {
    const at = midis.map((_, i) => beats(i, 2));
    const found = outlined(written(midis, at, tempo, key), key);
    expect(found.map(({ chord }) => numeralLabel(chord))).toEqual(numerals);
  });

  // A run to A, then F A C F C A F and C E flat G C G E flat C, wherever the player has the beat.
  it.each([
    [1, 2],
    [2, 3],
    [1, 3],
    [1, 1],
    [1, 4],
  ])('is found wherever the beat falls, in notes of %i/%i of one', (length, of) => {
    const run = [57, 58, 60, 62, 63, 65, 67, 69];
    const midis = [...run, 72, 77, 72, 69, 65, 60, 63, 67, 72, 67, 63, 60];
    for (const late of [0, 1, 2]) {
      const at = midis.map((_, i) => beats((i + late) * length, of));
      const found = outlined(written(midis, at, tempo, key), key);
      expect(found.map(({ chord, times }) => [chord.degree, times])).toEqual([
        [2, 1],
        [5, 1],
      ]);
    }
  });

  it('is a seventh chord, all of it', () => {
    const off = [0.2, 1.4, 2.6, 3.8].map((at) => beats(Math.round(at * 10), 10));
    const found = outlined(written([65, 69, 72, 75], off, tempo, key), key);
    expect(found.map(({ chord }) => numeralLabel(chord))).toEqual(['V7']);
  });

  it('is none in two notes of a chord, there and back, nor in three of its notes on end', () => {
    for (const midis of [
      [65, 69, 65, 69, 65, 69],
      [64, 65, 69, 72, 68, 74],
    ]) {
      const at = midis.map((_, i) => beats(i, 2));
      expect(outlined(written(midis, at, tempo, key), key)).toEqual([]);
    }
  });

  it('is nothing in a scale that runs up and down', () => {
    const up = [58, 60, 62, 63, 65, 67, 69, 70];
    expect(outlinedBy([...up, ...up.toReversed(), ...up])).toEqual([]);
    expect(outlinedBy([58, 60, 58, 57, 58, 60, 62, 60, 58, 60, 58, 57, 58, 60])).toEqual([]);
  });
});
