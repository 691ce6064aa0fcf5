/** What a student reads of a free minute, word for word. */
import { describe, expect, it, vi } from 'vitest';
import { spreadWords } from '../../src/app/measured.ts';
import { factsOf, leftOutWords } from '../../src/app/minute/minuteWords.ts';
import type { MinuteTold } from '../../src/making/minute.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import type { Naming } from '../../src/theory/naming.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
const { figuresOf } = await import('../../src/app/minute/minutes.ts');

const key = parseKey('Bb major')!;
const NOTES = ['Bb 58', 'F 65', 'D 62', 'Eb 63', 'F 65', 'G 67', 'A 57', 'Bb 70'].map((note) => {
  const [name, midi] = note.split(' ');
  return { name, midi: Number(midi) };
});

const told = (change: object = {}, line: object = {}): MinuteTold =>
  ({
    line: {
      notes: 14,
      steps: 3,
      leaps: 9,
      repeats: 1,
      leaping: 9 / 13,
      run: { from: 2, steps: 3, direction: 'up' },
      pauses: [
        { after: 3, seconds: 2.04 },
        { after: 8, seconds: 1.25 },
      ],
      range: { low: 57, high: 70, semitones: 13 },
      ...line,
    },
    explained: { phrase: { notes: NOTES }, key },
    outlined: [
      { chord: chordOn(key, 2, 'seventh'), times: 1 },
      { chord: chordOn(key, 5, 'triad'), times: 2 },
      { chord: chordOn(key, 7, 'triad'), times: 3 },
    ],
    along: { reach: 142, frets: [1, 6] },
    even: { spread: 0.0234 },
    leftOut: 2,
    ...change,
  }) as unknown as MinuteTold;

const said = (minute: MinuteTold, naming: Naming = 'english') =>
  factsOf(minute, naming).map(({ name, value, detail }) => [name, value, detail]);

describe('the facts of a free minute', () => {
  it('are its leaps, its longest run, its arpeggios, its way along the neck, its time and its pauses', () => {
    expect(said(told())).toEqual([
      ['Leaps', '69 %', '9 leaps, 3 steps and 1 repeated note'],
      ['Longest run', '3 steps', 'up from D to G'],
      ['Arpeggios outlined', '3 of 7', 'ii7, V twice and vii° 3 times'],
      ['Along the neck', '14 cm', 'frets 1 to 6; A to B♭, 13 semitones'],
      ['In time', '± 23 ms', 'spread around the beat and its halves, thirds and quarters'],
      ['Pauses', '2', 'the longest 2.0 s'],
    ]);
  });

  it('name notes as the player reads them', () => {
    const [, run, , along] = said(told(), 'german');
    expect(run).toEqual(['Longest run', '3 steps', 'up from D to G']);
    expect(along).toEqual(['Along the neck', '14 cm', 'frets 1 to 6; A to B, 13 semitones']);
    expect(said(told(), 'degrees')[1]![2]).toBe('up from 3 to 6');
  });

  it('say where there is nothing', () => {
    const nothing = told(
      { outlined: [], along: null },
      { leaping: null, leaps: 0, steps: 0, repeats: 0, run: null, pauses: [] },
    );
    expect(said(nothing).map(([, value, detail]) => `${value}: ${detail}`)).toEqual([
      'no move: 0 leaps and 0 steps',
      'none: no move by step',
      'none: ',
      'not on it: A to B♭, 13 semitones',
      '± 23 ms: spread around the beat and its halves, thirds and quarters',
      'none: ',
    ]);
  });

  it.each([
    [[0, 0], 'open strings; A to B♭, 1 semitone'],
    [[5, 5], 'fret 5; A to B♭, 1 semitone'],
    [[2, 5], 'frets 2 to 5; A to B♭, 1 semitone'],
  ])('lie along frets %o', (frets, detail) => {
    const range = { low: 57, high: 70, semitones: 1 };
    expect(said(told({ along: { reach: 0, frets } }, { range }))[3]![2]).toBe(detail);
  });

  it('are no finer in time than can be heard', () => {
    expect([0.0059, 0.006, 0.0234, 0.1].map(spreadWords)).toEqual([
      'within 6 ms',
      '± 6 ms',
      '± 23 ms',
      '± 100 ms',
    ]);
  });

  it('say how many plucks of all were left out', () => {
    const words = (leftOut: number) => leftOutWords(told({ leftOut }));
    expect(words(0)).toBeNull();
    expect(words(1)).toMatch(/^1 of 15 plucks is left out: they rang into one another or could/);
    expect(words(6)).toMatch(
      /^6 of 20 plucks are left out: .* Moves to and from them are not counted\.$/,
    );
  });

  it('are kept as figures, each under its own name', () => {
    expect(figuresOf(told(), 72)).toEqual({
      tempo: 72,
      notes: 14,
      leftOut: 2,
      leaping: 9 / 13,
      run: 3,
      outlined: 3,
      reach: 142,
      spread: 0.0234,
      pauses: 2,
    });
    expect(figuresOf(told({ along: null }, { run: null }), 60)).toMatchObject({
      tempo: 60,
      run: 0,
      reach: null,
    });
  });
});
