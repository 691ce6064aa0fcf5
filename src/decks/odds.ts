/**
 * Whole numbers that were packed by how likely they are: one of odds 1 in 8 took 3 bits. Reports of versions 1 and 2 hold
 * them; nothing is packed so any longer.
 * Asymmetric numeral systems (J. Duda, "Asymmetric numeral systems", arXiv:1311.2540, 2013), a byte at a time.
 *
 * Odds are made of whole numbers by + − × ÷ alone, which every machine rounds alike; `Math.exp` is not.
 */

/** Where each value's share of `SCALE` begins, and the end: values 0 to `starts.length - 2`. */
export type Odds = readonly number[];

const SCALE_BITS = 12;
const SCALE = 2 ** SCALE_BITS;
const LOWEST = 2 ** 23;

/** Odds in proportion to weights from 0 up; nothing is so unlikely that it could not be. At most 1,000 of them. */
export function oddsOf(weights: readonly number[]): Odds {
  const spare = SCALE - weights.length;
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const starts = [0];
  let before = 0;
  weights.forEach((weight, i) => {
    before += weight;
    starts.push(i + 1 + Math.floor((before / sum) * spare));
  });
  starts[weights.length] = SCALE;
  return starts;
}

/** `count` values, as likely as they are near to the middle one; all alike where `spread` is Infinity. */
export function bell(count: number, middle: number, spread: number): Odds {
  const weights = Array.from({ length: count }, (_, value) => {
    const away = (value - middle) / spread;
    const once = 1 / (1 + (away * away) / 8);
    const twice = once * once;
    return twice * twice;
  });
  return oddsOf(weights);
}

/** All values alike. */
export function even(count: number): Odds {
  return oddsOf(Array<number>(count).fill(1));
}

/** Takes apart what was packed, with the same odds in the same order. */
interface OddsReader {
  /** The next value; anything within the odds beyond the end. */
  take(odds: Odds): number;
  /** Whether everything was taken and nothing more. */
  atEnd(): boolean;
}

export function oddsReader(bytes: Uint8Array): OddsReader {
  let at = 4;
  let state = 0;
  for (let i = 0; i < 4; i++) state = state * 256 + (bytes[i] ?? 0);
  return {
    take(odds) {
      // Bit by bit, which is several times as fast as % here: a class's reports are many.
      const within = state & (SCALE - 1);
      let [value, beyond] = [0, odds.length - 1];
      while (beyond - value > 1) {
        const middle = (value + beyond) >> 1;
        if (odds[middle]! <= within) value = middle;
        else beyond = middle;
      }
      const start = odds[value]!;
      state = (odds[value + 1]! - start) * (state >>> SCALE_BITS) + within - start;
      for (; state < LOWEST && at < bytes.length; at++) state = state * 256 + bytes[at]!;
      return value;
    },
    atEnd: () => at === bytes.length && state === LOWEST,
  };
}
