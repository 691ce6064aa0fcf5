/** Words for days. A lesson day is a date without a time, in the phone's own calendar. */
import { numberWord } from '../parts/english.ts';

const DAY = 86_400_000;

/** When a lesson day begins on this phone, ms. */
export function startOf(lessonDay: string): number {
  const [year, month, day] = lessonDay.split('-').map(Number);
  return new Date(year!, month! - 1, day!).getTime();
}

/** Whole days from today to a lesson day; negative when it is past. */
export function daysUntil(lessonDay: string, now: number): number {
  const today = new Date(now);
  today.setHours(0, 0, 0, 0);
  return Math.round((startOf(lessonDay) - today.getTime()) / DAY);
}

/** When a lesson day begins that is yet to come, ms; null where there is none, or it has begun. */
export function startAhead(lessonDay: string | null, now: number): number | null {
  return lessonDay !== null && daysUntil(lessonDay, now) > 0 ? startOf(lessonDay) : null;
}

/** `Tuesday`, or with its date where it is a week away or more: `Tuesday 8 December`. */
export function dayName(lessonDay: string, now: number): string {
  const near = Math.abs(daysUntil(lessonDay, now)) < 7;
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    ...(!near && { day: 'numeric', month: 'long' }),
  }).format(startOf(lessonDay));
}

/** `four days left`, `today`, `three days ago`. */
export function daysLeft(lessonDay: string, now: number): string {
  const days = daysUntil(lessonDay, now);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  const count = numberWord(Math.abs(days));
  return days > 0 ? `${count} days left` : `${count} ${days === -1 ? 'day' : 'days'} ago`;
}
