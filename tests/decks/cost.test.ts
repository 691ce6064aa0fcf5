/** Lessons made to cost a phone too much, or that cannot be asked: refused where they are read, with what to change. */
import { describe, expect, it } from 'vitest';
import { itemsOf, KINDS } from '../../src/cards/index.ts';
import { MOST } from '../../src/decks/deck.ts';
import { readDeck } from '../../src/decks/document.ts';
import { spell } from '../../src/theory/spell.ts';
import { octaveOf } from '../../src/theory/note.ts';

const base = { version: 1, title: 'Tuesday', key: 'Bb major' };

const faultOf = (document: unknown) => {
  const read = readDeck(document);
  return 'fault' in read ? read.fault : null;
};

const SIZES = ['triad', 'seventh', 'ninth', 'eleventh', 'thirteenth'];
const STRINGS = ['6-5', '5-4', '4-3', '3-2', '2-1', '6-4', '5-3', '4-2', '3-1', '6-3'];

const noteAtMidi = (midi: number) => {
  const name = spell({ tonic: 'Bb', scale: 'major' }, midi);
  return `${name}${octaveOf(name, midi)}`;
};

describe('a lesson that costs too much', () => {
  it('asks for more arpeggios than a lesson takes', () => {
    const drill = { kind: 'spot', sizes: SIZES, strings: STRINGS, frets: [0, 22] };
    expect(faultOf({ ...base, drills: [drill] })).toBeNull();
    expect(faultOf({ ...base, drills: [drill, { ...drill, kind: 'place' }] })).toBe(
      'Drills: together they ask for 700 arpeggios, and a lesson takes 600: choose fewer strings, chords or degrees, or make two lessons.',
    );
  });

  it('asks for more figures to be kept even than a lesson takes, those of its phrases among them', () => {
    const rhythm = (length: number) => ({ tempo: 72, notes: ['Bb3', `D4 for 1/${length}`] });
    const phrases = Array.from({ length: 16 }, (_, k) => rhythm(k + 2));
    const tempos = (from: number, count: number) =>
      Array.from({ length: count }, (_, k) => from + k);
    const pulse = (figures: string[], from: number, count = 20) => ({
      kind: 'pulse',
      figures,
      tempos: tempos(from, count),
      clicks: ['beat', 'bar', 'gone'],
    });
    const all = pulse(['quarters', 'eighths', 'triplets', 'phrase'], 60);
    const faultWith = (more: object) =>
      faultOf({ ...base, version: 3, phrases, drills: [all, more] });
    // 19 × 20 × 3 are 1140, and 20 × 3 more the most.
    expect(faultWith(pulse(['eighths'], 100))).toBeNull();
    expect(faultWith(pulse(['eighths', 'triplets'], 100, 11))).toBe(
      'Drills: together they ask for 1206 figures, and a lesson takes 1200: choose fewer tempos, or make two lessons.',
    );
  });

  const phrase = (notes: number) => ({
    tempo: 72,
    notes: Array.from({ length: notes }, (_, k) => ['Bb3', 'D4', 'F4', 'Eb4'][k % 4]!),
  });

  it('drills phrases of more notes than a lesson takes, all or some of them', () => {
    const placed = (notes: number) => ({
      tempo: 72,
      notes: Array.from({ length: notes }, () => 'Bb3 on 3/3'),
    });
    const phrases = [placed(200), placed(100), placed(1)];
    const drilling = (...numbers: number[]) =>
      faultOf({ ...base, phrases, drills: [{ kind: 'outline', phrases: numbers }] });
    expect(drilling(1, 2)).toBeNull();
    expect(drilling(1, 2, 3)).toBe(
      'Phrases: those that are drilled come to 301 notes and a lesson takes 300: drill fewer of them, or make two lessons.',
    );
    expect(faultOf({ ...base, phrases, drills: [{ kind: 'vary' }] })).toMatch(/301 notes/);
    expect(faultOf({ ...base, phrases, drills: [] })).toBeNull();
  });

  it('drills phrases for whose notes places have to be found, which costs as much again', () => {
    const drilling = (...lengths: number[]) =>
      faultOf({ ...base, phrases: lengths.map(phrase), drills: [{ kind: 'outline' }] });
    expect(drilling(150)).toBeNull();
    expect(drilling(75, 76)).toBe(
      'Phrases: those that are drilled come to 302 notes, where those of phrases without all places count twice, and a lesson takes 300: give them places, drill fewer of them, or make two lessons.',
    );
  });

  it('counts a phrase twice that has places for some of its notes only', () => {
    const placed = { tempo: 72, notes: Array.from({ length: 75 }, () => 'Bb3 on 3/3') };
    const partly = { tempo: 72, notes: ['D4', ...placed.notes.slice(1)] };
    const drilling = (phrases: readonly object[]) =>
      faultOf({ ...base, phrases, drills: [{ kind: 'outline' }] });
    expect(drilling([placed, placed, placed, placed])).toBeNull();
    expect(drilling([partly, placed, placed])).toBeNull();
    expect(drilling([partly, placed, placed, { tempo: 72, notes: ['D4'] }])).toBe(
      'Phrases: those that are drilled come to 302 notes, where those of phrases without all places count twice, and a lesson takes 300: give them places, drill fewer of them, or make two lessons.',
    );
  });

  const tuned = (...tuning: string[]) => ({
    instrument: { name: 'own tuning', tuning, frets: 24, scaleLength: 648 },
  });

  it('has notes that too many strings sound, unless they have places', () => {
    const alike = tuned(...Array.from({ length: 9 }, () => 'A3'));
    const drilling = (notes: number, on = '') => {
      const phrases = [{ tempo: 72, notes: Array.from({ length: notes }, () => `D4${on}`) }];
      return faultOf({ ...base, ...alike, phrases, drills: [{ kind: 'outline' }] });
    };
    // 66 × 9² are 5346.
    expect(drilling(66)).toBeNull();
    expect(drilling(67)).toBe('Phrases: too many strings sound the same notes: give them places.');
    expect(drilling(200, ' on 9/5')).toBeNull();
  });

  it('may have as many notes without places as any on a guitar of eight strings', () => {
    const eight = tuned('F#1', 'B1', 'E2', 'A2', 'D3', 'G3', 'B3', 'E4');
    for (let midi = 30; midi <= 88; midi++) {
      const notes = Array.from({ length: 150 }, () => noteAtMidi(midi));
      const phrases = [{ tempo: 72, notes }];
      expect(faultOf({ ...base, ...eight, phrases, drills: [{ kind: 'outline' }] })).toBeNull();
    }
  });

  it('asks for so large an arpeggio on so many strings that thousands of shapes are looked through', () => {
    const asking = (size: string, strings: string, kind = 'spot') =>
      faultOf({
        ...base,
        ...(kind === 'play' && { version: 2 }),
        ...tuned('F#1', 'B1', 'E2', 'A2', 'D3', 'G3', 'B3', 'E4', 'A4'),
        drills: [
          {
            kind,
            sizes: [size],
            strings: [strings],
            frets: [0, 22],
            ...(kind === 'play' && { ways: ['up'] }),
          },
        ],
      });
    const fault = 'Drills: an arpeggio is too large for so many strings: choose fewer.';
    expect(asking('thirteenth', '7-6-5-4-3-2-1')).toBeNull();
    expect(asking('eleventh', '8-7-6-5-4-3-2-1')).toBeNull();
    expect(asking('ninth', '9-8-7-6-5-4-3-2-1')).toBeNull();
    for (const kind of ['spot', 'place', 'play']) {
      expect(asking('thirteenth', '8-7-6-5-4-3-2-1', kind)).toBe(fault);
      expect(asking('eleventh', '9-8-7-6-5-4-3-2-1', kind)).toBe(fault);
    }
  });

  it('rules on more notes than a lesson takes, and is refused before they are read', () => {
    const outline = Array.from({ length: 200 }, (_, k) => `${k + 1} chordal`);
    const ruled = { ...phrase(200), outline };
    const few = Array.from({ length: 4 }, () => ruled);
    expect(faultOf({ ...base, phrases: few, drills: [] })).toBeNull();
    const many = [...few, { ...phrase(1), outline: ['1 nonsense'] }];
    expect(faultOf({ ...base, phrases: many, drills: [] })).toMatch(
      new RegExp(`^Phrases: 801 entries .* takes ${MOST.rulings}`),
    );
  });
});

