import { describe, expect, it } from 'vitest';
import { framed } from '../../src/cards/arpeggio/arpeggio.ts';
import { itemOf, itemsOf, KINDS } from '../../src/cards/index.ts';
import { onNeck } from '../../src/cards/onNeck.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { phraseDeck } from './phrases.ts';

describe('what lies on the neck', () => {
  it('is named where the phrase has it', () => {
    const item = itemOf('outline:Bb major:2:triad:guitar:ii 3/5 2/4 1/3')!;
    expect(onNeck([item], GUITAR)).toMatchObject([
      {
        degree: 2,
        strings: '3-2-1',
        frets: [3, 5],
        places: [
          { string: 3, fret: 5 },
          { string: 2, fret: 4 },
          { string: 1, fret: 3 },
        ],
      },
    ]);
  });

  it('is placed anywhere on its strings inside its frets, in a phrase as without one', () => {
    const where = (id: string) => onNeck([itemOf(id)!], GUITAR)[0]!.places;
    const alone = where('place:Bb major:5:triad:guitar:4-3-2:3-7');
    expect(where('follow:Bb major:5:triad:guitar:ii 3/5 2/4 1/3 V on 4-3-2 3-7')).toEqual(alone);
    expect(alone).toContainEqual(expect.objectContaining({ string: 4, fret: 3 }));
  });

  it('is nothing that is heard', () => {
    const kinds = new Set(onNeck(itemsOf(phraseDeck()), GUITAR).map(({ kind }) => kind));
    expect([...kinds]).toEqual(['outline', 'follow', 'play']);
  });
});

describe('the frets that a card shows', () => {
  // Seven at least where the neck has them: one more above what is asked, then one below; never past the last.
  it.each([
    [0, 1, 5, [1, 6]],
    [0, 0, 4, [0, 5]],
    [0, 5, 9, [4, 10]],
    [0, 2, 7, [2, 8]],
    [0, 1, 8, [1, 8]],
    [0, 18, 22, [17, 22]],
    [3, 15, 19, [14, 19]],
    [3, 14, 18, [13, 19]],
  ])('with the capo on %i, of %i to %i, are %o', (capo, low, high, shown) => {
    expect(framed([low, high], { ...GUITAR, capo })).toEqual(shown);
  });
});

describe('a left-handed lesson', () => {
  it('has every kind of card so, also those from its phrases, whose ids say nothing of the hand', () => {
    const deck = phraseDeck();
    const kinds = new Map<string, boolean>();
    for (const leftHanded of [true, false])
      for (const item of itemsOf({ ...deck, instrument: { ...GUITAR, leftHanded } })) {
        const { instrument } = KINDS[item.kind].ask(item, 2);
        expect(instrument.leftHanded, item.id).toBe(leftHanded);
        kinds.set(item.kind, leftHanded);
      }
    expect([...kinds.keys()].toSorted()).toEqual([
      'echo',
      'fill',
      'follow',
      'order',
      'outline',
      'play',
      'vary',
    ]);
  });
});
