/**
 * Days of practice as a calendar file (iCalendar, RFC 5545): one event that comes again, at a time of the day wherever
 * the phone is, with an alarm.
 */

/** Weekdays as `Date` counts them, from Sunday. */
export const WEEKDAYS = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'] as const;

interface Practice {
  /** What the event is called. */
  readonly summary: string;
  /** What is told with it. */
  readonly description: string;
  /** Where the practice is: the page's address. */
  readonly url: string;
  /** Tells the event from all others; a file of the same one takes its place. */
  readonly uid: string;
  /** The first and the last day that may have one: `2026-12-01`. */
  readonly from: string;
  readonly until: string;
  /** `17:30` */
  readonly time: string;
  /** Which days of the week, 0 for Sunday. */
  readonly weekdays: readonly number[];
  /** How long it takes, minutes. */
  readonly minutes: number;
}

/** The days of practice, as `2026-12-01`. */
export function practiceDays({
  from,
  until,
  weekdays,
}: Pick<Practice, 'from' | 'until' | 'weekdays'>): readonly string[] {
  const days: string[] = [];
  // In UTC every day has its 24 hours.
  for (let day = new Date(`${from}T00:00Z`); ; day.setUTCDate(day.getUTCDate() + 1)) {
    const name = day.toISOString().slice(0, 10);
    if (!(name <= until)) return days;
    if (weekdays.includes(day.getUTCDay())) days.push(name);
  }
}

/**
 * The file's text; null where no day is left.
 *
 * @param now ms; says when the file was made
 */
export function calendarFile(practice: Practice, now: number): string | null {
  const days = practiceDays(practice);
  const [first] = days;
  if (first === undefined) return null;
  const { summary, description, url, uid, time, minutes } = practice;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Skipwise//Practice days//EN',
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `DTSTAMP:${new Date(now).toISOString().replaceAll(/[-:]|\.\d+/g, '')}`,
    // Without a zone, as a clock on the wall says it (3.3.5, form 1).
    `DTSTART:${first.replaceAll('-', '')}T${time.replace(':', '')}00`,
    `DURATION:PT${minutes}M`,
    ...(days.length > 1 ? [`RRULE:${ruleOf(practice, days.length)}`] : []),
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    `URL:${url}`,
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    'TRIGGER:PT0S',
    `DESCRIPTION:${escaped(summary)}`,
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** How the event comes again (3.3.10). The first day is one of its days, as the rule demands. */
function ruleOf({ weekdays }: Practice, count: number): string {
  const some = WEEKDAYS.filter((_, day) => weekdays.includes(day));
  const every = some.length === WEEKDAYS.length ? 'DAILY' : `WEEKLY;BYDAY=${some.join(',')}`;
  return `FREQ=${every};COUNT=${count}`;
}

/** Text in which backslash, semicolon, comma and the end of a line stand for themselves (3.3.11). */
function escaped(text: string): string {
  return text.replaceAll(/[\\;,]/g, String.raw`\$&`).replaceAll('\n', String.raw`\n`);
}

/** The most octets on a line, without its end (3.1). */
const MOST_OCTETS = 75;

/** A line in pieces that each begin with a space but for the first; no letter is cut in two. */
function folded(line: string): string {
  const encoder = new TextEncoder();
  let length = 0;
  let text = '';
  for (const letter of line) {
    const octets = encoder.encode(letter).length;
    if (length + octets > MOST_OCTETS) {
      text += '\r\n ';
      length = 1;
    }
    text += letter;
    length += octets;
  }
  return text;
}
