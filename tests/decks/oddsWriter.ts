import type { Odds } from '../../src/decks/odds.ts';

const SCALE = 2 ** 12;
const LOWEST = 2 ** 23;

/** Packs values with their odds, as reports of versions 1 and 2 were: what is read must have been written. */
export interface OddsWriter {
  put(value: number, odds: Odds): void;
  bytes(): Uint8Array;
}

export function oddsWriter(): OddsWriter {
  const put: { start: number; share: number }[] = [];
  return {
    put(value, odds) {
      const start = odds[value]!;
      put.push({ start, share: odds[value + 1]! - start });
    },
    bytes() {
      // What is packed last comes out first.
      const bytes: number[] = [];
      let state = LOWEST;
      for (const { start, share } of put.toReversed()) {
        for (; state >= (LOWEST / SCALE) * 256 * share; state = Math.floor(state / 256)) {
          bytes.push(state % 256);
        }
        state = Math.floor(state / share) * SCALE + (state % share) + start;
      }
      for (let i = 0; i < 4; i++, state = Math.floor(state / 256)) bytes.push(state % 256);
      return Uint8Array.from(bytes.toReversed());
    },
  };
}
