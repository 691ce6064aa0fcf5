import { describe, expect, it } from 'vitest';
import { bitReader, bitWriter } from '../../src/decks/bits.ts';

describe('bits', () => {
  // 101 · 00001 · 11 are 1010 0001 11, filled up: a1 c0.
  it('lie the highest first, filled up with zeros to a whole byte', () => {
    const bits = bitWriter();
    expect(bits.bytes()).toEqual(Uint8Array.of());
    bits.put(5, 3);
    expect(bits.bytes()).toEqual(Uint8Array.of(0xa0));
    bits.put(1, 5);
    expect(bits.bytes()).toEqual(Uint8Array.of(0xa1));
    bits.put(3, 2);
    expect(bits.bytes()).toEqual(Uint8Array.of(0xa1, 0xc0));
  });

  it('are the lowest of a number, and may be 32', () => {
    const bits = bitWriter();
    bits.put(0xfe, 4);
    bits.put(0xdeadbeef, 32);
    expect(bits.bytes()).toEqual(Uint8Array.of(0xed, 0xea, 0xdb, 0xee, 0xf0));
    const read = bitReader(bits.bytes());
    expect([read.take(4), read.take(32)]).toEqual([0xe, 0xdeadbeef]);
  });

  it('are zeros beyond the end', () => {
    const bits = bitReader(Uint8Array.of(0xff));
    expect([bits.take(6), bits.take(6), bits.take(3)]).toEqual([63, 48, 0]);
  });

  it('that were not begun are the rest', () => {
    const bits = bitReader(Uint8Array.of(1, 2, 3));
    expect(bits.rest()).toEqual(Uint8Array.of(1, 2, 3));
    bits.take(1);
    expect(bits.rest()).toEqual(Uint8Array.of(2, 3));
    bits.take(7);
    expect(bits.rest()).toEqual(Uint8Array.of(2, 3));
    bits.take(1);
    expect(bits.rest()).toEqual(Uint8Array.of(3));
  });

  // Bytes, how many bits of them are taken, and whether nothing but filling is left.
  it.each([
    [[], 0, true],
    [[0xa0], 3, true],
    [[0xa0], 8, true],
    [[0xb0], 3, false],
    [[0xa1], 3, false],
    [[0xa1], 7, false],
    [[0xa1], 8, true],
    [[0xa0, 0], 3, false],
    [[0xa0, 0], 8, false],
    [[0xa0, 0], 9, true],
    [[0xa0, 1], 9, false],
    [[0xa0], 9, false],
  ])('of %j, %i taken, are at their end: %s', (bytes, taken, isAtEnd) => {
    const bits = bitReader(Uint8Array.from(bytes));
    if (taken > 0) bits.take(taken);
    expect(bits.atEnd()).toBe(isAtEnd);
  });
});
