import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deckId, readDeck, writeDeck } from '../../src/decks/document.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { KIND_NAMES } from '../../src/decks/kinds.ts';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import { fnv64 } from '../../src/decks/bytes.ts';
import { decks } from './arbitrary.ts';

const files = import.meta.glob<unknown>('../../drills/*.json', { eager: true, import: 'default' });

const plain = {
  version: 1,
  title: 'Tuesday class',
  key: 'Bb major',
  drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4', '4-3'], frets: [2, 10] }],
};

const hash = (text: string) => fnv64(new TextEncoder().encode(text)).toString(16);

const faultOf = (document: unknown) => {
  const read = readDeck(document);
  return 'fault' in read ? read.fault : null;
};

describe('the deck document', () => {
  // The first string is E4; a guitar has 22 frets, 20 of them behind a capo on the second.
  it.each([
    [0, 'D6 on 1/22', null],
    [0, 'Eb6 on 1/23', 'Phrase 1, note 1: string 1, fret 23 does not sound that note'],
    [2, 'D6 on 1/20', null],
    [2, 'Eb6 on 1/21', 'Phrase 1, note 1: string 1, fret 21 does not sound that note'],
    [2, 'E4 on 1/0', 'Phrase 1, note 1: string 1, open does not sound that note'],
  ])('has, with a capo on fret %i, notes to the last fret: %s', (capo, note, fault) => {
    const phrases = [{ tempo: 72, notes: [note] }];
    const found = faultOf({ ...plain, instrument: { name: 'guitar', capo }, phrases });
    expect(found?.split(':').slice(0, 2).join(':') ?? null).toBe(fault);
  });

  it('reads back to the deck it was written from', () => {
    fc.assert(
      fc.property(decks, (deck) => {
        const written: unknown = JSON.parse(JSON.stringify(writeDeck(deck)));
        expect(readDeck(written)).toEqual({ deck });
      }),
    );
  });

  it('takes what is left out to be usual', () => {
    expect(readDeck(plain)).toMatchObject({
      deck: {
        note: '',
        lessonDay: null,
        instrument: { name: 'guitar', tuning: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'], capo: 0 },
        key: { tonic: 'Bb', scale: 'major' },
        drills: [
          {
            degrees: [1, 2, 3, 4, 5, 6, 7],
            strings: [
              [5, 4],
              [4, 3],
            ],
          },
        ],
        phrases: [],
      },
    });
  });

  it('marks items of its own key and instrument', () => {
    const read = readDeck({ ...plain, marks: { 'spot 7 triad 5-4 2-8': 5 } });
    expect(read).toMatchObject({ deck: { marks: { 'spot:Bb major:7:triad:guitar:5-4:2-8': 5 } } });
    const { deck } = read as { deck: Deck };
    for (const id of [
      'spot:C major:7:triad:guitar:5-4:2-8',
      'spot:Bb major:7:triad:guitar+2:5-4:2-8',
      'spot:Bb major:7:triad:drop-D:5-4:2-8',
      'spot:Bb major:8:triad:guitar:5-4:2-8',
      'spot:Bb major:7:triad:guitar',
    ]) {
      const foreign: Deck = { ...deck, marks: { [id]: 5 } };
      expect(() => writeDeck(foreign), id).toThrow('is on no item of this lesson');
    }
  });

  it('marks items on seven degrees where the key has fewer notes, and has no drills of chords there', () => {
    const { drills: _, ...rest } = plain;
    const short = {
      ...rest,
      key: 'A minor pentatonic',
      drills: [{ kind: 'outline' }],
      phrases: [{ tempo: 72, notes: ['A3', 'C4', 'E4'] }],
    };
    const read = readDeck({ ...short, marks: { 'outline 1 triad i 4/7 3/5 2/5': 4 } });
    expect(read).toMatchObject({
      deck: { marks: { 'outline:A minor:1:triad:guitar:i 4/7 3/5 2/5': 4 } },
    });
    expect(readDeck({ ...short, drills: plain.drills })).toEqual({
      fault: expect.stringMatching(/^Drill 1: A minor pentatonic has fewer than seven .*"A minor"/),
    });
  });

  it('lets a listed instrument be changed in one respect', () => {
    const instrument = { name: 'guitar', capo: 2 };
    expect(readDeck({ ...plain, instrument })).toMatchObject({
      deck: { instrument: { name: 'guitar', capo: 2, frets: 22 } },
    });
  });

  const drill = (change: object) => ({ ...plain, drills: [{ ...plain.drills[0], ...change }] });
  const notes = (...texts: string[]) => ({ ...plain, phrases: [{ tempo: 72, notes: texts }] });
  const ruled = (...outline: string[]) => ({
    ...plain,
    phrases: [{ tempo: 72, notes: ['C4', 'Eb4'], outline }],
  });
  it.each([
    ['no lesson at all', null, 'The lesson: write it in curly brackets, { }.'],
    ['a missing key', { ...plain, key: undefined }, 'Key: '],
    [
      'a key that is none',
      { ...plain, key: 'H minor' },
      'Key: write the tonic and the scale, like "Bb major" or "G minor".',
    ],
    [
      'an unknown word',
      { ...plain, titel: 'x' },
      'Titel: take this out: nothing here has that name.',
    ],
    ['a missing word', { version: 1, title: '', drills: [] }, 'Key: add this.'],
    [
      'a title of 81 characters',
      { ...plain, title: 'x'.repeat(81) },
      'Title: shorten it to 80 characters.',
    ],
    [
      'a title with a control character',
      { ...plain, title: 'a\u0000b' },
      'Title: write it on one line, and take out letters that cannot be seen or that turn the line around.',
    ],
    [
      'a note of 501 characters',
      { ...plain, note: 'x'.repeat(501) },
      'Note: shorten it to 500 characters.',
    ],
    [
      'a day that no calendar has',
      { ...plain, lessonDay: '2026-02-30' },
      'LessonDay: write the day as year, month and day, like "2026-12-01".',
    ],
    [
      '21 drills',
      { ...plain, drills: Array.from({ length: 21 }, () => plain.drills[0]) },
      'Drills: keep it to 20 drills.',
    ],
    [
      '17 phrases',
      { ...plain, phrases: Array.from({ length: 17 }, () => ({ tempo: 60, notes: ['C4'] })) },
      'Phrases: keep it to 16 phrases.',
    ],
    [
      '201 notes',
      notes(...Array<string>(201).fill('C4')),
      'Phrase 1, notes: keep it to 200 notes, or make two phrases of it.',
    ],
    [
      'an unknown kind',
      drill({ kind: 'guess' }),
      `Drill 1, kind: give a kind: "spot", "place", "trace", ${KIND_NAMES.slice(3)
        .map((kind) => `"${kind}"`)
        .join(', ')}.`,
    ],
    [
      'an eighth degree',
      drill({ degrees: [8] }),
      'Drill 1, degree 1: give each degree as a whole number from 1 to 7.',
    ],
    [
      'no sizes',
      drill({ sizes: [] }),
      'Drill 1, sizes: list different chord sizes, like ["triad", "seventh"].',
    ],
    [
      'a size twice',
      drill({ sizes: ['triad', 'triad'] }),
      'Drill 1, sizes: list different chord sizes, like ["triad", "seventh"].',
    ],
    [
      'a string set going up',
      drill({ strings: ['4-5'] }),
      'Drill 1, string set 1: write a string set from the highest string number down, like "5-4".',
    ],
    [
      'a string that is not there',
      drill({ strings: ['7-6'] }),
      'Drill 1, strings: the guitar has 6 strings, so there is no string 7.',
    ],
    [
      'frets turned round',
      drill({ frets: [10, 2] }),
      'Drill 1, frets: give the lowest and the highest fret, like [2, 10].',
    ],
    [
      'frets beyond the neck',
      drill({ frets: [2, 24] }),
      'Drill 1, frets: the guitar ends at fret 22: end there or lower.',
    ],
    [
      'frets beyond the neck with a capo',
      { ...drill({ frets: [2, 20] }), instrument: { name: 'guitar', capo: 3 } },
      'Drill 1, frets: the guitar ends at fret 19 above the capo: end there or lower.',
    ],
    [
      'an instrument nobody knows',
      { ...plain, instrument: 'lute' },
      'Instrument: no listed instrument has that name: choose from "guitar"',
    ],
    [
      'an instrument of 3 strings',
      {
        ...plain,
        instrument: { name: 'x', tuning: ['C3', 'G3', 'D4'], frets: 17, scaleLength: 580 },
      },
      'Instrument: The tuning has 3 strings: it takes 4 to 9, with a space between.',
    ],
    [
      'a note that is none',
      notes('C4', 'X9'),
      'Phrase 1, notes: note 2, “X9”: begin with a note and its octave, C0 to C9, like "Bb3".',
    ],
    [
      'words in a note',
      notes('C4 loudly'),
      'Phrase 1, notes: note 1, “C4 loudly”: write it like "Bb3 for 1/3 on 3/3".',
    ],
    [
      'a note before the one before it',
      notes('C4 at 3', 'D4 at 2'),
      'Phrase 1, notes: note 2, “D4 at 2”: let it begin after the note before it.',
    ],
    [
      'a sliver of a beat',
      notes('C4 for 1/961'),
      'Phrase 1, notes: note 1, “C4 for 1/961”: give beats as a whole number or a fraction like 1/3, no finer than 1/960 and up to 4096.',
    ],
    [
      'a place that sounds another note',
      notes('C4 on 2/2'),
      'Phrase 1, note 1: string 2, fret 2 does not sound that note: change one of them, or leave the place out.',
    ],
    [
      'a phrase drill without phrases',
      { ...plain, drills: [{ kind: 'outline' }] },
      'Drill 1: “outline” drills the lesson’s phrases, and there is none: add a phrase, or take this drill out.',
    ],
    [
      'a drill of a phrase that is not there',
      { ...notes('C4'), drills: [{ kind: 'fill', phrases: [1, 3] }] },
      'Drill 1, phrases: the lesson has one phrase, so there is no phrase 3.',
    ],
    [
      'a drill of no phrases',
      { ...notes('C4'), drills: [{ kind: 'vary', phrases: [] }] },
      'Drill 1, phrases: list the numbers of different phrases, like [1, 3], or leave them out for all.',
    ],
    [
      'a group of notes that are not there',
      ruled('1-3 ii7'),
      'Phrase 1, outline: entry 1, “1-3 ii7”: the phrase has notes 1 to 2: write the first and the last of the group.',
    ],
    [
      'a chord that the key has not',
      ruled('1-2 II7'),
      'Phrase 1, outline: entry 1, “1-2 II7”: Bb major has no chord II7: take one of I, ii, iii,',
    ],
    [
      'a ruling that says nothing',
      ruled('1'),
      'Phrase 1, outline: entry 1, “1”: say which chord, like "4 V7", or "4 passing".',
    ],
    [
      'a ruling that is none',
      ruled('all of it'),
      'Phrase 1, outline: entry 1, “all of it”: write the notes and the chord, like "4-6 V7".',
    ],
    [
      'rulings that contradict each other',
      ruled('1-2 ii7', '2 V'),
      'Phrase 1, outline: two entries contradict each other on note 2: take one of them out.',
    ],
    [
      'a mark of 6',
      { ...plain, marks: { 'spot 7 triad 3-2 1-7': 6 } },
      'Marks, spot 7 triad 3-2 1-7: give each mark as a whole number from 1, easy, to 5, hard.',
    ],
    [
      'a mark on what is no item',
      { ...plain, marks: { 'spot 8 triad 3-2 1-7': 5 } },
      'name each item like "spot 7 triad 3-2 1-7" or "trace 5 triad turn 72".',
    ],
    [
      'a phrase’s rhythm without a phrase',
      {
        ...plain,
        phrases: [],
        drills: [{ kind: 'pulse', figures: ['phrase'], tempos: [60], clicks: ['beat'] }],
      },
      'Drill 1, figures: this lesson has no phrase: add one, or leave “phrase” out.',
    ],
    [
      'a newer version',
      { ...plain, version: DOCUMENT_VERSION + 1 },
      'This lesson was made with a newer version of Skipwise. Update this one, then open it again.',
    ],
  ])('says what to do about %s', (_, document, sentence) => {
    expect(faultOf(document)).toContain(sentence);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.anything(), (a, b, c) => {
        expect(faultOf(a)).not.toBe('');
        expect(faultOf({ ...plain, drills: [a, b], phrases: [{ tempo: 60, notes: [c] }] })).toMatch(
          /\.$/,
        );
        expect(
          faultOf({ ...plain, instrument: { name: 'x', tuning: [a], frets: b, capo: c } }),
        ).toMatch(/\.$/);
      }),
    );
  });

  it('is of the second version only where it asks for a kind of card that the first had not', () => {
    const play = { ...plain.drills[0]!, kind: 'play', ways: ['up'] };
    const versions = [plain.drills, [play], [...plain.drills, play]].map((drills) => {
      const read = readDeck({ ...plain, drills });
      return 'fault' in read ? read.fault : writeDeck(read.deck).version;
    });
    expect(versions).toEqual([1, 2, 2]);
  });

  it('is of the fourth version only where a drill says which shapes it asks for', () => {
    const drills = [{ ...plain.drills[0]!, shapes: 'root position' }];
    const read = readDeck({ ...plain, drills });
    expect('deck' in read && writeDeck(read.deck)).toMatchObject({ version: 4, drills });
    expect(faultOf({ ...plain, drills: [{ ...drills[0], shapes: 'any' }] })).toContain('shapes');
  });

  it.each([
    [
      'no way to play it',
      { kind: 'play', sizes: ['triad'], strings: ['5-4'], frets: [1, 5] },
      'Drill 1, ways: add this.',
    ],
    [
      'a way that there is not',
      { kind: 'play', sizes: ['triad'], strings: ['5-4'], frets: [1, 5], ways: ['round'] },
      'Drill 1, way 1: choose each way from "up", "down", "turn".',
    ],
    [
      'phrases where there are none',
      { kind: 'play', tempo: 60 },
      'Drill 1: “play” drills the lesson’s phrases, and there is none: add a phrase, or take this drill out.',
    ],
    [
      'phrases by no number',
      { kind: 'play', phrases: ['one'] },
      'Drill 1, phrase 1: give the number of each phrase as a whole number from 1 to 16.',
    ],
    [
      'an echo without contours',
      { kind: 'echo', sizes: ['triad'], tempo: 72 },
      'Drill 1, contours: add this.',
    ],
  ])('says of a drill with the guitar what to do about %s', (_, asked, sentence) => {
    expect(faultOf({ ...plain, drills: [asked] })).toBe(sentence);
  });

  it('reads every ready-made lesson', () => {
    expect(Object.keys(files).length).toBeGreaterThanOrEqual(3);
    for (const document of Object.values(files)) expect(faultOf(document)).toBeNull();
  });
});

describe('the name of a deck', () => {
  it('is the same for the same content and another for any other', () => {
    fc.assert(
      fc.property(decks, decks, (a, b) => {
        const same = JSON.stringify(writeDeck(a)) === JSON.stringify(writeDeck(b));
        expect(deckId(a)).toMatch(/^[0-9a-f]{16}$/);
        expect(deckId(a) === deckId(b)).toBe(same);
        expect(deckId({ ...a, title: `${a.title.slice(0, 79)}.` })).not.toBe(
          deckId({ ...a, title: '' }),
        );
      }),
    );
  });

  it('is a hash that gives the values its authors publish', () => {
    // G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV Non-Cryptographic Hash Algorithm", test vectors.
    expect(hash('')).toBe('cbf29ce484222325');
    expect(hash('a')).toBe('af63dc4c8601ec8c');
    expect(hash('foobar')).toBe('85944171f73967e8');
  });
});
