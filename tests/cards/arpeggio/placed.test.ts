/** What a chord that was put on the neck shows and sounds, and how notes that were played are held. */
import { describe, expect, it } from 'vitest';
import {
  answerOfPlaces,
  inOneHand,
  pitchesOf,
  takes,
  withPlayed,
} from '../../../src/cards/arpeggio/placing.ts';
import { place } from '../../../src/cards/place/index.ts';
import type { Place } from '../../../src/neck/place.ts';
import { itemIn } from '../items.ts';

const cardOf = (id: string) => place.ask(itemIn(place, `place:Bb major:${id}`)!, 1);
/** Cm: C on 5/3 and 3/5, E♭ on 5/6, 4/1 and 2/4, G on 4/5 and 2/8. */
const [LOW, HIGH] = ['2:triad:guitar:5-4:1-7', '2:triad:guitar:4-3-2:1-8'];

describe('a chord that was placed', () => {
  const explained = (id: string, answer: string, right?: boolean) => {
    const card = cardOf(id);
    const verdict = right === undefined ? place.judge(card, answer) : { right, takenFor: null };
    return place.explain(card, verdict, answer, 'english');
  };
  const midis = (id: string, answer: string, right?: boolean) => {
    const { sound, otherSound } = explained(id, answer, right);
    return [sound, otherSound].map((one) => one && one.notes.map(({ midi }) => midi).join(' '));
  };

  // Where each dot lies, its look where it has one, the member of the chord that it is, its note and degree.
  it.each([
    [LOW, '4/5 5/6 5/3', '4/5 5 G 6, 5/6 3 Eb 4, 5/3 1 C 2'],
    [LOW, '4/5 4/1 5/3', '4/5 5 G 6, 4/1 3 Eb 4, 5/3 1 C 2'],
    [LOW, '', '5/3 missing 1 C 2, 5/6 missing 3 Eb 4, 4/5 missing 5 G 6'],
    [LOW, '5/3 4/2 4/5', '5/3 1 C 2, 5/6 missing 3 Eb 4, 4/5 5 G 6, 4/2 wrong E ×'],
    [LOW, '5/3 5/5', '5/3 1 C 2, 5/6 missing 3 Eb 4, 4/5 missing 5 G 6, 5/5 wrong D 3 ×'],
    [LOW, '4/1 5/6 4/5', '5/3 missing 1 C 2, 5/6 3 Eb 4, 4/5 5 G 6, 4/1 faint 3 Eb 4'],
    [HIGH, '4/1 2/4 3/5', '3/5 1 C 2, 2/4 3 Eb 4, 2/8 missing 5 G 6, 4/1 faint 3 Eb 4'],
    [
      HIGH,
      '2/8 4/1 2/3',
      '3/5 missing 1 C 2, 2/4 missing 3 Eb 4, 2/8 5 G 6, 4/1 faint 3 Eb 4, 2/3 wrong D 3 ×',
    ],
    [`${HIGH}:root`, '2/4 3/5 4/5', '3/5 1 C 2, 2/4 3 Eb 4, 2/8 missing 5 G 6, 4/5 faint 5 G 6'],
    [
      `${HIGH}:inversions`,
      '2/8 3/5 2/4',
      '4/5 missing 5 G 6, 3/5 1 C 2, 2/4 3 Eb 4, 2/8 faint 5 G 6',
    ],
  ])('on %s at "%s" is shown as %s', (id, answer, told) => {
    const dots = explained(id, answer).dots.map(
      ({ string, fret, look, member, note, degree, text }) =>
        [`${string}/${fret}`, look, member, note, degree, text].filter(Boolean).join(' '),
    );
    expect(dots.join(', ')).toBe(told);
  });

  it.each([
    [LOW, '4/5 5/6 5/3', '48 51 55', null],
    [LOW, '', '48 51 55', null],
    [LOW, '5/3 5/5', '48 51 55', '48 50'],
    [LOW, '4/1 5/6 4/5', '48 51 55', '51 51 55'],
    [HIGH, '4/1 2/4 3/5', '60 63 67', '51 60 63'],
    [`${HIGH}:root`, '2/4 3/5 4/5', '60 63 67', '55 60 63'],
  ])('on %s at "%s" sounds as %s, and as %s where it was wrong', (id, answer, right, other) => {
    expect(midis(id, answer)).toEqual([right, other]);
  });

  it('is shown whole where it is shown before it is asked', () => {
    const { dots } = explained(LOW, '', true);
    expect(dots.map(({ string, fret, look }) => [string, fret, look])).toEqual([
      [5, 3, undefined],
      [5, 6, undefined],
      [4, 5, undefined],
    ]);
    expect(midis(LOW, '', true)).toEqual(['48 51 55', null]);
  });
});

describe('where it may be put', () => {
  it.each([
    [5, 1, true],
    [5, 0, false],
    [4, 7, true],
    [4, 8, false],
    [3, 3, false],
    [6, 3, false],
  ])('string %i, fret %i: %s', (string, fret, taken) => {
    expect(takes(cardOf(LOW), { string, fret })).toBe(taken);
  });

  it('is told as pitches that rise, though the root may lie above', () => {
    expect(pitchesOf(cardOf('5:triad:guitar:5-4:1-7'))).toEqual([48, 53, 57]);
  });
});

describe('notes that were played', () => {
  // In their order; first where each was found, then as one hand holds all of them.
  it.each([
    [LOW, [55, 51, 48], '4/5 5/6 5/3', '5/3 5/6 4/5'],
    ['2:triad:guitar:6-5-4-3-2-1:1-9', [60, 67, 63], '3/5 2/8 3/8', '3/5 2/4 1/3'],
    ['2:triad:guitar:6-5-4-3-2-1:1-9', [48, 67, 63], '6/8 2/8 3/8', '5/3 2/4 1/3'],
    [LOW, [48, 50, 55], '5/3 5/5 4/5', '5/3 5/5 4/5'],
    [LOW, [55, 48], '4/5 5/3', '4/5 5/3'],
  ])('on %s as %o lie at %s, in one hand at %s', (id, played, found, held) => {
    const card = cardOf(id);
    const places = played.reduce<readonly Place[]>((all, midi) => withPlayed(card, all, midi), []);
    expect(answerOfPlaces(places)).toBe(found);
    expect(answerOfPlaces(inOneHand(card, places))).toBe(held);
  });
});
