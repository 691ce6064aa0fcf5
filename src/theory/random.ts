/**
 * Chance from a seed: the same seed gives the same numbers on every machine.
 *
 * Mulberry32 (Tommy Ettinger, 2017, public domain): 32 bits of state, whole-number arithmetic only. Good for drawing
 * cards, not for secrets.
 */
export interface Random {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** A whole number from 0 to `n - 1`; `n` at least 1. */
  below(n: number): number;
  /** One of them; throws a RangeError where there is none. */
  pick<T>(of: readonly T[]): T;
  /** All of them in another order; the list given stays as it is (Fisher–Yates). */
  shuffle<T>(of: readonly T[]): T[];
}

/** A source of chance; of the seed the lowest 32 bits count. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    return mix(state) / 2 ** 32;
  };
  const below = (n: number) => Math.floor(next() * n);
  return {
    next,
    below,
    pick(of) {
      if (of.length === 0) throw new RangeError('There is nothing to pick from.');
      return of[below(of.length)]!;
    },
    shuffle(of) {
      const list = [...of];
      for (let i = list.length - 1; i > 0; i--) {
        const j = below(i + 1);
        [list[i], list[j]] = [list[j]!, list[i]!];
      }
      return list;
    },
  };
}

/** The n-th of a row of seeds that come from one seed: 32 bits, unsigned. */
export function seedAt(seed: number, n: number): number {
  return mix((seed + Math.imul(n + 1, 0x9e3779b1)) >>> 0);
}

function mix(state: number): number {
  let t = Math.imul(state ^ (state >>> 15), state | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return (t ^ (t >>> 14)) >>> 0;
}
