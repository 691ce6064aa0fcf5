import * as fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { MOST, type Deck, type Drill, type Mark } from '../../src/decks/deck.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import { drillFormOf, drillSchema } from '../../src/decks/drills/index.ts';
import { KIND_NAMES } from '../../src/decks/kinds.ts';
import {
  deckOf,
  drillOf,
  drillsOn,
  inKey,
  onInstrument,
  PLAIN_DRAFT,
  usualTitle,
  type Draft,
} from '../../src/making/draft.ts';
import { draftFault } from '../../src/making/draftFault.ts';
import { readDraft, writeDraft } from '../../src/making/draftDocument.ts';
import { copyOf, draftOf, shortened } from '../../src/making/fromDeck.ts';
import { readStringSet, usualSets } from '../../src/making/stringSets.ts';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { LONGEST_ID } from '../../src/store/review.ts';
import { SIZES } from '../../src/theory/chord.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { hasSevenNotes } from '../../src/theory/scale.ts';
import { decks } from '../decks/arbitrary.ts';

const instrument = (name: string) => INSTRUMENTS.find((one) => one.name === name)!;

/** A hand-written deck may have spaces around its words, which the form does not keep. */
const lessons = decks
  .filter(({ key }) => hasSevenNotes(key.scale))
  .map((deck): Deck => {
    const { marks: _, ...rest } = deck;
    return { ...rest, title: deck.title.trim() || usualTitle(deck.key), note: deck.note.trim() };
  });

const PHRASE = {
  tempo: 72,
  notes: [
    { midi: 58, name: 'Bb', at: beats(0), length: beats(1, 3), place: { string: 3, fret: 3 } },
    { midi: 62, name: 'D', at: beats(1, 3), length: beats(1, 3), place: { string: 2, fret: 3 } },
  ],
} as const;

describe('a drill of each kind, as the form begins it,', () => {
  it.each(KIND_NAMES)(
    '%s, is read back from its document, and from its letters in a link',
    (kind) => {
      const drill = drillOf(kind, PLAIN_DRAFT);
      const form = drillFormOf(kind);
      const written = form.write(drill);
      expect(v.parse(drillSchema(), written)).toEqual(drill);
      expect(v.parse(drillSchema(), { kind, ...form.unfold(form.fold(written)) })).toEqual(drill);
    },
  );
});

