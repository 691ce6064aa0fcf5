import { describe, expect, it } from 'vitest';
import { itemOf, itemsOf, KINDS } from '../../src/cards/index.ts';
import { guessOf, isConfusing, isPhraseKind, KIND_NAMES } from '../../src/decks/kinds.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { SIZES } from '../../src/theory/chord.ts';
import { deckIn } from './decks.ts';
import { FERRY, phraseDeck } from './phrases.ts';

describe('the items of a deck', () => {
  it('cover every degree on every string set, and every degree with every contour', () => {
    const items = itemsOf(deckIn('Bb major'));
    for (const kind of ['spot', 'place'] as const) {
      for (const strings of ['5-4', '4-3-2-1']) {
        const degrees = items
          .filter((item) => item.kind === kind && item.strings === strings)
          .map(({ degree }) => degree);
        expect(new Set(degrees), `${kind} ${strings}`).toEqual(new Set([1, 2, 3, 4, 5, 6, 7]));
      }
    }
    expect(items.filter(({ kind }) => kind === 'trace')).toHaveLength(28);
  });

  it('have ids that name them for good, of any deck', () => {
    for (const key of ['Bb major', 'G minor', 'D# locrian', 'Ab harmonic minor']) {
      const items = itemsOf(deckIn(key, SIZES.slice(0, 3)));
      expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
      for (const item of items) expect(item).toMatchObject(itemOf(item.id)!);
    }
    for (const item of itemsOf(phraseDeck())) expect(item).toMatchObject(itemOf(item.id)!);
  });

  it('carry which drill they are from, the first that asks for them, and what the deck is played on', () => {
    const drill = { kind: 'spot', sizes: ['triad'], strings: [[5, 4]], frets: [1, 7] } as const;
    const deck = {
      ...deckIn('Bb major'),
      instrument: { ...GUITAR, leftHanded: true },
      drills: [
        { ...drill, degrees: [2] },
        { ...drill, degrees: [2, 5] },
        { kind: 'pulse', figures: ['eighths'], tempos: [60], clicks: ['beat'] } as const,
        { ...drill, kind: 'place', degrees: [2] } as const,
      ],
    };
    const items = itemsOf(deck);
    expect(items.map(({ kind, degree, drill: number }) => [kind, degree, number])).toEqual([
      ['spot', 2, 0],
      ['spot', 5, 1],
      ['pulse', 1, 2],
      ['place', 2, 3],
    ]);
    for (const { instrument } of items) expect(instrument).toBe(deck.instrument);
    // Where chords cannot be stacked the others alone are asked.
    const few = itemsOf({ ...deck, key: { tonic: 'Bb', scale: 'blues' } });
    expect(few.map(({ kind, drill: number }) => [kind, number])).toEqual([['pulse', 2]]);
  });

  it('carry the mark that the deck gives them', () => {
    const deck = deckIn('Bb major');
    const [hard, other] = itemsOf(deck);
    const marked = itemsOf({ ...deck, marks: { [hard!.id]: 5 } });
    expect(marked.slice(0, 2)).toEqual([{ ...hard, mark: 5 }, other]);
  });

  it('are none of an id that is damaged', () => {
    for (const id of [
      '',
      'spot',
      'nothing:Bb major:2:triad:guitar:5-4:1-5',
      'spot:H major:2:triad:guitar:5-4:1-5',
      'spot:Bb major:8:triad:guitar:5-4:1-5',
      'spot:Bb major:2:dyad:guitar:5-4:1-5',
      'spot:Bb major:2:triad:guitar:9-4:1-5',
      'spot:Bb major:2:triad:guitar:5-4:5-1',
      'spot:Bb major:2:triad:guitar:5-4:1-5:more',
      'trace:Bb major:2:triad:guitar:sideways:72',
      'trace:Bb major:2:triad:guitar:up',
      'outline:Bb major:2:triad:guitar:ii 3/5 2/4',
      'outline:Bb major:2:triad:guitar:II 3/5 2/4 1/3',
      'outline:Bb major:3:triad:guitar:ii 3/5 2/4 1/3',
      'outline:Bb major:2:triad:guitar:ii 3/5=1 2/4 1/3',
      'outline:Bb major:2:triad:guitar:ii 3/5 2/4 1/23',
      'outline:Bb major:2:triad:guitar:ii 3/5 2/4 7/3',
      'outline:blues:2:triad:guitar:ii 3/5 2/4 1/3',
      'follow:Bb major:5:triad:guitar:ii 3/5 2/4 1/3 V on 1-2 1-7',
      'follow:Bb major:5:triad:guitar:ii 3/5 2/4 1/3 V on 2-1 7-1',
      'follow:Bb major:5:triad:guitar:ii 3/5 2/4 1/3 V on 2-1 1-2',
      'follow:Bb major:2:triad:guitar:ii 3/5 2/4 1/3 V on 2-1 1-7',
      'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1',
      'order:Bb major:2:triad:guitar:ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3',
      'order:Bb major:2:triad:guitar:999 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3',
      'vary:Bb major:2:triad:guitar:72 ii 3/5 3/5 3/5',
      'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4 1/3',
      'fill:Bb major:2:triad:guitar:72 ii 3/5? 2/4 1/3',
      'toString:Bb major:2:triad:guitar:4-3:1-5',
      'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4?',
      'pulse:Bb major:2:triad:guitar:triplets:80:beat',
      'pulse:Bb major:1:seventh:guitar:triplets:80:beat',
      'pulse:Bb major:1:triad:guitar:quintuplets:80:beat',
      'pulse:Bb major:1:triad:guitar:triplets:080:beat',
      'pulse:Bb major:1:triad:guitar:triplets:8:beat',
      'pulse:Bb major:1:triad:guitar:triplets:80:never',
      'pulse:Bb major:1:triad:guitar:triplets:80:beat:more',
    ]) {
      expect(itemOf(id), id).toBeNull();
    }
  });
});

