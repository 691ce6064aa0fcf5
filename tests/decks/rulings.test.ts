import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChord, readRulings, rulingsIn, writeRulings } from '../../src/decks/rulings.ts';
import { analyse } from '../../src/theory/analysis/analysis.ts';
import { candidates } from '../../src/theory/analysis/candidates.ts';
import { EMBELLISHMENTS } from '../../src/theory/analysis/embellishmentNames.ts';
import type { Ruling } from '../../src/theory/analysis/ruling.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { numeralLabel } from '../../src/theory/naming.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { keys } from './arbitrary.ts';

const key = parseKey('Bb major')!;
const minor = parseKey('G minor')!;

describe('the chords of a key', () => {
  it('are read back from their numerals', () => {
    fc.assert(
      fc.property(keys, (any) => {
        for (const chord of candidates(any))
          expect(readChord(numeralLabel(chord), any)).toBe(chord);
      }),
    );
  });

  it('are known without the marks of their quality, where the case is right', () => {
    expect(readChord('vii7', key)).toBe(chordOn(key, 7, 'seventh'));
    expect(readChord('IV7', key)).toBe(chordOn(key, 4, 'seventh'));
    expect(readChord('iii9', key)).toBe(chordOn(key, 3, 'ninth'));
    for (const none of ['VII7', 'II', 'v7', 'ii13', 'viii', '', 'Cm7', 'V7 7'])
      expect(readChord(none, key), none).toBeNull();
  });

  it('in minor are told apart from those that harmonic minor lends by their case', () => {
    expect(readChord('v7', minor)!.symbol).toBe('Dm7');
    expect(readChord('V7', minor)!.symbol).toBe('D7');
    expect(readChord('VII', minor)!.symbol).toBe('F');
    expect(readChord('vii', minor)!.symbol).toBe('F#dim');
  });
});

describe('rulings', () => {
  it('say as much of a single note as of a group', () => {
    expect(readRulings(['5 passing', '6 double-neighbour', '7 chordal'], 9, key)).toEqual([
      { note: 4, embellishment: 'passing' },
      { note: 5, embellishment: 'double neighbour' },
      { note: 6, embellishment: null },
    ]);
    expect(readRulings(['4-6 passing'], 9, key)).toHaveProperty('fault');
    for (const beside of ['0-3 ii', '0 ii', '3-1 ii', '7-10 ii', '10 passing', '4-6 ii ii'])
      expect(readRulings([beside], 9, key), beside).toHaveProperty('fault');
    expect(readRulings(['1-9 ii'], 9, key)).not.toHaveProperty('fault');
    expect(readRulings(['9-9 ii'], 9, key)).not.toHaveProperty('fault');
    expect(readRulings(['1-3 ii7', '4-6', ' 8   V '], 9, key)).toEqual([
      { span: [0, 3], chord: chordOn(key, 2, 'seventh') },
      { span: [3, 6] },
      { note: 7, chord: chordOn(key, 5, 'triad') },
    ]);
  });

  it('are refused where the analysis can follow no reading of them, and only there', () => {
    const chords = [1, 2, 5].map((degree) => chordOn(key, degree, 'triad'));
    const span = fc
      .tuple(
        fc.nat({ max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.option(fc.constantFrom(...chords)),
      )
      .map(([from, length, chord]): Ruling => ({
        span: [from, Math.min(6, from + length)],
        ...(chord && { chord }),
      }));
    const note = fc
      .tuple(fc.nat({ max: 5 }), fc.constantFrom(...chords))
      .map(([at, chord]): Ruling => ({ note: at, chord }));
    const tone = fc
      .tuple(fc.nat({ max: 5 }), fc.constantFrom(...EMBELLISHMENTS, null))
      .map(([at, embellishment]): Ruling => ({ note: at, embellishment }));
    const notes = [60, 63, 67, 65, 69, 72].map((midi, i) => ({
      midi,
      name: 'C',
      at: beats(i, 3),
      length: beats(1, 3),
    }));
    fc.assert(
      fc.property(fc.array(fc.oneof(span, note, tone), { maxLength: 4 }), (rulings) => {
        const read = readRulings(writeRulings(rulings, key), 6, key);
        const follow = () => analyse({ tempo: 72, notes }, key, { rulings });
        if ('fault' in read) expect(follow).toThrow('contradict');
        else {
          expect(read).toEqual(rulings);
          expect(follow).not.toThrow();
        }
      }),
      { numRuns: 300 },
    );
  });

  it('keep their groups in another key, and their chords where it has them', () => {
    const rulings = readRulings(['1-3 ii7', '4 V7'], 6, key) as Ruling[];
    const moved = parseKey('Eb major')!;
    expect(writeRulings(rulingsIn(moved, rulings), moved)).toEqual(['1-3', '4 V7'].slice(0, 1));
    expect(rulingsIn(key, rulings)).toEqual(rulings);
    expect(() => writeRulings(rulings, moved)).toThrow('Cm7 is no chord of Eb major');
  });
});