describe('a lesson in the making', () => {
  it('begins as a lesson that a student can open', () => {
    expect(draftFault(PLAIN_DRAFT)).toBeNull();
    expect(readDeck(writeDeck(deckOf(PLAIN_DRAFT)))).toEqual({ deck: deckOf(PLAIN_DRAFT) });
  });

  it('is a plain one at first: triads of B flat major on two string sets, to see, to place and to hear', () => {
    const all = {
      degrees: [1, 2, 3, 4, 5, 6, 7],
      sizes: ['triad'],
    };
    const lying = {
      ...all,
      strings: [
        [5, 4],
        [4, 3],
      ],
      frets: [1, 8],
    };
    const heard = { ...all, contours: ['up', 'down', 'turn', 'skip'], tempo: 72 };
    expect(deckOf(PLAIN_DRAFT)).toEqual({
      title: 'Arpeggios of B♭ major',
      note: '',
      lessonDay: null,
      instrument: GUITAR,
      key: { tonic: 'Bb', scale: 'major' },
      drills: [
        { kind: 'spot', ...lying },
        { kind: 'place', ...lying },
        { kind: 'trace', ...heard },
      ],
      phrases: [],
    });
    expect(drillOf('echo', PLAIN_DRAFT)).toEqual({ kind: 'echo', ...heard });
    expect(drillOf('play', PLAIN_DRAFT)).toEqual({ kind: 'play', ...lying, ways: ['up', 'down'] });
    expect(drillOf('pulse', PLAIN_DRAFT)).toEqual({
      kind: 'pulse',
      figures: ['triplets'],
      tempos: [60, 72, 84, 96, 108, 120],
      clicks: ['beat', 'gone'],
    });
    expect(drillOf('fill', PLAIN_DRAFT)).toEqual({ kind: 'fill' });
  });

  it('made from a deck makes that deck again, whatever its drills', () => {
    fc.assert(
      fc.property(lessons, (deck) => {
        const again = deckOf(draftOf(deck));
        expect(again).toEqual(deck);
      }),
      { numRuns: 60 },
    );
  });

  it('follows the form with every drill that is as the form says, so that one tap changes them all', () => {
    const made = draftOf(deckOf(PLAIN_DRAFT));
    expect(made.drills).toEqual(PLAIN_DRAFT.drills);
    const fewer = deckOf({ ...made, degrees: [1, 5] });
    expect(fewer.drills.map((drill) => 'degrees' in drill && drill.degrees)).toEqual([
      [1, 5],
      [1, 5],
      [1, 5],
    ]);
  });

  it('follows the form with one drill of a kind: one more like it is tuned apart', () => {
    const deck = deckOf(PLAIN_DRAFT);
    const twice = { ...deck, drills: [...deck.drills, deck.drills[0]!] };
    expect(draftOf(twice).drills).toEqual(['spot', 'place', 'trace', deck.drills[0]]);
  });

  it('leaves a drill that was tuned apart alone when the form changes', () => {
    const apart: Drill = {
      kind: 'spot',
      degrees: [2],
      sizes: ['seventh'],
      strings: [[3, 2]],
      frets: [5, 12],
    };
    const made: Draft = { ...PLAIN_DRAFT, drills: [apart, 'place'], degrees: [7] };
    expect(deckOf(made).drills[0]).toEqual(apart);
    expect(deckOf(made).drills[1]).toMatchObject({ kind: 'place', degrees: [7] });
  });

  it('gives its items in the order of its drills', () => {
    const made: Draft = { ...PLAIN_DRAFT, drills: ['trace', 'spot'] };
    const kinds = itemsOf(deckOf(made)).map(({ kind }) => kind);
    expect(kinds.indexOf('spot')).toBe(kinds.lastIndexOf('trace') + 1);
  });

  // D5 lies on fret 10 of the first string, on 15 of the second, on 19 of the third.
  it.each([
    [22, 0, 'E2 A2 D3 G3 B3 E4', [10, 15, 19]],
    [18, 0, 'E2 A2 D3 G3 B3 E4', [10, 15, null]],
    [19, 0, 'E2 A2 D3 G3 B3 E4', [10, 15, 19]],
    [22, 2, 'E2 A2 D3 G3 B3 E4', [null, null, null]],
    [22, 0, 'E2 A2 D3 G3 Bb3 E4', [10, null, 19]],
  ])(
    'keeps places that are on %i frets with a capo on %i and tuned %s',
    (frets, capo, tuning, kept) => {
      const other = { ...GUITAR, frets, capo, tuning: tuning.split(' ') };
      const length = beats(1, 3);
      const notes = [10, 15, 19].map((fret, i) => ({
        midi: 74,
        name: 'D',
        at: beats(i, 3),
        length,
        place: { string: i + 1, fret },
      }));
      const { phrases } = deckOf({
        ...PLAIN_DRAFT,
        instrument: other,
        phrases: [{ phrase: { tempo: 72, notes }, rulings: [] }],
      });
      expect(phrases[0]!.notes.map(({ place }) => place?.fret ?? null)).toEqual(kept);
    },
  );

  it('marks items of its own only', () => {
    const [first] = itemsOf(deckOf(PLAIN_DRAFT));
    const made: Draft = {
      ...PLAIN_DRAFT,
      marks: { [first!.id]: 5, 'spot:C major:1:triad:bass:2-1:1-7': 1 },
    };
    expect(deckOf(made).marks).toEqual({ [first!.id]: 5 });
  });

  it('with phrases and no drill is a lesson; without either it is none', () => {
    const phrases = [{ phrase: PHRASE, rulings: [] }];
    expect(draftFault({ ...PLAIN_DRAFT, drills: [] })).toMatch(/kind of card, or add a phrase/);
    expect(draftFault({ ...PLAIN_DRAFT, drills: [], phrases })).toBeNull();
    expect(draftFault({ ...PLAIN_DRAFT, drills: ['outline'] })).toMatch(/kind of card/);
    const short = { ...PLAIN_DRAFT, phrases, key: { tonic: 'A', scale: 'blues' } } as const;
    expect(draftFault(short)).toMatch(/fewer than seven notes/);
    expect(draftFault({ ...short, drills: ['outline'] })).toBeNull();
  });

  it('says which drill lacks what', () => {
    const apart: Drill = {
      kind: 'spot',
      degrees: [],
      sizes: ['triad'],
      strings: [[3, 2]],
      frets: [0, 5],
    };
    expect(draftFault({ ...PLAIN_DRAFT, drills: ['place', apart] })).toBe(
      'Drill 2: choose at least one degree.',
    );
    const missing: Draft = {
      ...PLAIN_DRAFT,
      phrases: [{ phrase: PHRASE, rulings: [] }],
      drills: [{ kind: 'outline', phrases: [2] }],
    };
    expect(draftFault(missing)).toMatch(/no phrase 2 any more/);
  });

  it('has no more drills and string sets than a link carries', () => {
    const apart = (k: number): Drill => ({
      kind: 'spot',
      degrees: [1],
      sizes: ['triad'],
      strings: [[5, 4]],
      frets: [k, k + 4],
    });
    const drills = Array.from({ length: MOST.drills - 2 }, (_, k) => apart(k % 18));
    expect(draftFault({ ...PLAIN_DRAFT, drills: [...drills, 'spot', 'place'] })).toBeNull();
    expect(draftFault({ ...PLAIN_DRAFT, drills: [...drills, 'spot', 'place', 'trace'] })).toMatch(
      /at most 20 drills, not 21: remove/,
    );
    const strings = [6, 5, 4, 3, 2, 1].flatMap((a) =>
      [5, 4, 3, 2, 1].flatMap((b) =>
        [0, 4, 3, 2, 1].filter((c) => a > b && b > c).map((c) => (c === 0 ? [a, b] : [a, b, c])),
      ),
    );
    expect(draftFault({ ...PLAIN_DRAFT, strings: strings.slice(0, MOST.stringSets) })).toBeNull();
    expect(draftFault({ ...PLAIN_DRAFT, strings: strings.slice(0, MOST.stringSets + 1) })).toMatch(
      /at most 20 string sets: these are 21/,
    );
  });

  it('has no more marks than a link carries, not counting those of other lessons', () => {
    const all = { sizes: SIZES, strings: usualSets(GUITAR), frets: [0, 22] } as const;
    const wide: Draft = { ...PLAIN_DRAFT, ...all, drills: ['spot'] };
    const items = itemsOf(deckOf(wide));
    expect(items.length).toBeGreaterThan(MOST.marks);
    const marks = Object.fromEntries(items.map(({ id }) => [id, 5 as Mark]));
    expect(draftFault({ ...wide, marks })).toMatch(/at most 1000 items marked .* choose fewer/);
    expect(draftFault({ ...PLAIN_DRAFT, marks })).toBeNull();
  });
});

