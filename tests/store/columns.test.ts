import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChunk } from '../../src/store/chunk.ts';
import { reviewsOf } from '../../src/store/columns.ts';
import { columnsOf } from '../../src/store/toColumns.ts';
import { LATEST, LONGEST_ANSWER, type Review, type Reviews } from '../../src/store/review.ts';
import { anyReview } from './reviews.ts';

const anyRun = fc
  .array(anyReview, { minLength: 1, maxLength: 40 })
  .map((reviews) => reviews.map((review, k) => ({ ...review, device: 'phone', n: 7 + k })));

const some: Review[] = fc.sample(anyRun, { numRuns: 1, seed: 1 })[0]!;

describe('many reviews in columns', () => {
  it('are read as they were stored', () => {
    fc.assert(
      fc.property(anyRun, (reviews) => {
        const read = readChunk('phone', structuredClone(columnsOf(reviews)));
        expect([...read.reviews]).toEqual(reviews);
        expect(read.quarantined).toEqual([]);
      }),
    );
  });

  it('are got at by their place, one after the other and each alone', () => {
    const read = reviewsOf('phone', columnsOf(some)) as Reviews;
    const seen: Review[] = [];
    read.forEach((review) => seen.push(review));
    expect(seen).toEqual(some);
    expect(read.length).toBe(some.length);
    for (let place = -some.length - 1; place <= some.length; place++) {
      expect(read.at(place)).toEqual(some.at(place));
    }
  });

  it('take whatever a review may hold', () => {
    const [review] = some;
    const most: Review = {
      ...review!,
      seed: 0xffffffff,
      at: LATEST,
      offset: -1440,
      ms: LONGEST_ANSWER,
      sounded: LONGEST_ANSWER,
      taps: 1000,
    };
    expect([...reviewsOf('phone', columnsOf([most]))]).toEqual([most]);
  });

  it.each([
    ['a place that no word has', { item: 100_000 }],
    ['a confusion that no word has', { takenFor: 100_001 }],
    ['a time that is no whole number', { at: 0.5 }],
    ['a time that is no number', { ms: Number.NaN }],
    ['an offset of more than a day', { offset: 1441 }],
    ['too many taps', { taps: 1001 }],
    ['a grade that there is not', { grade: 4 }],
    ['something between hidden and not', { hidden: 2 }],
  ])('are quarantined together with %s', (_, wrong) => {
    const columns = columnsOf(some);
    const [[name, value]] = Object.entries(wrong) as [[keyof typeof wrong, number]];
    (columns[name] as Float64Array)[some.length - 1] = value;
    const text = JSON.stringify(columns);
    const flawed = { device: 'phone', text, flaw: 'foreign' };
    expect(readChunk('phone', columns)).toEqual({ reviews: [], quarantined: [flawed] });
  });

  it('are quarantined where a column is short, missing or of another kind', () => {
    const columns = columnsOf(some);
    for (const name of Object.keys(columns) as (keyof typeof columns)[]) {
      const { [name]: column, ...others } = columns;
      expect(reviewsOf('phone', others)).toBe('foreign');
      expect(reviewsOf('phone', { ...columns, [name]: {} })).toBe('foreign');
      if (typeof column === 'number') continue;
      expect(reviewsOf('phone', { ...columns, [name]: column.slice(1) })).toBe('foreign');
    }
    expect(reviewsOf('phone', null)).toBe('foreign');
    expect(reviewsOf('phone', 5)).toBe('foreign');
  });

  it('are left to a later version that wrote them', () => {
    expect(reviewsOf('phone', { ...columnsOf(some), version: 2 })).toBe('newer');
  });
});
