/** Days as practice counts them. */

/** A day, ms. */
export const DAY = 86_400_000;

const HOUR = 3_600_000;

/** A local day begins at this hour, for people who play late; in the morning it is what the night has left. */
const [BEGINS, MORNING] = [4 * HOUR, 8 * HOUR];

/** The local day a moment belongs to, numbered from 1970. `offset`: of the local clock from UTC, minutes. */
export function localDay(at: number, offset: number): number {
  return Math.floor((at + offset * 60_000 - BEGINS) / DAY);
}

/** Eight in the morning after a local day, ms: when what was practised on it is looked at. */
export function morningAfter(day: number, offset: number): number {
  return (day + 1) * DAY - offset * 60_000 + MORNING;
}

/** Tomorrow morning, ms: eight o'clock after the local day that a moment belongs to. */
export function tomorrowMorning(now: number, offset: number): number {
  return morningAfter(localDay(now, offset), offset);
}
