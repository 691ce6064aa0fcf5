/** Whole numbers packed bit by bit, the highest bit first. */
export interface BitWriter {
  /** Appends the lowest `width` bits of a number, 1 to 32 of them. */
  put(value: number, width: number): void;
  /** All that was put, filled up with zeros to a whole byte. */
  bytes(): Uint8Array;
}

export function bitWriter(): BitWriter {
  const bytes: number[] = [];
  let used = 0;
  return {
    put(value, width) {
      for (let bit = width - 1; bit >= 0; bit--, used++) {
        if (used % 8 === 0) bytes.push(0);
        bytes[bytes.length - 1]! |= ((value >>> bit) & 1) << (7 - (used % 8));
      }
    },
    bytes: () => Uint8Array.from(bytes),
  };
}

/** Takes apart what a `BitWriter` packed. */
export interface BitReader {
  /** The next `width` bits, 1 to 32, as a number from 0; zeros beyond the end. */
  take(width: number): number;
  /** The bytes of which nothing was taken yet. */
  rest(): Uint8Array;
  /** Whether everything was taken but the zeros that fill up the last byte. */
  atEnd(): boolean;
}

export function bitReader(bytes: Uint8Array): BitReader {
  let used = 0;
  const bit = (at: number) => ((bytes[at >> 3] ?? 0) >> (7 - (at % 8))) & 1;
  return {
    take(width) {
      let value = 0;
      for (const end = used + width; used < end; used++) value = (value << 1) | bit(used);
      return value >>> 0;
    },
    rest: () => bytes.subarray(Math.ceil(used / 8)),
    atEnd() {
      if (Math.ceil(used / 8) !== bytes.length) return false;
      for (let at = used; at < 8 * bytes.length; at++) if (bit(at) === 1) return false;
      return true;
    },
  };
}
