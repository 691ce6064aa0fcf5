/** 64 random bits in the letters and figures of base 36. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint32Array(2))].map((bits) => bits.toString(36)).join('');
}
