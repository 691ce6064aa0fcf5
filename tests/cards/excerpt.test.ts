import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readExcerpt, writeExcerpt } from '../../src/cards/excerpt/excerpt.ts';
import { excerptFrom, excerptRanges } from '../../src/cards/excerpt/items.ts';
import { pieceOf, type Piece } from '../../src/cards/excerpt/piece.ts';
import { itemOf, itemsOf } from '../../src/cards/index.ts';
import { outline as outlineKind } from '../../src/cards/outline/index.ts';
import { MOST, type Deck } from '../../src/decks/deck.ts';
import { kindsOf } from '../../src/decks/kinds.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { midiAt } from '../../src/neck/place.ts';
import { isReview } from '../../src/store/logLine.ts';
import { EMBELLISHMENTS } from '../../src/theory/analysis/embellishmentNames.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';
import { spell } from '../../src/theory/spell.ts';
import { beats, toNumber } from '../../src/theory/rhythm.ts';
import { reviewOf } from '../memory/reviews.ts';
import { phrases as arbitraryPhrases } from '../decks/arbitrary.ts';
import { FERRY, phraseDeck, STAIRS } from './phrases.ts';
import { itemIn, itemsIn } from './items.ts';

const FIELDS = { title: '', note: '', lessonDay: null };
const drills = kindsOf('phrase').map((kind) => ({ kind }));

/** Decks of one phrase in any of some keys on any instrument, every note with a place, some ruled on. */
const decks: fc.Arbitrary<Deck> = fc
  .tuple(
    fc.constantFrom(...INSTRUMENTS),
    fc
      .constantFrom('Bb major', 'G minor', 'F# dorian', 'C harmonic minor', 'E blues')
      .map((k) => parseKey(k)!),
  )
  .chain(([instrument, key]) =>
    fc
      .tuple(
        arbitraryPhrases(instrument, key, true),
        fc.uniqueArray(fc.nat({ max: 23 }), { maxLength: 3 }),
        fc.constantFrom(...EMBELLISHMENTS, null),
      )
      .map(([phrase, notes, embellishment]) => ({
        ...FIELDS,
        instrument,
        key,
        drills,
        phrases: [
          {
            ...phrase,
            rulings: notes.flatMap((note) =>
              note < phrase.notes.length ? { note, embellishment } : [],
            ),
          },
        ],
      })),
  );

