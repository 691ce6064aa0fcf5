import { describe, expect, it } from 'vitest';
import {
  analyse,
  explainedBy,
  readGroups,
  possibleEmbellishments,
  SURE_READING,
} from '../../src/theory/analysis/analysis.ts';
import { motion } from '../../src/theory/analysis/motion.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { finished } from '../../src/theory/incremental.ts';
import type { Key } from '../../src/theory/key.ts';
import { parsePitch } from '../../src/theory/note.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { read } from './analysis-phrases.ts';

const inBFlat = (...groups: string[]) =>
  read({ name: '', key: 'Bb major', tonic: 'Bb3', unit: '1/3', groups });
const inGMinor = (...groups: string[]) =>
  read({ name: '', key: 'G minor', tonic: 'G3', unit: '1/3', groups });
const key: Key = { tonic: 'Bb', scale: 'major' };
const two = inBFlat('I: 1 3 5 8 5 3', 'IV: 4 6 8 11 8 6').phrase;
const symbols = (phrase: typeof two, of = key, options = {}) =>
  analyse(phrase, of, options).groups.map(({ chord, from, to }) => `${chord.symbol} ${from}-${to}`);

describe('the analysis of a phrase', () => {
  it('cuts it into arpeggios of the key', () =>
    expect(symbols(two)).toEqual(['Bb 0-6', 'Eb 6-12']));

  it('knows the chords that minor borrows from harmonic minor: V7, V7♭9 and vii°7', () => {
    const of: Key = { tonic: 'G', scale: 'minor' };
    const { phrase } = inGMinor('i: 1 3 5 8 5 3', 'V7: 5 #7 9 11 9 #7', 'i: 8 5 3 1*3');
    expect(symbols(phrase, of)).toEqual(['Gm 0-6', 'D7 6-12', 'Gm 12-16']);
    const note = analyse(phrase, of).notes[7]!;
    expect(note).toEqual({ name: 'F#', degree: 7, inKey: false, member: 3, embellishment: null });
    const nine = inGMinor('iv9: 4 6 8 10 12 10', 'V9: 5 #7 9 11 13 11', 'i: 8*6').phrase;
    expect(symbols(nine, of)).toEqual(['Cm9 0-6', 'D7b9 6-12', 'Gm 12-13']);
    const seven = inGMinor('i: 1 3 5 8 5 3', 'vii°7: #7 9 11 13 11 9', 'i: 8 5 3 1*3').phrase;
    expect(symbols(seven, of)[1]).toBe('F#dim7 6-12');
  });

  it.each([
    ['passing', 'I: 1 2~p 3 5 8 5'],
    ['neighbour', 'I: 1 3 5 6~n 5 3'],
    ['double neighbour', 'I: 1 3 5 6~d 4~d 5'],
    ['appoggiatura', 'I: 1 3 5 9~a 8 5'],
  ])('names a %s tone', (kind, group) => {
    const { phrase, embellishments } = inBFlat(group, 'IV: 4 6 8 11 8 6', 'I: 1*6');
    const found = analyse(phrase, key).notes.map(({ embellishment }) => embellishment);
    expect(found).toEqual(embellishments);
    expect(found).toContain(kind);
  });

  it('names an anticipation and a suspension by where they stand in their group', () => {
    const early = inBFlat('I: 1 3 5 8 5 4~t', 'IV: 4 6 8 11 8 6');
    expect(analyse(early.phrase, key).notes[5]!.embellishment).toBe('anticipation');
    const late = inBFlat('I: 1 3 5 8 10 8', 'V: 8~s 7 5 2 5 7', 'I: 8*6');
    expect(analyse(late.phrase, key).notes[6]!.embellishment).toBe('suspension');
  });

  it('takes no leap on in the same direction for an escape, and no appoggiatura without resolution', () => {
    expect(possibleEmbellishments(inBFlat('I: 1 2 5').phrase, key, 1)).toEqual([]);
    expect(possibleEmbellishments(inBFlat('I: 5 6 3').phrase, key, 1)).toEqual(['escape']);
    const { phrase } = inBFlat('V7: 7 5 2 5 7 9 11 10~p 9', 'I: 8*3');
    expect(symbols(phrase, key, { bar: 3 })).toEqual(['F7 0-9', 'Bb 9-10']);
  });

  it('hears one seventh chord, not two triads, where a figure comes back on other steps', () => {
    const { phrase } = inBFlat('ii7: 8 6 4 2 4 6', 'iii7: 9 7 5 3 5 7', 'IV7: 10 8 6 4 6 8');
    expect(symbols(phrase)).toEqual(['Cm7 0-6', 'Dm7 6-12', 'Ebmaj7 12-18']);
  });

  it('keeps an arpeggio whole that goes on in another octave', () => {
    const down = inBFlat('I: 8 5 3', 'ii9: 10 8 13 11 9 11', 'V: 9 7 5', 'I: 8*3').phrase;
    expect(symbols(down)).toEqual(['Bb 0-3', 'Cm9 3-9', 'F 9-12', 'Bb 12-13']);
    const up = inBFlat('I: 1 5 3', 'V9: 5 7 2 4 6 4', 'I: 3 5 8', 'I: 8*3').phrase;
    expect(symbols(up)).toContain('F9 3-9');
  });

  it('cuts no long arpeggio in two because a move or two of one half come back in the other', () => {
    const down = ['I: 1 3 5 8', 'V9: 13 11 9 7 5 7 9 5', 'I: 8 10 8 5'];
    const groups = [...down, 'V9: 5 7 9 11 13 11 9 11', 'I: 8*4'];
    const { phrase } = read({ name: '', key: 'Bb major', tonic: 'Bb3', unit: '1/4', groups });
    expect(symbols(phrase)).toEqual(['Bb 0-4', 'F9 4-12', 'Bb 12-16', 'F9 16-24', 'Bb 24-25']);
  });

  it('offers the arpeggio that it did not choose, however the notes were cut', () => {
    // The last three notes go with what is before them, or with what comes after.
    const { phrase } = inBFlat('I: 1 3 5', 'IV: 8 6 4', 'ii11: 2 4 6 8 10 12 10 8 6', 'V: 5 7 9');
    const { groups } = analyse(phrase, key);
    const told = groups.flatMap(({ regrouped }) =>
      regrouped.map(({ chord, from, to }) => `${chord.symbol} ${from}-${to}`),
    );
    expect(groups.map(({ from }) => from)).not.toContain(6);
    expect(told).toContain('Cm11 6-15');
    for (const { from, to, confidence, regrouped } of groups) {
      expect(regrouped.length).toBe(4);
      for (const other of regrouped) {
        expect([other.from, other.to]).not.toEqual([from, to]);
        expect(other.from < to && from < other.to).toBe(true);
        expect(other.confidence).toBeLessThanOrEqual(confidence + 1e-9);
      }
    }
  });

  it('follows groups that are even but go against the bar', () => {
    const groups = ['I: 8 5 3', 'vi: 6 8 10', 'ii: 9 6 4', 'V: 5 7 9', 'I: 8 5 3', 'IV: 4 6 8'];
    const { phrase } = read({ name: '', key: 'Bb major', tonic: 'Bb3', unit: '1/2', groups });
    const cuts = analyse(phrase, key).groups.map(({ from }) => from);
    expect(cuts).toEqual([0, 3, 6, 9, 12, 15]);
  });

  it('lets an upbeat of less than a beat belong to what it leads to', () => {
    const { phrase } = inBFlat(
      'I: 5 3 1 3 5 8 5 3',
      'IV: 4 6 8 11 8 6',
      'V: 7 5 7 9 12 9',
      'I: 8*6',
    );
    expect(symbols(phrase, key, { pickup: beats(2, 3) })[0]).toBe('Bb 0-8');
  });

  it('lets the last note close its arpeggio on the bar line', () => {
    const { phrase } = inBFlat('I: 1 3 5 8 5 3', 'IV: 4 6 8 11 8 6', 'I: 10 8 5 8 5 3 1*6');
    expect(symbols(phrase, key, { bar: 2 })).toEqual(['Bb 0-6', 'Eb 6-12', 'Bb 12-19']);
  });

  it('says how sure it is, and what else it could be', () => {
    for (const { confidence, alternatives, chord } of analyse(two, key).groups) {
      expect(confidence).toBeGreaterThan(SURE_READING);
      expect(alternatives.length).toBe(2);
      const sum = alternatives.reduce((all, other) => all + other.confidence, confidence);
      expect(sum).toBeLessThanOrEqual(1 + 1e-9);
      expect(alternatives.map((other) => other.chord)).not.toContain(chord);
    }
  });

  it('is unsure of two notes that many chords share', () =>
    expect(analyse(inBFlat('I: 5 3').phrase, key).groups[0]!.confidence).toBeLessThan(
      SURE_READING,
    ));

  it('puts every note in one group', () => {
    const { groups, notes } = analyse(two, key);
    expect(notes.length).toBe(two.notes.length);
    expect(groups.map(({ from }) => from)).toEqual([0, ...groups.slice(0, -1).map(({ to }) => to)]);
    expect(groups.at(-1)!.to).toBe(two.notes.length);
  });

  it('takes a scale of five notes by the scale that it is part of', () =>
    expect(symbols(two, { tonic: 'Bb', scale: 'major pentatonic' })).toEqual(symbols(two)));

  it('reads the same groups where nothing else is asked', () => {
    for (const rulings of [[], [{ span: [0, 4] as const }], [{ note: 3, embellishment: null }]]) {
      const whole = analyse(two, key, { rulings }).groups;
      expect(finished(readGroups(two, key, { rulings }))).toEqual(
        whole.map(({ from, to, chord, confidence }) => ({ from, to, chord, confidence })),
      );
    }
    expect(finished(readGroups({ notes: [], tempo: 80 }, key))).toEqual([]);
  });

  it('has nothing to say of an empty phrase', () =>
    expect(analyse({ notes: [], tempo: 80 }, key)).toEqual({ groups: [], notes: [] }));
});

