/** The calendar file against RFC 5545: read by ical.js (Mozilla's library, MPL-2.0), and the standard's own rules for lines. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile, practiceDays, WEEKDAYS } from '../../src/app/calendar/practiceDays.ts';

const NOW = Date.UTC(2026, 10, 29, 1, 36, 46, 789);
const EVERY = [0, 1, 2, 3, 4, 5, 6];

const practice = {
  summary: 'Practise: Tuesday; quay side, B♭ \\ “slow”',
  description: 'Tap, then practise.\nWorks offline.',
  url: 'https://music.example/room/#/today',
  uid: 'a1b2c3@skipwise',
  from: '2026-11-29',
  until: '2026-12-06',
  time: '17:30',
  weekdays: EVERY,
  minutes: 8,
};

/** The one event of a file, as the library understands it. */
function eventIn(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = calendar.getAllSubcomponents('vevent');
  expect(events).toHaveLength(1);
  return { calendar, component: events[0]!, event: new ICAL.Event(events[0]!) };
}

/** When the event takes place, as the library unfolds its rule. */
function occurrences(event: ICAL.Event): string[] {
  const found: string[] = [];
  if (!event.isRecurring()) return [event.startDate.toString()];
  const all = event.iterator();
  for (let next = all.next(); next; next = all.next()) found.push(next.toString());
  return found;
}

describe('the calendar file', () => {
  it('has what section 3.6 demands of a calendar, an event and an alarm', () => {
    const { calendar, component, event } = eventIn(calendarFile(practice, NOW)!);
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toMatch(/Skipwise/);
    expect(event.uid).toBe(practice.uid);
    const stamp = component.getFirstPropertyValue('dtstamp') as ICAL.Time;
    expect([stamp.toString(), stamp.zone.tzid]).toEqual(['2026-11-29T01:36:46Z', 'UTC']);
    expect(event.summary).toBe(practice.summary);
    expect(event.description).toBe(practice.description);
    expect(component.getFirstPropertyValue('url')).toBe(practice.url);
    expect(event.duration.toSeconds()).toBe(480);
    const alarm = component.getFirstSubcomponent('valarm')!;
    expect(alarm.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect((alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds()).toBe(0);
    expect(alarm.getFirstPropertyValue('description')).toBe(practice.summary);
  });

  it('escapes what section 3.3.11 says, and folds where section 3.1 does', () => {
    const summary = String.raw`A;B,C\D:E "F"`;
    const lines = calendarFile(
      { ...practice, summary, description: `Two\nlines ${'x'.repeat(80)}` },
      NOW,
    )!.split('\r\n');
    expect(lines).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Skipwise//Practice days//EN',
      'BEGIN:VEVENT',
      'UID:a1b2c3@skipwise',
      'DTSTAMP:20261129T013646Z',
      'DTSTART:20261129T173000',
      'DURATION:PT8M',
      'RRULE:FREQ=DAILY;COUNT=8',
      String.raw`SUMMARY:A\;B\,C\\D:E "F"`,
      // 75 octets with `DESCRIPTION:` and `Two\nlines `, 12 and 11 of them.
      String.raw`DESCRIPTION:Two\nlines ${'x'.repeat(52)}`,
      ` ${'x'.repeat(28)}`,
      'URL:https://music.example/room/#/today',
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:PT0S',
      String.raw`DESCRIPTION:A\;B\,C\\D:E "F"`,
      'END:VALARM',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it('tells a time as a clock on the wall says it, in whatever zone the phone is', () => {
    const { event } = eventIn(calendarFile(practice, NOW)!);
    expect(event.startDate.zone.tzid).toBe('floating');
    expect(event.startDate.toString()).toBe('2026-11-29T17:30:00');
  });

  it('comes each chosen day from the first to the last, in any week, over months and years', () => {
    const day = fc
      .integer({ min: 0, max: 5000 })
      .map((n) => new Date(Date.UTC(2026, 0, 1) + n * 86_400_000).toISOString().slice(0, 10));
    fc.assert(
      fc.property(
        day,
        fc.nat({ max: 70 }),
        fc.shuffledSubarray(EVERY, { minLength: 1 }),
        (from, length, weekdays) => {
          const until = new Date(Date.parse(from) + length * 86_400_000).toISOString().slice(0, 10);
          const some = { ...practice, from, until, weekdays };
          const text = calendarFile(some, NOW);
          const days: string[] = [];
          for (let k = 0; k <= length; k++) {
            const one = new Date(Date.parse(from) + k * 86_400_000);
            if (weekdays.includes(one.getUTCDay())) days.push(one.toISOString().slice(0, 10));
          }
          expect(practiceDays(some)).toEqual(days);
          const found = text === null ? [] : occurrences(eventIn(text).event);
          expect(found).toEqual(days.map((one) => `${one}T17:30:00`));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('has no line longer than 75 octets, ends each in CRLF, and cuts no letter in two (section 3.1)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (title) => {
        const summary = title.replaceAll(/\p{Cc}/gu, ' ');
        const text = calendarFile({ ...practice, summary }, NOW)!;
        expect(text.endsWith('\r\n')).toBe(true);
        for (const line of text.split('\r\n')) {
          expect(line).not.toMatch(/[\r\n]/);
          const bytes = new TextEncoder().encode(line);
          expect(bytes.length).toBeLessThanOrEqual(75);
          expect(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)).toBe(
            line,
          );
        }
        expect(eventIn(text).event.summary).toBe(summary);
      }),
    );
  });

  it('is none where no chosen day is left', () => {
    expect(calendarFile({ ...practice, until: '2026-11-28' }, NOW)).toBeNull();
    expect(calendarFile({ ...practice, until: '2026-11-30', weekdays: [3] }, NOW)).toBeNull();
  });

  it('names weekdays as section 3.3.10 does', () => {
    const monday = calendarFile({ ...practice, until: '2026-12-31', weekdays: [1, 4] }, NOW)!;
    expect(monday).toContain('DTSTART:20261130T173000\r\n');
    expect(monday).toContain('RRULE:FREQ=WEEKLY;BYDAY=MO,TH;COUNT=10\r\n');
    expect(WEEKDAYS).toHaveLength(7);
  });
});
