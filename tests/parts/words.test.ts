/** Words, stretches and hands that screens and cards share. */
import { afterEach, describe, expect, it } from 'vitest';
import { listed, numberWord, ordinal } from '../../src/parts/english.ts';
import { drawnFor, isLeftHanded } from '../../src/parts/handedness.ts';
import { beatsOf, stretched } from '../../src/parts/stretch.ts';

describe('English', () => {
  it('has numbers as words up to twelve', () => {
    expect([0, 1, 2, 7, 11, 12, 13].map(numberWord)).toEqual([
      'no',
      'one',
      'two',
      'seven',
      'eleven',
      'twelve',
      '13',
    ]);
  });

  it('has ordinals for the degrees', () => {
    expect([1, 2, 3, 4, 5, 6, 7, 8].map(ordinal)).toEqual([
      'first',
      'second',
      'third',
      'fourth',
      'fifth',
      'sixth',
      'seventh',
      '8',
    ]);
  });

  it.each([
    [[], ''],
    [['C'], 'C'],
    [['C', 'E♭'], 'C and E♭'],
    [['C', 'E♭', 'G'], 'C, E♭ and G'],
  ])('lists %o', (words, said) => expect(listed(words)).toBe(said));
});

describe('a stretch of a phrase', () => {
  it('begins at one note, reaches to another, and a third tap lets it go', () => {
    expect(stretched(null, 3)).toEqual([3, 3]);
    expect(stretched([3, 3], 5)).toEqual([3, 5]);
    expect(stretched([3, 3], 1)).toEqual([1, 3]);
    expect(stretched([3, 3], 3)).toBeNull();
    expect(stretched([3, 5], 4)).toBeNull();
  });

  it('lasts from its first note to the end of its last', () => {
    const notes = [0, 1 / 3, 2 / 3, 1].map((at, i) => ({
      midi: 60 + i,
      at,
      length: i === 3 ? 2 : 1 / 3,
    }));
    expect(beatsOf([1, 2], { tempo: 60, notes })).toEqual({ from: 1 / 3, to: 1 });
    expect(beatsOf([3, 3], { tempo: 60, notes })).toEqual({ from: 1, to: 3 });
  });
});

describe('the hand that necks are drawn for', () => {
  afterEach(() => {
    drawnFor.value = null;
  });

  it.each([
    [null, true, true],
    [null, false, false],
    ['left', false, true],
    ['right', true, false],
  ] as const)('where %s is chosen, a lesson that says %s: left %s', (chosen, leftHanded, left) => {
    drawnFor.value = chosen;
    expect(isLeftHanded({ leftHanded })).toBe(left);
  });
});