/** Answers that are made, none of them right. */
const MADE = ['', '4/1 4/2 4/3 4/4', 'nonsense'];

describe('a card', () => {
  const items = [
    ...itemsOf(deckIn('Eb major', ['triad', 'seventh'])),
    ...itemsOf(phraseDeck()),
    ...itemsOf(phraseDeck({ key: 'G minor', phrases: [FERRY] })),
  ];

  it('is the same for the same item and seed', () => {
    for (const item of items) {
      const { ask } = KINDS[item.kind];
      for (const seed of [20261200, 2 ** 32 - 1])
        expect(ask(item, seed)).toMatchObject(ask(itemOf(item.id)!, seed));
    }
  });

  it('has one right answer of those offered and explains each in a sentence, on many seeds', () => {
    for (const item of items) {
      const kind = KINDS[item.kind];
      for (const seed of isPhraseKind(item.kind) ? [4, 7, 1000, 1001] : [4, 7]) {
        const card = kind.ask(item, seed);
        const offered = kind.answers(card);
        const answers = offered ?? MADE;
        const right = answers.filter((answer) => kind.judge(card, answer).right);
        expect(right, item.id).toHaveLength(offered ? 1 : 0);
        expect(guessOf(item.kind)).toBeCloseTo(offered ? 1 / new Set(offered).size : 0, 9);
        for (const answer of answers) {
          const verdict = kind.judge(card, answer);
          if (offered) expect(verdict.takenFor).toBe(verdict.right ? null : answer);
          const why = kind.explain(card, verdict, answer, 'english');
          expect(why.title).not.toBe('');
          expect(why.sentence).toMatch(/\.$/);
          // More may stand behind it: the words of the first card of all.
          expect(why.detail).toMatch(/^$|\.$/);
          // Time alone lies nowhere on the neck.
          if (kind.sense !== 'time') expect(why.dots.length).toBeGreaterThan(0);
          expect(why.sound.notes.length).toBeGreaterThan(0);
          if (!verdict.right && offered) expect(why.otherSound).not.toBeNull();
        }
      }
    }
  });

  it('asks of every kind', () => {
    expect(new Set(items.map(({ kind }) => kind))).toEqual(new Set(KIND_NAMES));
  });
});

describe('a kind', () => {
  it('stands under its own name', () => {
    for (const name of KIND_NAMES) expect(KINDS[name].name).toBe(name);
    expect(Object.keys(KINDS).toSorted()).toEqual(KIND_NAMES.toSorted());
  });

  it('lies on the neck unless it asks ear or time, which need sound', () => {
    for (const item of [...itemsOf(deckIn('Bb major')), ...itemsOf(phraseDeck())]) {
      const { sense, needs, places } = KINDS[item.kind];
      expect(places(item, GUITAR).length > 0, item.id).toBe(!['ear', 'time'].includes(sense));
      expect(needs.includes('sound')).toBe(['ear', 'time'].includes(sense));
    }
  });

  it('has words for student and teacher', () => {
    for (const name of KIND_NAMES) expect(KINDS[name].words.soon).toMatch(/^[a-z].*\.$/);
    const decks = [deckIn('Bb major'), phraseDeck()];
    for (const deck of decks) {
      for (const drill of deck.drills)
        expect(KINDS[drill.kind].words.drill(drill)).toMatch(/^[a-z].*[^.]$/);
      for (const item of itemsOf(deck)) {
        const { words } = KINDS[item.kind];
        expect(words.itemPlace(item)).toContain(words.item(item));
        expect(words.taken !== null).toBe(isConfusing(item.kind));
      }
    }
  });
});
