/** Figures in words where not the figure itself is told. */

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
