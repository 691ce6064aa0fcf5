import { describe, expect, it } from 'vitest';
import { itemOf, itemsOf } from '../../src/cards/index.ts';
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