describe('another key', () => {
  it('names the notes of the phrases anew and moves none', () => {
    const { phrases } = inKey({ tonic: 'B', scale: 'major' }, [{ phrase: PHRASE, rulings: [] }]);
    expect(phrases[0]!.phrase.notes.map(({ name, midi }) => [name, midi])).toEqual([
      ['A#', 58],
      ['D', 62],
    ]);
  });
});

describe('another instrument', () => {
  it('keeps the string sets and frets that it has, and takes others where it has none', () => {
    const made: Draft = {
      ...PLAIN_DRAFT,
      strings: [
        [6, 5],
        [4, 3],
      ],
      frets: [10, 22],
    };
    expect(onInstrument(made, instrument('bass'))).toMatchObject({
      strings: [[4, 3]],
      frets: [10, 20],
    });
    expect(onInstrument({ ...made, strings: [[6, 5]] }, instrument('ukulele'))).toMatchObject({
      strings: [[4, 3]],
      frets: [10, 15],
    });
  });

  // Three frets are left at least, where the neck has them.
  it.each([
    ['ukulele', 0, [18, 22], [13, 15]],
    ['ukulele', 0, [14, 22], [13, 15]],
    ['bass', 0, [18, 20], [18, 20]],
    ['guitar', 11, [9, 14], [9, 11]],
    ['ukulele', 11, [5, 9], [2, 4]],
  ])('on a %s with a capo on %i, frets %o become %o', (name, capo, frets, fitted) => {
    const made = { ...PLAIN_DRAFT, frets: frets as [number, number] };
    expect(onInstrument(made, { ...instrument(name), capo }).frets).toEqual(fitted);
  });

  it('makes lessons that can be opened, on every listed one, with phrases and drills of another', () => {
    const apart: Drill = {
      kind: 'spot',
      degrees: [1],
      sizes: ['triad'],
      strings: [[6, 5, 4]],
      frets: [0, 22],
    };
    const made: Draft = {
      ...PLAIN_DRAFT,
      drills: [...PLAIN_DRAFT.drills, apart],
      phrases: [{ phrase: PHRASE, rulings: [] }],
    };
    for (const other of [...INSTRUMENTS, { ...GUITAR, capo: 7, frets: 12 }]) {
      const moved = { ...made, ...onInstrument(made, other) };
      expect(readDeck(writeDeck(deckOf(moved)))).toHaveProperty('deck');
    }
  });
});