describe('a lesson to be heard', () => {
  const heard = (tuning: readonly string[], capo: number) => ({
    ...base,
    instrument: { name: 'four strings', tuning, frets: 12, scaleLength: 500, capo },
    drills: [{ kind: 'trace', sizes: SIZES, contours: ['up', 'down', 'turn', 'skip'], tempo: 72 }],
  });

  it('is refused where the instrument has not an octave left, with what to change', () => {
    expect(faultOf(heard(['C4', 'C4', 'C4', 'C4'], 11))).toBe(
      'Drill 1: the four strings spans 1 semitone above the capo, too few for a phrase to be heard: put the capo lower, or take this drill out.',
    );
  });

  // Strings 11 and 12 semitones from the lowest open one to the highest fret.
  it('spans an octave at least', () => {
    expect(faultOf(heard(['C4', 'C4', 'C4', 'C4'], 0))).toBeNull();
    expect(faultOf(heard(['C4', 'C4', 'C4', 'C4'], 1))).toContain('spans 11 semitones above');
  });

  it.each([
    [['C4', 'C4', 'C4', 'C4'], 0],
    [['G4', 'C4', 'E4', 'A4'], 8],
    [['A0', 'C1', 'D1', 'E1'], 6],
    [['E5', 'F5', 'F#5', 'G5'], 2],
  ])('can be asked whole on %s with the capo at %i, in any key', (tuning, capo) => {
    for (const key of ['C major', 'B major', 'Cb major', 'F# harmonic minor', 'Eb altered']) {
      const read = readDeck({ ...heard(tuning, capo), key });
      if ('fault' in read) throw new Error(read.fault);
      for (const item of itemsOf(read.deck)) {
        for (const seed of [2, 3]) expect(() => KINDS[item.kind].ask(item, seed)).not.toThrow();
      }
    }
  });
});
