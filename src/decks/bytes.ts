/** Bytes as text that an address may hold, and the sums that tell whether they came through whole. */

/** The bytes of base64url without padding (RFC 4648, section 5); null where the text is not what `toBase64url` would have written. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return null;
  const base64 = text.replaceAll('-', '+').replaceAll('_', '/');
  const letters = atob(base64);
  // What the last letter has beyond the last byte says nothing, and has to be nothing.
  if (btoa(letters).replace(/=+$/, '') !== base64) return null;
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
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
