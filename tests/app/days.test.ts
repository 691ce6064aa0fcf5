/** Days as the phone's own calendar has them, in zones far apart and over the change to summer time and back. */
import { afterAll, describe, expect, it } from 'vitest';
import { dayName, daysLeft, daysUntil, startAhead, startOf } from '../../src/app/days.ts';
import { dayAfter, tomorrowOf } from '../../src/app/tomorrow.ts';

const before = process.env.TZ;
afterAll(() => {
  if (before === undefined) delete process.env.TZ;
  else process.env.TZ = before;
});

const HOUR = 3_600_000;

// Zone; its clock's offset from UTC in January, hours; a night in which clocks go forward, and one in which they go back.
const ZONES = [
  ['UTC', 0, null, null],
  ['Europe/Berlin', 1, '2026-03-29', '2026-10-25'],
  ['America/New_York', -5, '2026-03-08', '2026-11-01'],
  ['America/St_Johns', -3.5, '2026-03-08', '2026-11-01'],
  ['Asia/Kolkata', 5.5, null, null],
  ['Pacific/Auckland', 13, '2026-09-27', '2026-04-05'],
  ['Pacific/Kiritimati', 14, null, null],
  ['Pacific/Pago_Pago', -11, null, null],
] as const;

describe.each(ZONES)('in %s', (zone, offset, forward, back) => {
  const within = <T>(what: () => T): T => {
    process.env.TZ = zone;
    return what();
  };
  const local = (day: string, hour: number, minute = 0) => {
    const [year, month, date] = day.split('-').map(Number);
    return new Date(year!, month! - 1, date!, hour, minute).getTime();
  };

  it('a lesson day begins at midnight there', () =>
    within(() => {
      expect(startOf('2026-01-15')).toBe(Date.UTC(2026, 0, 15) - offset * HOUR);
      expect(startAhead('2026-01-15', local('2026-01-14', 23, 59))).toBe(startOf('2026-01-15'));
      expect(startAhead('2026-01-15', local('2026-01-15', 0, 0))).toBeNull();
      expect(startAhead('2026-01-15', local('2026-01-16', 9))).toBeNull();
      expect(startAhead(null, local('2026-01-14', 9))).toBeNull();
    }));

  it('days are counted from midnight to midnight, at any hour of the day', () =>
    within(() => {
      for (const hour of [0, 1, 3, 12, 23]) {
        const now = local('2026-01-14', hour, 30);
        expect(daysUntil('2026-01-15', now), `${hour}:30`).toBe(1);
        expect(daysUntil('2026-01-14', now)).toBe(0);
        expect(daysUntil('2026-01-13', now)).toBe(-1);
        expect(daysUntil('2026-02-14', now)).toBe(31);
      }
    }));

  it('a day of 23 or of 25 hours is one day', () =>
    within(() => {
      for (const night of [forward, back].filter((one) => one !== null)) {
        const [year, month, date] = night.split('-').map(Number);
        const day = (by: number) =>
          new Date(Date.UTC(year!, month! - 1, date! + by)).toISOString().slice(0, 10);
        for (const hour of [0, 4, 12, 23]) {
          const now = local(day(-1), hour, 45);
          expect(daysUntil(day(1), now), `${night} ${hour}:45`).toBe(2);
          expect(daysUntil(day(-2), now)).toBe(-1);
          expect(daysUntil(night, local(day(1), hour))).toBe(-1);
          for (const by of [1, 2, 7]) expect(dayAfter(now, by)).toBe(day(by - 1));
        }
        expect(new Date(tomorrowOf(local(day(0), 20))).getHours()).toBe(8);
      }
    }));

  it('tomorrow morning is eight o’clock there, after the night for who is up late', () =>
    within(() => {
      expect(tomorrowOf(local('2026-01-14', 21))).toBe(local('2026-01-15', 8));
      expect(tomorrowOf(local('2026-01-15', 3, 59))).toBe(local('2026-01-15', 8));
      expect(tomorrowOf(local('2026-01-15', 4))).toBe(local('2026-01-16', 8));
    }));

  it('days have the names of the calendar there', () =>
    within(() => {
      const now = local('2026-01-14', 23, 30);
      expect(dayName('2026-01-15', now)).toBe('Thursday');
      expect(dayName('2026-01-20', now)).toBe('Tuesday');
      expect(dayName('2026-01-21', now)).toBe('Wednesday 21 January');
      expect(dayName('2026-01-08', now)).toBe('Thursday');
      expect(dayName('2026-01-07', now)).toBe('Wednesday 7 January');
      const left = ['16', '15', '14', '13', '12'].map((day) => daysLeft(`2026-01-${day}`, now));
      expect(left).toEqual(['two days left', 'tomorrow', 'today', 'one day ago', 'two days ago']);
    }));
});
