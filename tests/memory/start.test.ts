import { describe, expect, it } from 'vitest';
import { emptyMemory, replay } from '../../src/memory/memory.ts';
import { starts } from '../../src/memory/start.ts';
import { reviewOf } from './reviews.ts';

const id = (key: string, degree: number, strings: string) =>
  `spot:${key}:${degree}:triad:guitar:${strings}:1-5`;
const SETS = ['6-5-4', '5-4-3', '4-3-2', '3-2-1'];

/** Every string set of the second degree in B flat, right or wrong. */
const learned = (right: boolean) =>
  replay(SETS.map((strings, n) => reviewOf({ n, at: n, item: id('Bb major', 2, strings), right })));

describe('where an item begins that was never asked', () => {
  it('is an even chance before anything is known', () => {
    expect(starts(emptyMemory())(id('Bb major', 2, '5-4-3'))).toBe(0.5);
  });

  it('is higher where its siblings were right than where they were wrong', () => {
    const sibling = id('Eb major', 2, '5-4-3');
    expect(starts(learned(true))(sibling)).toBeGreaterThan(starts(learned(false))(sibling));
  });

  it('is the share of first answers right for an item without siblings', () => {
    const stranger = id('Eb major', 5, '5-4-3');
    expect(starts(learned(true))(stranger)).toBeCloseTo(5 / 6);
    expect(starts(learned(false))(stranger)).toBeCloseTo(1 / 6);
  });

  it('is carried by many siblings, a little by each', () => {
    const keys = Array.from({ length: 48 }, (_, k) => `key${k}`);
    const wrong = Array.from({ length: 98 }, (_, k) =>
      reviewOf({ item: `place:${k}`, right: false }),
    );
    const right = keys.map((key) => reviewOf({ item: id(key, 2, '5-4-3') }));
    const memory = replay([...wrong, ...right]);
    const share = 49 / 148;
    expect(starts(memory)(id('Bb major', 2, '5-4-3'))).toBeCloseTo((16 * share + 48) / 64);
  });

  it('follows what a sibling answered last', () => {
    const item = id('Bb major', 2, '5-4-3');
    const first = reviewOf({ item, right: false });
    const better = replay([first, reviewOf({ item, n: 2, at: 1 })]);
    expect(starts(better)(id('Eb major', 2, '5-4-3'))).toBeGreaterThan(
      starts(replay([first]))(id('Eb major', 2, '5-4-3')),
    );
  });
});
