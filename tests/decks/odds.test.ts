import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bell, even, oddsOf, oddsReader } from '../../src/decks/odds.ts';
import { oddsWriter } from './oddsWriter.ts';

const odds = fc.oneof(
  fc
    .array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 60 })
    .map((w) => oddsOf([...w, 1])),
  fc
    .tuple(
      fc.integer({ min: 1, max: 64 }),
      fc.nat({ max: 70 }),
      fc.constantFrom(0.5, 3, 20, Infinity),
    )
    .map((of) => bell(...of)),
);
const packed = fc.array(
  odds.chain((of) => fc.record({ of: fc.constant(of), value: fc.nat({ max: of.length - 2 }) })),
  { maxLength: 300 },
);

const pack = (values: readonly { of: readonly number[]; value: number }[]) => {
  const writer = oddsWriter();
  for (const { of, value } of values) writer.put(value, of);
  return writer.bytes();
};

describe('values packed by their odds', () => {
  it('read back to themselves, and end where they end', () => {
    fc.assert(
      fc.property(packed, (values) => {
        const reader = oddsReader(pack(values));
        expect(values.map(({ of }) => reader.take(of))).toEqual(values.map(({ value }) => value));
        expect(reader.atEnd()).toBe(true);
      }),
    );
  });

  it('take as many bits as their odds say, and four bytes', () => {
    const rare = oddsOf([1, 7]);
    const values = Array.from({ length: 800 }, (_, i) => ({
      of: rare,
      value: i % 8 === 0 ? 0 : 1,
    }));
    const entropy = -800 * ((1 / 8) * Math.log2(1 / 8) + (7 / 8) * Math.log2(7 / 8));
    const bits = pack(values).length * 8;
    expect(bits).toBeGreaterThan(entropy);
    expect(bits).toBeLessThan(entropy + 40);
    expect(pack(Array.from({ length: 80 }, () => ({ of: even(16), value: 5 })))).toHaveLength(44);
  });

  it('are known not to end where bytes are missing, or too many, or any', () => {
    const values = Array.from({ length: 40 }, (_, i) => ({ of: even(9), value: i % 9 }));
    const bytes = pack(values);
    const endsWith = (other: Uint8Array) => {
      const reader = oddsReader(other);
      for (const { of } of values) reader.take(of);
      return reader.atEnd();
    };
    expect(endsWith(bytes)).toBe(true);
    expect(endsWith(bytes.subarray(0, -1))).toBe(false);
    expect(endsWith(Uint8Array.of(...bytes, 0))).toBe(false);
    expect(endsWith(new Uint8Array())).toBe(false);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (any) => {
        const reader = oddsReader(any);
        for (const { of } of values) expect(reader.take(of)).toBeLessThan(9);
      }),
    );
  });

  it('have odds that hold something for every value and come out even where all are alike', () => {
    fc.assert(
      fc.property(odds, (of) => {
        expect([of[0], of.at(-1)]).toEqual([0, 4096]);
        for (let i = 1; i < of.length; i++) expect(of[i]!).toBeGreaterThan(of[i - 1]!);
      }),
    );
    expect(even(4)).toEqual([0, 1024, 2048, 3072, 4096]);
    expect(bell(4, 1, Infinity)).toEqual(even(4));
  });
});
