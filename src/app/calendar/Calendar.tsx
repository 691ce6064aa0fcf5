import { useState } from 'preact/hooks';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { Written } from '../../parts/Written.tsx';
import { minutesADay } from '../../practice/untilReady.ts';
import { dayName, startAhead } from '../days.ts';
import { dayAfter } from '../tomorrow.ts';
import { download } from '../download.ts';
import { counted } from '../figures.ts';
import { base } from '../router.ts';
import { currentLesson, itemsOfLesson, memory, opened, type Lesson } from '../state.ts';
import { calendarFile, practiceDays } from './practiceDays.ts';

/** Days of practice until the lesson, as a file for any calendar: no server is there to remind anyone. */
export default function Calendar() {
  if (!opened.value) return <main class="screen" aria-busy="true" />;
  const lesson = currentLesson();
  return (
    <main class="screen">
      <h1>Practice days</h1>
      {lesson ? <Days lesson={lesson} /> : <p>There is no lesson to practise yet.</p>}
      <a class="button last" href="#/today">
        Back to today
      </a>
    </main>
  );
}

/** Weekdays in the order of a week, as `Date` counts them. */
const WEEK = [1, 2, 3, 4, 5, 6, 0];
/** Of a Sunday. */
const SUNDAY = '2023-01-01';

function Days({ lesson }: { lesson: Lesson }) {
  const { deck } = lesson;
  const [time, setTime] = useState('18:00');
  const [weekdays, setWeekdays] = useState<readonly number[]>(WEEK);
  const [said, setSaid] = useState('');
  const now = Date.now();
  const practice = { ...spanOf(deck.lessonDay, time, now), weekdays };
  const count = time === '' ? 0 : practiceDays(practice).length;
  const change = (day: number, on: boolean) =>
    setWeekdays(WEEK.filter((one) => (one === day ? on : weekdays.includes(one))));
  const save = () => {
    const file = calendarFile({ ...practice, ...eventOf(lesson, now), time }, now);
    if (file === null) return;
    download(new Blob([file], { type: 'text/calendar' }), 'practice.ics');
    setSaid('Saved. Open the file with your calendar: it asks whether to take the days in.');
  };
  return (
    <>
      <p>
        A file that puts the days of practice for “
        <Written text={deck.title} />” into your calendar, with a reminder at the time that suits
        you. Nothing is sent; saved again, it takes the place of the days before.
      </p>
      <label class="field">
        <span class="label">Time of the day</span>
        <input type="time" value={time} onInput={(event) => setTime(event.currentTarget.value)} />
      </label>
      <Choices legend="On these days">
        {WEEK.map((day) => (
          <Choice
            key={day}
            label={nameOf(day)}
            checked={weekdays.includes(day)}
            change={(on) => change(day, on)}
          />
        ))}
      </Choices>
      <p>{countWords(count, practice.until, deck.lessonDay, now)}</p>
      <button type="button" class="button main" disabled={count === 0} onClick={save}>
        Save the calendar file
      </button>
      <p role="status">{said}</p>
    </>
  );
}

/** The first and the last day that may have one: until the day before the lesson, else for a week. */
function spanOf(lessonDay: string | null, time: string, now: number) {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  const isPast = new Date(now).setHours(hours, minutes, 0, 0) <= now;
  const lessonAt = startAhead(lessonDay, now);
  return {
    from: dayAfter(now, isPast ? 1 : 0),
    until: lessonAt === null ? dayAfter(now, 7) : dayAfter(lessonAt, -1),
  };
}

/** What the event says. */
function eventOf({ id, deck }: Lesson, now: number) {
  const items = itemsOfLesson(id);
  const lessonAt = startAhead(deck.lessonDay, now);
  const url = `${base()}#/today`;
  return {
    uid: `${id}@skipwise`,
    summary: `Practise: ${deck.title}`,
    description: `Tap, then practise. Works offline.\n${url}`,
    url,
    minutes: Math.min(8, Math.max(3, minutesADay(items, memory.value.of, now, lessonAt))),
  };
}

function countWords(count: number, until: string, lessonDay: string | null, now: number): string {
  if (count === 0) return 'No such day is left before the lesson.';
  return lessonDay !== null && startAhead(lessonDay, now) !== null
    ? `${counted(count, 'day')} until the lesson on ${dayName(lessonDay, now)}.`
    : `${counted(count, 'day')} until ${dayName(until, now)}.`;
}

function nameOf(weekday: number): string {
  const date = new Date(`${SUNDAY}T00:00Z`);
  date.setUTCDate(date.getUTCDate() + weekday);
  return new Intl.DateTimeFormat('en-GB', { weekday: 'short', timeZone: 'UTC' }).format(date);
}
