/** Days that are yet to come, on this phone. */
import { tomorrowMorning } from '../memory/morning.ts';

/** Tomorrow morning on this phone, ms: the next one after the night, for who is up late. */
export function tomorrowOf(now: number): number {
  return tomorrowMorning(now, -new Date(now).getTimezoneOffset());
}

/** A date so many days after `now`, as `2026-12-01`. */
export function dayAfter(now: number, days: number): string {
  const date = new Date(now);
  date.setDate(date.getDate() + days);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