describe('string sets', () => {
  it('are each two and each four strings side by side', () => {
    expect(usualSets(GUITAR).map((set) => set.join('-'))).toEqual(
      '6-5 5-4 4-3 3-2 2-1 6-5-4-3 5-4-3-2 4-3-2-1'.split(' '),
    );
    expect(usualSets(instrument('bass'))).toHaveLength(4);
  });

  it('are read as one writes them, and where that makes no sense it is said why', () => {
    expect(readStringSet(' 6–4-3 ', GUITAR)).toEqual({ set: [6, 4, 3] });
    expect(readStringSet('5', GUITAR)).toEqual({ set: [5] });
    for (const [text, said] of [
      ['', /numbers of the strings/],
      ['6-x', /numbers of the strings/],
      ['7-6', /no string 7/],
      ['3-4', /lowest string first/],
      ['4-4', /lowest string first/],
    ] as const) {
      expect(readStringSet(text, GUITAR)).toEqual({ fault: expect.stringMatching(said) });
    }
  });
});

describe('a draft on the device', () => {
  it('comes back as it went', () => {
    fc.assert(
      fc.property(lessons, fc.subarray([1, 2, 3, 4, 5, 6, 7]), (deck, degrees) => {
        const made = { ...draftOf(deck), degrees };
        expect(readDraft(JSON.parse(JSON.stringify(writeDraft(made))))).toEqual({ draft: made });
      }),
      { numRuns: 60 },
    );
  });

  it('comes back unfinished too', () => {
    const made: Draft = {
      ...PLAIN_DRAFT,
      degrees: [],
      strings: [],
      drills: [],
      title: '  On the quay ',
    };
    expect(readDraft(writeDraft(made))).toEqual({ draft: made });
  });

  it('comes back with a mark on the longest item there is', () => {
    const made: Draft = { ...PLAIN_DRAFT, marks: { ['x'.repeat(LONGEST_ID)]: 5 } };
    expect(readDraft(writeDraft(made))).toEqual({ draft: made });
  });

  it('is read as it was kept before string sets were words', () => {
    const former = {
      lesson: {
        version: 1,
        title: 'Quay steps',
        instrument: 'guitar',
        key: 'Eb major',
        drills: [],
        phrases: [{ tempo: 72, notes: ['Bb3 for 1/3 on 3/3', 'D4 on 2/3'] }],
      },
      form: {
        degrees: [1, 2, 3, 4, 5, 6, 7],
        sizes: ['triad'],
        strings: [
          [5, 4],
          [4, 3, 2],
        ],
        frets: [1, 8],
        drills: [
          'spot',
          { kind: 'place', degrees: [2], sizes: ['seventh'], strings: [[6, 4, 3]], frets: [2, 9] },
          { kind: 'trace', degrees: [1], sizes: ['triad'], contours: ['up'], tempo: 80 },
          { kind: 'outline', phrases: [1] },
        ],
        marks: { 'spot:Eb major:2:triad:guitar:5-4:1-8': 4 },
      },
      entry: null,
    };
    const read = readDraft(former);
    if ('fault' in read) throw new Error(read.fault);
    const { draft } = read;
    expect(draft.strings).toEqual(former.form.strings);
    expect(draft.drills).toEqual(former.form.drills);
    expect([draft.title, draft.degrees, draft.marks]).toEqual([
      'Quay steps',
      former.form.degrees,
      former.form.marks,
    ]);
    expect(readDraft(writeDraft(draft))).toEqual({ draft });
  });

  it('is told of where it is not whole, whatever came instead', () => {
    const whole = writeDraft(PLAIN_DRAFT);
    for (const bad of [
      null,
      'x',
      {},
      { ...whole, lesson: {} },
      { ...whole, form: { ...(whole.form as object), degrees: [8] } },
      { ...whole, form: { ...(whole.form as object), drills: ['sing'] } },
      { ...whole, form: { ...(whole.form as object), strings: 'x' } },
    ]) {
      expect(readDraft(bad)).toEqual({ fault: expect.stringMatching(/\.$/) });
    }
    fc.assert(fc.property(fc.jsonValue(), (value) => void readDraft(value)));
  });
});

