import { describe, expect, it } from 'vitest';
import { order } from '../../src/cards/order/index.ts';
import { offered, orders } from '../../src/cards/order/orders.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { seeded } from '../../src/theory/random.ts';
import { itemIn } from './items.ts';

const ID =
  'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3 vi 4/5 3/3 2/3';

describe('order', () => {
  it('offers four orders of the same arpeggios, all as far from one another, with the same beginning', () => {
    for (let seed = 0; seed < 60; seed++) {
      const card = order.ask(itemIn(order, ID)!, seed);
      expect(new Set(card.choices.map(({ answer }) => answer)).size).toBe(4);
      expect(card.right.answer).toBe('2 5 1 6');
      expect(order.answers(card)).toEqual(card.choices.map(({ answer }) => answer));
      for (const choice of card.choices) {
        expect(choice.answer.split(' ').toSorted()).toEqual(['1', '2', '5', '6']);
        expect(choice.answer.startsWith('2 ')).toBe(true);
      }
      const sums = card.choices.map(({ answer }) =>
        card.choices.reduce((sum, other) => sum + apart(answer, other.answer), 0),
      );
      expect(new Set(sums).size).toBe(1);
    }
  });

  // How many of the three others begin with another arpeggio, at the fewest: worked out by hand.
  it.each([
    ['2 5 1', 2],
    ['2 5 1 6', 0],
    ['2 5 2 1', 0],
    ['2 2 5 1', 0],
    ['2 5 5 1', 2],
    ['1 1 1 4', 1],
    ['1 4 1 4', 2],
  ])(
    'offers even sets of the orders of %s, %i of them beginning elsewhere',
    (degrees, elsewhere) => {
      const groups = degrees.split(' ').map((degree, i) => ({
        chord: chordOn({ tonic: 'Bb', scale: 'major' }, Number(degree), 'triad'),
        from: 3 * i,
        to: 3 * i + 3,
      }));
      for (let seed = 0; seed < 20; seed++) {
        const four = offered(orders(groups), seeded(seed)).map(({ answer }) => answer);
        expect(four[0]).toBe(degrees);
        const sums = four.map((one) => four.reduce((sum, other) => sum + apart(one, other), 0));
        expect(new Set(sums).size).toBe(1);
        expect(four.filter((one) => one[0] !== degrees[0])).toHaveLength(elsewhere);
      }
    },
  );

  it('says where the orders part, and sounds the wrong one too', () => {
    const card = order.ask(itemIn(order, ID)!, 1);
    const wrong = card.choices.find(({ answer }) => answer !== card.right.answer)!.answer;
    const why = order.explain(card, order.judge(card, wrong), wrong, 'english');
    expect(why.title).toBe('ii V I vi');
    expect(why.sentence).toBe('It goes ii (Cm), then V (F), then I (B♭), then vi (Gm).');
    expect(why.detail).toMatch(
      /^They part at the (first|second|third) arpeggio: it is .+, not .+\.$/,
    );
    const pitches = (notes: readonly { midi: number }[]) =>
      notes.map(({ midi }) => midi).toSorted();
    expect(pitches(why.otherSound!.notes)).toEqual(pitches(why.sound.notes));
    expect(why.otherSound!.notes.at(-1)!.at).toBeCloseTo(why.sound.notes.at(-1)!.at, 9);
    expect(why.otherSound!.notes.map(({ midi }) => midi)).not.toEqual(
      why.sound.notes.map(({ midi }) => midi),
    );
  });

  it('is named by what it is heard from', () => {
    const { words } = order;
    const item = itemIn(order, ID)!;
    expect(words.item(item)).toBe('the order from ii on');
    expect(words.itemPlace(item)).toBe('the order from ii on, from string 3, fret 5');
    expect(words.drill({ kind: 'order' })).toBe('hear the order of the arpeggios of the phrases');
    expect(words.drill({ kind: 'order', phrases: [2] })).toBe(
      'hear the order of the arpeggios of phrase 2',
    );
  });

  it('is not asked where fewer than four orders can be told apart', () => {
    expect(
      itemIn(order, 'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1'),
    ).toBeNull();
    const twice = 'ii 3/5 2/4 1/3 V 1/5 1/1 2/1 ii 3/5 2/4 1/3';
    expect(itemIn(order, `order:Bb major:2:triad:guitar:72 ${twice}`)).toBeNull();
    const single = 'ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3';
    expect(itemIn(order, `order:Bb major:2:triad:guitar:72 ${single}`)).toBeNull();
  });
});

/** In how many places two orders differ. */
const apart = (a: string, b: string) =>
  a.split(' ').filter((degree, i) => degree !== b.split(' ')[i]).length;
