/** Figures in words. */

/** A share of 1 as `62 %`. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** `1 drill`, `3 drills`. */
export function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}

/** `once`, `twice`, `3 times`. */
export function timesWords(count: number): string {
  return count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;
}

/** A spread below this is not told: what a hand keeps, and how onsets are heard, lies within it. */
const FINEST = 0.006;

/** `± 21 ms`, `within 6 ms`. */
export function spreadWords(seconds: number): string {
  const ms = (of: number) => `${Math.round(1000 * of)} ms`;
  return seconds < FINEST ? `within ${ms(FINEST)}` : `± ${ms(seconds)}`;
}
