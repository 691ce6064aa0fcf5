import { describe, expect, it } from 'vitest';
import { place } from '../../src/cards/place/index.ts';
import type { PlaceCard } from '../../src/cards/place/ask.ts';
import {
  answerOfPlaces,
  inOneHand,
  pitchesOf,
  withPlayed,
} from '../../src/cards/arpeggio/placing.ts';
import { itemOf } from '../../src/cards/index.ts';
import { spot } from '../../src/cards/spot/index.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { SHAPE_CHOICES, takesLowest, type ShapeChoice } from '../../src/neck/shapeChoice.ts';
import type { Place } from '../../src/neck/place.ts';
import { deckIn } from './decks.ts';
import { itemIn, itemsIn } from './items.ts';

const cardOf = (id: string): PlaceCard => place.ask(itemIn(place, id)!, 1);

describe('place', () => {
  const card = cardOf('place:Bb major:2:triad:guitar:5-4:1-7');

  it('takes every complete set of right places, in any order', () => {
    // C E♭ G on strings 5 and 4, frets 1 to 7: C 5/3, E♭ 5/6 or 4/1, G 4/5.
    for (const answer of ['5/3 4/1 4/5', '4/5 5/6 5/3', '4/1 4/5 5/3']) {
      expect(place.judge(card, answer).right, answer).toBe(true);
    }
  });

  it('says which note is foreign and which is missing', () => {
    const answer = '5/3 4/2 4/5';
    const verdict = place.judge(card, answer);
    expect(verdict.right).toBe(false);
    const why = place.explain(card, verdict, answer, 'english');
    expect(why.sentence).toBe('E is not in Cm; E♭ is missing.');
    expect(why.dots).toContainEqual({ string: 4, fret: 2, note: 'E', look: 'wrong', text: '×' });
  });

  it('says which note stands twice', () => {
    const answer = '4/1 5/6 4/5';
    const why = place.explain(card, place.judge(card, answer), answer, 'english');
    expect(why.sentence).toBe('E♭ stands twice; C is missing.');
  });

  it('does not count what lies beyond its strings and frets', () => {
    expect(place.judge(card, '5/3 4/1 3/12').right).toBe(false);
    expect(place.judge(card, '5/3 4/1 4/5 6/3').right).toBe(true);
  });
});

describe('place, of chosen shapes', () => {
  const deckOf = (shapes: ShapeChoice): Deck => {
    const drill = { degrees: [1, 2, 7], sizes: ['triad'], frets: [1, 8], shapes } as const;
    const strings = [
      [5, 4],
      [4, 3, 2],
    ];
    return {
      ...deckIn('Bb major'),
      drills: [
        { kind: 'spot', ...drill, strings },
        { kind: 'place', ...drill, strings },
      ],
    };
  };
  const rooted = cardOf('place:Bb major:2:triad:guitar:5-4:1-7:root');
  const inverted = cardOf('place:Bb major:2:triad:guitar:5-4:1-7:inversions');

  it('asks for no chord that cannot lie so', () => {
    // Below E♭ on 5/6 and G on 4/5 lies C alone, on 5/3.
    expect(place.judge(rooted, '5/3 4/1 4/5').right).toBe(true);
    const ids = (choice: ShapeChoice) => itemsIn(place, deckOf(choice)).map(({ id }) => id);
    expect(ids('root position')).toContain(rooted.item.id);
    expect(ids('inversions')).not.toContain(inverted.item.id);
  });

  it('says that another note is to be lowest, and shows such a shape', () => {
    const card = cardOf('place:Bb major:2:triad:guitar:4-3-2:1-8:root');
    const answer = '4/5 3/5 2/4';
    const verdict = place.judge(card, answer);
    expect(verdict.right).toBe(false);
    const why = place.explain(card, verdict, answer, 'english');
    expect(why.sentence).toBe('In root position the root, C, is the lowest note.');
    const lowest = why.dots.filter(({ look }) => look !== 'wrong' && look !== 'faint');
    expect(lowest.map(({ member }) => member)[0]).toBe(1);
    expect(place.judge({ ...card, shapes: 'inversions' }, answer).right).toBe(true);
  });

  it('asks for such arpeggios alone as have such a shape', () => {
    for (const choice of SHAPE_CHOICES)
      for (const item of itemsIn(spot, deckOf(choice)))
        for (const seed of [1, 2, 3]) {
          const { places } = spot.ask(item, seed).shape;
          expect(takesLowest(choice, places[0]!.member)).toBe(true);
          const { drill: _, instrument: __, ...read } = item;
          expect(itemOf(item.id)).toMatchObject(read);
        }
  });
});

describe('place, answered by playing', () => {
  // Strings 5 and 4, frets 1 to 7: C3 on 5/3, E♭3 on 5/6 and 4/1, G3 on 4/5.
  const card = cardOf('place:Bb major:2:triad:guitar:5-4:1-7');
  const played = (midis: readonly number[], before: readonly Place[] = []) =>
    answerOfPlaces(midis.reduce((places, midi) => withPlayed(card, places, midi), before));

  it('listens for the notes of the chord where they may be put', () => {
    expect(pitchesOf(card)).toEqual([48, 51, 55]);
  });

  it('is right in any order, on an allowed string that sounds it', () => {
    for (const midis of [
      [48, 51, 55],
      [55, 48, 51],
      [51, 51, 55, 48],
    ]) {
      expect(place.judge(card, played(midis)).right).toBe(true);
    }
    const stand = [48, 51, 55].reduce<readonly Place[]>(
      (places, midi) => withPlayed(card, places, midi),
      [],
    );
    const held = inOneHand(card, stand);
    expect(place.judge(card, answerOfPlaces(held)).right).toBe(true);
    expect(held).toHaveLength(3);
  });

  it('takes a foreign note that lies there, and leaves out what lies beyond', () => {
    expect(played([48, 52, 55])).toBe('5/3 5/7 4/5');
    expect(place.judge(card, played([48, 52, 55])).right).toBe(false);
    expect(played([60, 40, 48])).toBe('5/3');
  });

  it('goes on from what was tapped, and does not take the phone for the player', () => {
    const tapped = [{ string: 4, fret: 1 }];
    expect(played([51, 48, 55], tapped)).toBe('4/1 5/3 4/5');
    expect(played([48, 51, 55, 56], tapped)).toBe('4/1 5/3 4/5');
  });
});

it('a note of the chord that was played stands once, in whatever octave; a foreign one in each', () => {
  const card = cardOf('place:Bb major:2:triad:guitar:5-4-3-2:1-7');
  const written = (places: readonly Place[]) => answerOfPlaces(places);
  const c: Place[] = [{ string: 5, fret: 3 }];
  // C4 after C3; E♭4; D3 and D4, which are not in Cm.
  expect(written(withPlayed(card, c, 60))).toBe('5/3');
  expect(withPlayed(card, c, 63)).toHaveLength(2);
  const d = withPlayed(card, c, 50);
  expect(written(d)).toBe('5/3 5/5');
  expect(withPlayed(card, d, 50)).toHaveLength(2);
  expect(withPlayed(card, d, 62)).toHaveLength(3);
  // With as many notes as the chord has it is full; what lies beyond the strings and frets is left out.
  expect(withPlayed(card, withPlayed(card, d, 62), 63)).toHaveLength(3);
  expect(written(withPlayed(card, c, 75))).toBe('5/3');
});