describe('rulings', () => {
  it('fix a span', () =>
    expect(symbols(two, key, { rulings: [{ span: [0, 3] }] })[0]).toBe('Bb 0-3'));
  it('fix a chord of a span, one outside the key too', () => {
    const chord = chordOn({ tonic: 'Eb', scale: 'mixolydian' }, 1, 'seventh');
    const rulings = [{ span: [6, 12] as const, chord }];
    const group = analyse(two, key, { rulings }).groups[1]!;
    expect(group).toEqual({
      from: 6,
      to: 12,
      chord,
      confidence: 1,
      alternatives: [],
      joined: null,
      regrouped: [],
    });
  });
  it('fix the chord around a note', () => {
    const chord = chordOn(key, 6, 'seventh');
    const { groups } = analyse(two, key, { rulings: [{ note: 1, chord }] });
    expect(groups.find(({ from, to }) => from <= 1 && 1 < to)!.chord).toBe(chord);
  });
  it('say that a note only embellishes, and of what kind', () => {
    const { phrase } = inBFlat('I: 1 3 5 7 8 5');
    const found = analyse(phrase, key);
    expect(found.groups[0]!.chord.symbol).toBe('Bbmaj7');
    const told = analyse(phrase, key, { rulings: [{ note: 3, embellishment: 'neighbour' }] });
    expect(told.groups.map(({ chord }) => chord.symbol)).toEqual(['Bb']);
    expect(told.notes[3]).toMatchObject({ member: null, embellishment: 'neighbour' });
  });
  it('say that a note is one of its chord', () => {
    const { phrase } = inBFlat('I: 1 3 4~p 5 3 1');
    expect(analyse(phrase, key).notes[2]!.embellishment).toBe('passing');
    const told = analyse(phrase, key, { rulings: [{ note: 2, embellishment: null }] });
    expect(told.notes[2]!.member).not.toBeNull();
    expect(told.notes[2]!.embellishment).toBeNull();
  });
  it('of a chord stand before those of what is in it', () => {
    const { phrase } = inBFlat('I: 1 3 4~p 5 3 1');
    const chord = chordOn(key, 1, 'triad');
    const rulings = [
      { span: [0, 6] as const, chord },
      { note: 2, embellishment: null },
    ] as const;
    const told = analyse(phrase, key, { rulings });
    expect(told.groups.map((group) => group.chord)).toEqual([chord]);
    expect(told.notes[2]).toMatchObject({ member: null, embellishment: 'passing' });
  });
  it('can name the kinds that a note’s moves allow', () => {
    const { phrase } = inBFlat('I: 1 3 4~p 5 3 1');
    expect(possibleEmbellishments(phrase, key, 2)).toEqual(['passing']);
    expect(possibleEmbellishments(phrase, key, 4)).toEqual([]);
    expect(possibleEmbellishments(phrase, key, 3)).toEqual(['escape']);
  });
  it('that speak of no notes, or against each other, are refused with what to do', () => {
    const analysed = (rulings: readonly { span: [number, number] }[]) => () =>
      analyse(two, key, { rulings });
    expect(analysed([{ span: [3, 20] }])).toThrow('take notes 0 to 11');
    expect(analysed([{ span: [0, 4] }, { span: [2, 6] }])).toThrow('contradict each other');
  });
});

