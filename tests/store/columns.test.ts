import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChunk } from '../../src/store/chunk.ts';
import { columnsOf, reviewsOf } from '../../src/store/columns.ts';
import { anyReview } from './reviews.ts';

const anyRun = fc
  .array(anyReview, { minLength: 1, maxLength: 40 })
  .map((reviews) => reviews.map((review, k) => ({ ...review, device: 'phone', n: 7 + k })));

describe('many reviews in a line', () => {
  it('are read as they were written', () => {
    fc.assert(
      fc.property(anyRun, (reviews) => {
        const line = columnsOf(reviews);
        expect(line).not.toContain('\n');
        expect(readChunk('phone', line)).toEqual({ reviews, aside: [] });
      }),
    );
  });

  it('are set aside together where anything in the line is wrong', () => {
    const damage = fc.record({
      column: fc.integer({ min: 1, max: 12 }),
      row: fc.nat(39),
      value: fc.constantFrom({}, 0.5, true),
    });
    fc.assert(
      fc.property(anyRun, damage, (reviews, { column, row, value }) => {
        const line = JSON.parse(columnsOf(reviews)) as unknown[];
        const cells = line[column];
        if (Array.isArray(cells)) cells[row % cells.length] = value;
        else line[column] = value;
        const text = JSON.stringify(line);
        const flawed = { device: 'phone', text, flaw: 'foreign' };
        expect(readChunk('phone', text)).toEqual({ reviews: [], aside: [flawed] });
      }),
    );
  });

  it('are set aside where a column is short or missing', () => {
    const [reviews] = fc.sample(anyRun, { numRuns: 1, seed: 1 });
    const line = JSON.parse(columnsOf(reviews!)) as unknown[][];
    expect(reviewsOf('phone', line.with(5, line[5]!.slice(1)))).toBe('foreign');
    expect(reviewsOf('phone', line.slice(0, -1))).toBe('foreign');
  });
});
