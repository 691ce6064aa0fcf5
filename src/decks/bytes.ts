/** Bytes as text that an address may hold, and the sums that tell whether they came through whole. */

export const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** What each letter of it stands for, by its code: a class's reports are half a million letters. */
const VALUES = new Uint8Array(128);
for (const [value, letter] of [...ALPHABET].entries()) VALUES[letter.charCodeAt(0)] = value;

/** The bytes of base64url without padding (RFC 4648, section 5); null where the text is not what `toBase64url` would have written. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (let i = 0; i < text.length; i++) {
    bits = ((bits << 6) | VALUES[text.charCodeAt(i)]!) & 0xffff;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[at++] = bits >> held;
    }
  }
  const leftOver = bits & ((1 << held) - 1);
  return leftOver === 0 ? bytes : null;
}

/** CRC-32 as in ISO/IEC 8802-3 and RFC 1952: every change inside any 32 neighbouring bits shows. */
export function crc32(bytes: Uint8Array): number {
  let sum = -1;
  for (const byte of bytes) {
    sum ^= byte;
    for (let k = 0; k < 8; k++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}

/** The 64-bit FNV-1a hash (Fowler, Noll and Vo). */
export function fnv64(bytes: Uint8Array): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of bytes) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  return hash;
}
