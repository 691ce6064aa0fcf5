import { describe, expect, it } from 'vitest';
import { itemOf, itemsOf, KINDS } from '../../src/cards/index.ts';
import { SIZES } from '../../src/theory/chord.ts';
import { deckIn } from './decks.ts';

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
    ]) {
      expect(itemOf(id), id).toBeNull();
    }
  });
});

describe('a card', () => {
  const items = itemsOf(deckIn('Eb major', ['triad', 'seventh']));

  it('is the same for the same item and seed', () => {
    for (const item of items) {
      const { ask } = KINDS[item.kind];
      expect(ask(item, 20261201)).toMatchObject(ask(itemOf(item.id)!, 20261201));
    }
  });

  it('has a right answer and a wrong one, each explained in a sentence', () => {
    for (const item of items) {
      const kind = KINDS[item.kind];
      const card = kind.ask(item, 7);
      for (const answer of answersOf(card)) {
        const verdict = kind.judge(card, answer);
        const why = kind.explain(card, verdict, answer, 'english');
        expect(why.title).not.toBe('');
        expect(why.sentence).toMatch(/\.$/);
        expect(why.dots.length).toBeGreaterThan(0);
        expect(why.sound.notes.length).toBeGreaterThan(0);
      }
    }
  });
});

function answersOf(card: object): string[] {
  if ('choices' in card) return (card.choices as { path: string }[]).map(({ path }) => path);
  if ('shape' in card) return ['1', '2', '3', '4', '5', '6', '7'];
  return ['', '4/1 4/2 4/3 4/4', 'nonsense'];
}
