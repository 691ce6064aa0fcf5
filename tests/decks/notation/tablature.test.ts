import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTablature } from '../../../src/decks/notation/tablature-reader.ts';
import { labelsOf, writeTablature } from '../../../src/decks/notation/tablature.ts';
import { GUITAR, INSTRUMENTS } from '../../../src/neck/instrument.ts';
import type { Phrase } from '../../../src/theory/phrase.ts';
import { beats } from '../../../src/theory/rhythm.ts';
import { instruments, keys, phrases } from '../arbitrary.ts';

const context = {
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' } as const,
  length: beats(1, 3),
  tempo: 72,
  beatsPerBar: 4,
};

const read = (text: string, other: object = {}) => readTablature(text, { ...context, ...other });

function phraseOf(text: string, other: object = {}): Phrase {
  const result = read(text, other);
  if ('faults' in result) throw new Error(JSON.stringify(result.faults));
  return result.phrase;
}

/** `MIDI@beat string/fret`, with the articulation. */
const notesOf = (phrase: Phrase) =>
  phrase.notes.map(
    ({ midi, at, place, articulation = '' }) =>
      `${midi}@${at.n}/${at.d} ${place?.string}/${place?.fret} ${articulation}`,
  );

const faultsOf = (text: string, other: object = {}) => {
  const result = read(text, other);
  return 'faults' in result
    ? result.faults.map(({ line, column, sentence }) => `${line}:${column} ${sentence}`)
    : [];
};

const SIX = `
e |--------------------|
B |--------------------|
G |---------3-------7--|
D |-------3---3h5------|
A |-----5--------------|
E |-6------------------|
`;