describe('an excerpt of a phrase', () => {
  it('reads back from its words, its notes as high as they were and no longer than the phrase has them', () => {
    fc.assert(
      fc.property(decks, (deck) => {
        const piece = pieceOf(deck.phrases[0]!, deck)!;
        for (const [from, to] of excerptRanges(piece)) {
          const excerpt = excerptFrom(piece, from, to);
          expect(excerpt.groups.length).toBeLessThanOrEqual(4);
          expect(excerpt.notes.length).toBeLessThanOrEqual(16);
          const words = writeExcerpt(excerpt);
          const read = readExcerpt(words, deck.key, deck.instrument)!;
          expect(writeExcerpt(read)).toBe(words);
          expect(read.groups.map(({ chord }) => chord.symbol)).toEqual(
            excerpt.groups.map(({ chord }) => chord.symbol),
          );
          read.notes.forEach(({ midi, at, length, place }, i) => {
            const was = excerpt.notes[i]!;
            expect([midi, at, length, place]).toEqual([was.midi, was.at, was.length, was.place]);
            expect(midi).toBe(midiAt(deck.instrument, place));
            const next = read.notes[i + 1];
            if (next)
              expect(toNumber(at) + toNumber(length)).toBeLessThanOrEqual(toNumber(next.at) + 1e-9);
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  it('covers every group of a piece that is short enough', () => {
    fc.assert(
      fc.property(decks, (deck) => {
        const piece = pieceOf(deck.phrases[0]!, deck)!;
        const covered = new Set(
          excerptRanges(piece).flatMap(([from, to]) =>
            Array.from({ length: to - from }, (_, i) => from + i),
          ),
        );
        piece.groups.forEach(({ from, to }, group) => {
          expect(covered.has(group)).toBe(to - from <= 16);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('is refused where it is written in any other way than its own', () => {
    const key = parseKey('Bb major')!;
    const read = (words: string) => readExcerpt(words, key, GUITAR);
    expect(read('ii 3/5=1 2/4 -1/3 1/3=1/3?')?.notes).toHaveLength(3);
    for (const words of [
      '',
      'ii',
      '3/5',
      'ii  3/5',
      ' ii 3/5',
      'ii 3/5=1/3',
      'ii 3/5=2/2',
      'ii 3/5=0',
      'ii 3/5=5',
      'ii 3/5=1/961',
      'ii 3/5 -5 2/4',
      'ii 3/5 -1/3 -1/3 2/4',
      'ii 3/5 -1/3',
      'ii V 3/5',
      'ii 3/5? 2/4?',
      'ii 3/5 V',
      'ii 3/23',
      'ii 7/3',
      'C 3/5',
      'ii 3/5 '.repeat(5).trim(),
      `ii ${'3/5 '.repeat(17).trim()}`,
    ])
      expect(read(words), words).toBeNull();
  });
});

describe('the stretches of a phrase', () => {
  const chord = chordOn({ tonic: 'Bb', scale: 'major' }, 2, 'triad');
  /** A piece of groups of so many notes; of those below 0 the arpeggio is not clear. */
  const pieceOfGroups = (...lengths: number[]) => {
    let at = 0;
    const groups = lengths.map((length) => {
      const from = at;
      at += Math.abs(length);
      return { chord, from, to: at, clear: length > 0 };
    });
    return { groups } as unknown as Piece;
  };

  // Four groups and sixteen notes at most; the last one before an end reaches back for as many.
  it.each([
    [[3, 3, 3], '0-3'],
    [[3, 3, 3, 3, 3], '0-4 1-5'],
    [[3, 3, 3, 3, 3, 3], '0-4 2-6'],
    [[4, 4, 4, 4, 4], '0-4 1-5'],
    [[5, 5, 5, 5], '0-3 1-4'],
    [[8, 8, 1], '0-2 1-3'],
    [[17, 3, 3], '1-3'],
    [[3, 17, 3], '0-1 2-3'],
    [[], ''],
  ])('of %o notes are %s', (lengths, told) => {
    const ranges = excerptRanges(pieceOfGroups(...lengths));
    expect(ranges.map((range) => range.join('-')).join(' ')).toBe(told);
  });

  it.each([
    [[3, 3, -3, 3, 3], '0-2 3-5'],
    [[3, 3, 3, 3, 3, -3, 3], '0-4 1-5 6-7'],
    [[-3, -3], ''],
  ])('of what is wanted alone, of %o are %s', (lengths, told) => {
    const ranges = excerptRanges(pieceOfGroups(...lengths), ({ clear }) => clear);
    expect(ranges.map((range) => range.join('-')).join(' ')).toBe(told);
  });

  it('hold notes and rests for four beats at most', () => {
    const notes = [
      'C4 for 1/3 on 3/5',
      'Eb4 for 6 on 2/4',
      'G4 at 13 for 1/3 on 1/3',
      'Eb4 for 5 on 2/4',
    ];
    const deck = phraseDeck({ phrases: [{ tempo: 72, notes, outline: ['1-4 ii'] }] });
    const piece = pieceOf(deck.phrases[0]!, deck)!;
    expect(writeExcerpt(excerptFrom(piece, 0, 1))).toBe('ii 3/5 2/4=4 -4 1/3=1/3 2/4=4');
  });
});

describe('what can be asked of the arpeggios of a phrase', () => {
  // Where it is not sure what was outlined, nobody can be asked for it; two of its notes at least have to tell it.
  it.each([
    ['down the stairs', STAIRS, [true, true, true, true, true, true, false]],
    ['on the ferry', FERRY, [true, false, true]],
  ])('%s is what is read surely, of two members or more', (_, phrase, clear) => {
    const deck = phraseDeck({ phrases: [phrase] });
    expect(pieceOf(deck.phrases[0]!, deck)!.groups.map((group) => group.clear)).toEqual(clear);
    const sure = clear.filter(Boolean);
    expect(itemsIn(outlineKind, deck)).toHaveLength(sure.length);
  });
});

describe('the items of a phrase', () => {
  it('read back from their ids, whatever the phrase, key and instrument', () => {
    fc.assert(
      fc.property(decks, (deck) => {
        const items = itemsOf(deck);
        expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
        for (const item of items) expect(item).toMatchObject(itemOf(item.id)!);
      }),
      { numRuns: 40 },
    );
  });

  it('can all be marked easy or hard, whatever the phrase, key and instrument', () => {
    fc.assert(
      fc.property(decks, (deck) => {
        const items = itemsOf(deck).slice(0, MOST.marks);
        const marks = Object.fromEntries(items.map(({ id }) => [id, 5 as const]));
        const read = readDeck(writeDeck({ ...deck, title: 'Marked', marks }));
        expect(read).toMatchObject({ deck: items.length === 0 ? {} : { marks } });
      }),
      { numRuns: 40 },
    );
  });

  it('come back from the log, however long their ids are', () => {
    const instrument = { ...GUITAR, name: 'own', tuning: ['C2', 'G2', 'D3', 'A3', 'B3', 'E4'] };
    const key = parseKey('Bb harmonic minor')!;
    const notes = Array.from({ length: 16 }, (_, i) => {
      const place = { string: 1 + (i % 3), fret: 10 + ((i * 5) % 7) };
      const midi = midiAt(instrument, place);
      return { midi, name: spell(key, midi), at: beats(i), length: beats(1 + (i % 2), 7), place };
    });
    const deck = { ...FIELDS, instrument, key, drills, phrases: [{ tempo: 120, notes }] };
    const ids = itemsOf(deck).map(({ id }) => id);
    expect(Math.max(...ids.map((id) => id.length))).toBeGreaterThan(200);
    for (const id of ids) expect(isReview(reviewOf({ item: id }))).toBe(true);
  });

  it('are none of an id with any letter changed, or items of their own', () => {
    const ids = itemsOf(phraseDeck()).map(({ id }) => id);
    fc.assert(
      fc.property(
        fc.constantFrom(...ids),
        fc.nat({ max: 200 }),
        fc.constantFrom(...'0123456789/=-?: iIvVm#b', ''),
        (id, place, letter) => {
          const at = place % id.length;
          const changed = id.slice(0, at) + letter + id.slice(at + 1);
          const read = itemOf(changed);
          if (read) expect(read.id).toBe(changed);
        },
      ),
      { numRuns: 600 },
    );
    for (const id of ids) {
      expect(itemOf(`${id} `)).toBeNull();
      expect(itemOf(`${id}:`)).toBeNull();
      expect(itemOf(id.slice(0, -1))?.id ?? null).not.toBe(id);
    }
  });

  it('are the same where the places of the phrase are found as where these are given', () => {
    const deck = phraseDeck();
    const found = deck.phrases.map((phrase) => {
      const bare = {
        ...phrase,
        notes: phrase.notes.map(({ midi, name, at, length }) => ({ midi, name, at, length })),
      };
      const piece = pieceOf(bare, deck)!;
      return [bare, { ...bare, notes: piece.notes }] as const;
    });
    const ids = (which: 0 | 1) =>
      itemsOf({ ...deck, phrases: found.map((pair) => pair[which]) }).map(({ id }) => id);
    expect(ids(0)).toEqual(ids(1));
  });

  it('are those of the phrases that the drill names', () => {
    const all = itemsOf(phraseDeck()).map(({ id }) => id);
    const of = (phrases: number[]) =>
      itemsOf(
        phraseDeck({
          drills: [...kindsOf('phrase'), 'play', 'echo'].map((kind) => ({ kind, phrases })),
        }),
      ).map(({ id }) => id);
    expect(of([1]).length + of([2]).length).toBe(all.length);
    expect(new Set([...of([1]), ...of([2])])).toEqual(new Set(all));
  });

  it('keep what the teacher ruled of a single tone: it is no longer one of its arpeggio', () => {
    const notes = ['C4 for 1/3', 'Eb4', 'G4', 'A4', 'Bb4', 'D4 for 1'];
    const deck = (...tones: string[]) =>
      phraseDeck({
        phrases: [{ tempo: 72, notes, outline: ['1-5 ii7', ...tones] }],
        drills: kindsOf('phrase').map((kind) => ({ kind })),
      });
    const [plain] = itemsOf(deck());
    const [ruled] = itemsOf(deck('3 passing'));
    expect(ruled!.id).toBe(plain!.id.replace(/(\S+)(?= \S+ \S+$)/, '$1~'));
    const dots = (id: string) => outlineKind.ask(itemIn(outlineKind, id)!, 1).shape.places;
    expect(dots(plain!.id).map(({ member }) => member)).toEqual([1, 3, 5, 7]);
    expect(dots(ruled!.id).map(({ member }) => member)).toEqual([1, 3, 7]);
    // A third ruled out of three leaves too little of the arpeggio to be told.
    expect(itemsOf(deck('3 passing', '5 passing')).some(({ kind }) => kind === 'outline')).toBe(
      false,
    );
    // What is no note of the arpeggio embellishes in any case: there is one way only to write it.
    expect(itemsOf(deck('4 passing')).map(({ id }) => id)).toEqual(
      itemsOf(deck()).map(({ id }) => id),
    );
    expect(itemOf(plain!.id.replace(/(\S+)(?= \S+$)/, '$1~'))).toBeNull();
  });

  it('follow what the teacher ruled', () => {
    const ids = (outlined: string[]) => {
      const phrases = [
        {
          tempo: 72,
          notes: ['C4 for 1/3', 'Eb4', 'G4', 'Bb4', 'F4', 'D4 for 1'],
          outline: outlined,
        },
      ];
      return itemsOf(phraseDeck({ phrases, drills: [{ kind: 'outline' }] })).map(({ id }) => id);
    };
    expect(ids(['1-4 ii7']).some((id) => id.startsWith('outline:Bb major:2:seventh'))).toBe(true);
    expect(ids(['1-3 ii', '4-6 I']).map((id) => id.split(':').slice(2, 4).join())).toEqual([
      '2,triad',
      '1,triad',
    ]);
  });
});