describe('bars', () => {
  const { phrase } = read({
    name: '',
    key: 'Bb major',
    tonic: 'Bb3',
    unit: '1/3',
    pickup: '1',
    groups: ['V: 5 7 9', 'I: 8 5 3 5 8 10', 'IV: 11 8 6 4 6 8', 'I: 8*6'],
  });
  const cut = ['F 0-3', 'Bb 3-9', 'Eb 9-15', 'Bb 15-16'];
  it('may begin after a pickup', () =>
    expect(symbols(phrase, key, { pickup: beats(1) })).toEqual(cut));
  it('may be unknown', () => expect(symbols(phrase, key, { pickup: null })).toEqual(cut));
});

describe('motion', () => {
  it('counts what leaps and what steps', () => {
    const facts = motion(inBFlat('I: 1 3 5 6~n 5 5').phrase, key);
    expect(facts).toEqual({ steps: 2, leaps: 2, repeats: 1, leaping: 0.4, range: 9 });
  });
  it('takes the augmented second of harmonic minor for a step, a minor third for a leap', () => {
    const of: Key = { tonic: 'G', scale: 'harmonic minor' };
    const { phrase } = read({
      name: '',
      key: 'G harmonic minor',
      tonic: 'G3',
      unit: '1/3',
      groups: ['i: 6 7 8 6'],
    });
    expect(motion(phrase, of)).toMatchObject({ steps: 2, leaps: 1 });
  });
  it('has nothing to say of an empty phrase', () =>
    expect(motion({ notes: [], tempo: 80 }, key)).toEqual({
      steps: 0,
      leaps: 0,
      repeats: 0,
      leaping: 0,
      range: 0,
    }));
});

describe('a phrase whose groups are known', () => {
  it('is explained as the analysis explains it that finds them', () => {
    for (const text of ['Bb3 D4 F4 Eb4 G4 Bb4 A4 F4 C4 D4 Bb3', 'C4 D4 Eb4 G4 F4 A4 C5 Bb4']) {
      const notes = text.split(' ').map((pitch, i) => {
        const { name, midi } = parsePitch(pitch)!;
        return { name, midi, at: beats(i, 3), length: beats(1, 3) };
      });
      const found = analyse({ tempo: 60, notes }, { tonic: 'Bb', scale: 'major' });
      const known = explainedBy(
        { tempo: 60, notes },
        { tonic: 'Bb', scale: 'major' },
        found.groups,
      );
      expect(known.notes).toEqual(found.notes);
      expect(known.groups.map(({ from, to, chord }) => [from, to, chord])).toEqual(
        found.groups.map(({ from, to, chord }) => [from, to, chord]),
      );
    }
  });
});