describe('a copy', () => {
  it('has all of its original but the title, which stays within bounds', () => {
    const { title, ...rest } = copyOf({ ...PLAIN_DRAFT, title: 'x'.repeat(80) });
    expect(title).toMatch(/^Copy of x+$/);
    expect(title).toHaveLength(80);
    const { title: _, ...plain } = PLAIN_DRAFT;
    expect(rest).toEqual(plain);
  });

  it('has a title that can be read back, wherever an emoji is cut', () => {
    for (const length of [70, 71, 72]) {
      const made = copyOf({ ...PLAIN_DRAFT, title: 'x'.repeat(length) + '🎸' });
      expect(readDraft(writeDraft(made))).toEqual({ draft: made });
    }
    expect(shortened('x🎸', 2)).toBe('x');
    expect(shortened('x🎸', 3)).toBe('x🎸');
  });
});

it('drills on single phrases stay on them when another phrase goes or comes', () => {
  const drills = [
    { kind: 'outline' as const, phrases: [1, 2] },
    { kind: 'fill' as const },
    'spot' as const,
  ];
  const without = (index: number) =>
    drillsOn(drills, (of) => (of === index ? null : of - Number(of > index)));
  expect(without(0)).toEqual([{ kind: 'outline', phrases: [1] }, { kind: 'fill' }, 'spot']);
  expect(without(1)).toEqual([{ kind: 'outline', phrases: [1] }, { kind: 'fill' }, 'spot']);
  expect(without(2)).toEqual(drills);
  expect(drillsOn(drills, (of) => of + 1)[0]).toEqual({ kind: 'outline', phrases: [2, 3] });
});

describe('a lesson that a phone could not ask', () => {
  it('is told of where it is made, with what to change', () => {
    const four = {
      ...PLAIN_DRAFT.instrument,
      tuning: ['C4', 'C4', 'C4', 'C4'],
      frets: 12,
      capo: 11,
    };
    const made = { ...PLAIN_DRAFT, instrument: four, drills: ['trace' as const] };
    expect(draftFault(made)).toMatch(/spans 1 semitone above the capo.*put the capo lower/);
    const sets = Array.from({ length: 20 }, (_, k) => [6, 5, 4, 3, 2, 1].slice(k % 5));
    const sizes = ['triad', 'seventh', 'ninth'] as const;
    expect(draftFault({ ...PLAIN_DRAFT, strings: sets, sizes })).toMatch(
      /a lesson takes 600: choose/,
    );
  });
});
