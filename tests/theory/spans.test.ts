import { describe, expect, it } from 'vitest';
import { isSpan, spansOf } from '../../src/theory/analysis/spans.ts';

describe('the groups that there may be of a phrase', () => {
  it('are of so many notes at the most, and few enough to be gone through for every phrase that a deck takes', () => {
    const spans = spansOf(200, 16, []);
    expect(spans.count).toBe(184 * 16 + (16 * 17) / 2);
    expect(isSpan(spans, 0, 16)).toBe(true);
    expect(isSpan(spans, 0, 17)).toBe(false);
    expect(isSpan(spans, 199, 1)).toBe(true);
    expect(isSpan(spans, 199, 2)).toBe(false);
  });

  it('have each a number of its own', () => {
    const { least, most, base, count } = spansOf(9, 4, [{ span: [2, 8] }]);
    const numbers = Array.from(most, (longest, from) =>
      Array.from({ length: longest }, (_, i) => i + 1)
        .filter((length) => length >= least[from]!)
        .map((length) => base[from]! + length),
    ).flat();
    expect(numbers).toEqual(Array.from({ length: count }, (_, number) => number));
  });

  it('take what is ruled as a whole and no longer way around it', () => {
    const spans = spansOf(200, 16, [{ span: [0, 200] }]);
    expect(spans.count).toBe(1);
    expect(isSpan(spans, 0, 200)).toBe(true);
    const inside = spansOf(6, 16, [{ span: [2, 4] }]);
    const all = [0, 1, 2, 3, 4, 5].flatMap((from) =>
      [1, 2, 3, 4, 5, 6]
        .filter((length) => isSpan(inside, from, length))
        .map((length) => `${from}-${from + length}`),
    );
    expect(all).toEqual(['0-1', '0-2', '1-2', '2-4', '4-5', '4-6', '5-6']);
  });

  it('are none for notes that two rulings take', () => {
    const spans = spansOf(4, 16, [{ span: [0, 3] }, { span: [2, 4] }]);
    expect(spans.most[0]! < spans.least[0]!).toBe(true);
  });
});
