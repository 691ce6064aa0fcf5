import { describe, expect, it } from 'vitest';
import { crc32, fnv64, fromBase64url } from '../../src/decks/bytes.ts';
import { toBase64url } from '../../src/decks/seal.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

// RFC 4648, section 10, without padding; the last is of section 5, where 62 and 63 are - and _.
describe('base64url', () => {
  it.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg'],
    ['fooba', 'Zm9vYmE'],
    ['foobar', 'Zm9vYmFy'],
  ])('of “%s” is “%s”', (text, letters) => {
    expect(toBase64url(bytesOf(text))).toBe(letters);
    expect(fromBase64url(letters)).toEqual(bytesOf(text));
  });

  it('has no letter that an address would write otherwise', () => {
    const bytes = Uint8Array.of(0xfb, 0xff, 0xfe);
    expect(toBase64url(bytes)).toBe('-__-');
    expect(fromBase64url('-__-')).toEqual(bytes);
  });

  // Padding, blanks and the letters of plain base64; one letter too many; bits behind the last byte.
  it.each([
    'Zg==',
    ' Zg',
    'Zg ',
    'Zm8\n',
    'Z+8v',
    'Z/8v',
    'Zé',
    'A',
    'AAAAA',
    'Zh',
    'Zm9',
    'Zm9vYh',
  ])('is not “%s”', (letters) => expect(fromBase64url(letters)).toBeNull());
});

describe('sums', () => {
  // The check value of CRC-32/ISO-HDLC (Williams 1993), and of nothing.
  it('by CRC-32 are those of its definition', () => {
    expect(crc32(bytesOf('123456789'))).toBe(0xcbf43926);
    expect(crc32(bytesOf(''))).toBe(0);
  });

  // Test vectors of the hash's authors (Fowler, Noll and Vo).
  it.each([
    ['', 0xcbf29ce484222325n],
    ['a', 0xaf63dc4c8601ec8cn],
    ['foobar', 0x85944171f73967e8n],
  ])('by FNV-1a of “%s” are those of its authors', (text, sum) =>
    expect(fnv64(bytesOf(text))).toBe(sum),
  );
});
