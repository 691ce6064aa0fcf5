/** Days as practice counts them. */

/** A day, ms. */
export const DAY = 86_400_000;

export const HOUR = 3_600_000;

/** A local day begins at this hour, for people who play late. */
const BEGINS = 4 * HOUR;

/** The local day a moment belongs to, numbered from 1970. `offset`: of the local clock from UTC, minutes. */
export function localDay(at: number, offset: number): number {
  return Math.floor((at + offset * 60_000 - BEGINS) / DAY);
}
