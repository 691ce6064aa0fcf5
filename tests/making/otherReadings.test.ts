import { describe, expect, it } from 'vitest';
import { likeliestOther, otherReadings } from '../../src/making/otherReadings.ts';
import type { Group } from '../../src/theory/analysis/analysis.ts';
import { chordOn, type Size } from '../../src/theory/chord.ts';
import type { Key } from '../../src/theory/key.ts';

const key: Key = { tonic: 'Bb', scale: 'major' };
const on = (degree: number, confidence: number, size: Size = 'triad') => ({
  chord: chordOn(key, degree, size),
  confidence,
});
const groups: readonly Group[] = [
  {
    ...on(5, 0.6),
    from: 0,
    to: 3,
    alternatives: [on(7, 0.02)],
    joined: on(5, 0.37, 'ninth'),
    regrouped: [{ ...on(5, 0.37, 'ninth'), from: 0, to: 6 }],
  },
  {
    ...on(4, 0.5),
    from: 3,
    to: 6,
    alternatives: [on(2, 0.1, 'seventh'), on(6, 0.01)],
    joined: on(1, 0.04, 'ninth'),
    regrouped: [
      { ...on(5, 0.37, 'ninth'), from: 0, to: 6 },
      { ...on(2, 0.2, 'ninth'), from: 2, to: 6 },
      { ...on(1, 0.04, 'ninth'), from: 3, to: 9 },
    ],
  },
  { ...on(1, 0.95), from: 6, to: 9, alternatives: [on(3, 0.02)], joined: null, regrouped: [] },
];
const told = (at: number) =>
  otherReadings(groups, at).map(({ chord, joins, span }) => [chord.symbol, joins, ...span]);

describe('what else a group may outline', () => {
  it('is another chord, or one with the notes of the next group', () =>
    expect(told(0)).toEqual([
      ['F9', 'the next', 0, 6],
      ['Adim', null, 0, 3],
    ]));
  it('is one with the group before too, or of other notes, and no join that is an idle thought', () =>
    expect(told(1)).toEqual([
      ['F9', 'the one before', 0, 6],
      ['Cm9', 'other notes', 2, 6],
      ['Cm7', null, 3, 6],
      ['Gm', null, 3, 6],
    ]));
  it('is told where it is likely at all', () => {
    expect(likeliestOther(groups, 1)?.chord.symbol).toBe('F9');
    expect(likeliestOther(groups, 2)).toBeNull();
  });
});