describe('plain text tablature', () => {
  it('takes a German H, a low e and numbered strings for the names they are', () => {
    const german = SIX.replace('B |', 'H |').replace('E |', 'e |');
    const numbered = SIX.replace('e |', 'e1|').replace('B |', 'h2|');
    for (const text of [german, numbered])
      expect(notesOf(phraseOf(text))).toEqual(notesOf(phraseOf(SIX)));
    expect(faultsOf(SIX.replace('B |', 'Bb|'))[0]).toBe(
      '3:1 This line is named Bb, but string 2 of the guitar is tuned to B: string 1 goes on top; choose the instrument that fits.',
    );
  });

  it('reads back to the phrase it was written from', () => {
    const placed = fc.tuple(instruments, keys).chain(([instrument, key]) =>
      fc.record({
        instrument: fc.constant(instrument),
        key: fc.constant(key),
        phrase: phrases(instrument, key, true),
      }),
    );
    fc.assert(
      fc.property(placed, ({ instrument, key, phrase }) => {
        const text = writeTablature(phrase, instrument);
        expect(read(text, { instrument, key })).toEqual({ phrase, remarks: [] });
        for (const line of text.split('\n')) expect(line.length).toBeLessThan(110);
      }),
    );
  });

  it('is read in the order of the columns, each note of the chosen length', () => {
    expect(notesOf(phraseOf(SIX))).toEqual([
      '46@0/1 6/6 ',
      '50@1/3 5/5 ',
      '53@2/3 4/3 ',
      '58@1/1 3/3 ',
      '53@4/3 4/3 ',
      '55@5/3 4/5 hammer-on',
      '62@2/1 3/7 ',
    ]);
    expect(phraseOf(SIX, { length: beats(1, 2) }).notes[3]?.at).toEqual(beats(3, 2));
  });

  it('is spelled as the key spells it, and given the tempo it states', () => {
    expect(phraseOf(SIX).notes.map(({ name }) => name)).toEqual([
      'Bb',
      'D',
      'F',
      'Bb',
      'F',
      'G',
      'D',
    ]);
    expect(phraseOf(`tempo 96\n${SIX}`).tempo).toBe(96);
    expect(phraseOf(SIX).tempo).toBe(72);
  });

  it('is found in a message, without names and with other marks', () => {
    const text = `Hi Jo, here it is:\r\n\r\nBb       Eb\r\n${SIX.trim()
      .replace(/^. /gm, '')
      .replace('3h5', '3/5')
      .replaceAll('\n', '\r\n')}\r\n\r\nSee you - Tuesday!`;
    expect(phraseOf(text).notes[5]?.articulation).toBe('slide');
    expect(phraseOf(text).notes).toHaveLength(7);
  });

  it('is read for any number of strings', () => {
    const ukulele = INSTRUMENTS.find(({ name }) => name === 'ukulele');
    const text = 'A|-0-----\nE|---1---\nC|-----0-\ng|-------';
    expect(notesOf(phraseOf(text, { instrument: ukulele }))).toEqual([
      '69@0/1 1/0 ',
      '65@1/3 2/1 ',
      '60@2/3 3/0 ',
    ]);
  });

  it('tells what it leaves out', () => {
    const result = read(SIX.replace('-7--', '-7~\\').replace('|-6-', '|-6/'));
    expect('remarks' in result && result.remarks).toEqual(
      [
        {
          line: 7,
          column: 6,
          sentence: expect.stringContaining('This slide has no note beside it'),
        },
        { line: 4, column: 22, sentence: 'Vibrato (~) is not kept.' },
        {
          line: 4,
          column: 23,
          sentence: expect.stringContaining('This slide has no note beside it'),
        },
      ].toSorted((a, b) => a.line - b.line),
    );
  });

  it('are read across dashes where the notes follow each other on one string', () => {
    expect(phraseOf(SIX.replace('3h5--', '3h-5-')).notes[5]?.articulation).toBe('hammer-on');
  });

  it('tells of inner bars that the notes do not fill', () => {
    const row = '|-1-|-1-1-|-1-';
    const empty = row.replace(/\d/g, '-');
    const text = [`${row}|`, ...Array.from({ length: 5 }, () => `${empty}|`)].join('\n');
    const result = read(text, { length: beats(1) });
    expect('remarks' in result && result.remarks).toEqual([
      {
        line: 1,
        column: 6,
        sentence: 'Bar 2 has 2 notes of 1 beat each: that makes 2 beats, not 4.',
      },
    ]);
  });

  it('offers the upper notes where some stand under others', () => {
    const text = SIX.replace('|-----5', '|-4---5');
    const result = read(text);
    expect('upper' in result && result.upper).toBeTruthy();
    const kept = phraseOf('upper' in result ? result.upper! : '');
    const before = phraseOf(SIX);
    expect(kept.notes).toHaveLength(before.notes.length);
    // Of the two the higher one is kept, on whichever string it lies.
    const double = 'e|-------|\nB|-3-----|\nG|-12-5--|\nD|-10----|\nA|-------|\nE|-------|';
    const chord = read(double);
    const midis = phraseOf('upper' in chord ? chord.upper! : '').notes.map(({ midi }) => midi);
    expect(midis).toEqual([67, 60]);
    expect('upper' in read(SIX.replace('-7-', '-x-'))).toBe(false);
  });

  it.each([
    [
      'a line a dash short',
      SIX.replace('|---------3-------7--|', '|---------3------7--|'),
      '4:23 This line is out of step',
    ],
    [
      'a bar line out of place',
      SIX.replace('|-6-----------', '|-6-|---------'),
      '7:7 This line is out of step',
    ],
    ['a letter that means nothing', SIX.replace('-7-', '-x-'), '4:21 “x” cannot be read here'],
    [
      'a fret beyond the neck',
      SIX.replace('-7-', '-57'),
      '4:21 There is no fret 57 (the last is 22)',
    ],
    [
      'two notes at once',
      SIX.replace('|-----5', '|-4---5'),
      '7:5 This note stands under the one on string 5',
    ],
    ['a line too few', SIX.replace('A |-----5--------------|\n', ''), '2:1 Only 5 of 6 lines'],
    [
      'a sentence between the strings',
      SIX.replace('D |', 'now slowly\nD |'),
      '5:1 This line cannot be read as tablature',
    ],
    [
      'strings upside down',
      SIX.trim().split('\n').toReversed().join('\n'),
      '2:1 This line is named A, but',
    ],
    ['the wrong instrument', SIX.replace('D |', 'C |'), '5:1 This line is named C, but string 4'],
    [
      'a length over no note',
      `beats  1/3\n${SIX.trim()}`,
      '1:8 Write a length in beats over the first digit',
    ],
    ['a length that is none', `beats x\n${SIX.trim()}`, '1:7 Write a length in beats'],
    ['no tablature', 'Can we move Tuesday?', '1:1 There is no tablature here'],
    ['a novel', 'x'.repeat(20_001), '1:1 This is longer than a phrase can be'],
  ])('points at %s', (_, text, fault) => {
    expect(faultsOf(text)[0]).toContain(fault);
  });

  it('points at no other line than the one that is wrong', () => {
    expect(faultsOf(SIX.replace('|---------3-------7--|', '|---------3------7--|'))).toHaveLength(
      1,
    );
    expect(faultsOf(SIX.replace('D |', 'now slowly\nD |'))).toHaveLength(1);
  });

  it('never throws, whatever is pasted', () => {
    const signs = fc.string({
      unit: fc.constantFrom(...'eBGDA|-~hp/\\0123579 \nx>'),
      maxLength: 200,
    });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string()), fc.nat({ max: 110 }), (text, at) => {
        const broken = SIX.slice(0, at) + text + SIX.slice(at + text.length);
        for (const result of [read(text), read(broken)]) {
          expect(
            'faults' in result ? result.faults.length : result.phrase.notes.length,
          ).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('is not written for notes without places', () => {
    const { notes, tempo } = phraseOf(SIX);
    const { place: _, ...lost } = notes[1]!;
    expect(() => writeTablature({ tempo, notes: [notes[0]!, lost] }, GUITAR)).toThrow(
      'Note 2 has no place on the neck: find places first.',
    );
  });
});

// The highest string on top; where two are called alike, the higher in a small letter.
it.each([
  ['guitar', 'e B G D A E'],
  ['drop D', 'E B G d A D'],
  ['open G', 'd B g D G D'],
  ['DADGAD', 'd a G D A D'],
  ['half step down', 'eb Bb Gb Db Ab Eb'],
  ['bass', 'G D A E'],
  ['ukulele', 'A E C G'],
])('the lines of a %s are called %s', (name, labels) => {
  expect(labelsOf(INSTRUMENTS.find((one) => one.name === name)!).join(' ')).toBe(labels);
});

it('a tempo is read from 30 to 240', () => {
  const tab = ['e|-1-', 'B|---', 'G|---', 'D|---', 'A|---', 'E|---'].join('\n');
  const tempoIn = (line: string) => phraseOf(`${line}\n\n${tab}`).tempo;
  expect(['tempo 30', 'Tempo 240', ' tempo  84 '].map(tempoIn)).toEqual([30, 240, 84]);
  expect(['tempo 29', 'tempo 241', 'tempo 8', 'tempo 1000', 'at tempo 90'].map(tempoIn)).toEqual([
    72, 72, 72, 72, 72,
  ]);
});
