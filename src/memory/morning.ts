import { DAY, HOUR, localDay } from './day.ts';

/** In the morning what was practised is what the night has left of it. */
const MORNING = 8 * HOUR;

/** Eight in the morning after a local day, ms: when what was practised on it is looked at. */
export function morningAfter(day: number, offset: number): number {
  return (day + 1) * DAY - offset * 60_000 + MORNING;
}

/** Tomorrow morning, ms: eight o'clock after the local day that a moment belongs to. */
export function tomorrowMorning(now: number, offset: number): number {
  return morningAfter(localDay(now, offset), offset);
}
