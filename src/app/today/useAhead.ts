import { useEffect, useState } from 'preact/hooks';
import { DAY, localDay } from '../../memory/day.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { askable } from '../round/askable.ts';
import { itemsOfLesson, memory, type Lesson } from '../state.ts';

/** What will be known with practice. */
interface Ahead {
  /** A share of 1, and when, ms. */
  readonly known: number;
  readonly at: number;
  /** How many rounds that takes. */
  readonly rounds: number;
}

interface Wanted {
  lesson: Lesson;
  now: number;
  lessonAt: number | null;
  minutes: number;
}

/** Nobody knows how the days after so many will be practised. */
const FARTHEST = 14 * DAY;

/** What was reckoned since the page was opened. */
const reckoned = new Map<string, Ahead>();

/** What is known by the lesson if a round is practised on every day before it; null until that is reckoned, and where none is left. */
export function useAhead({ lesson, now, lessonAt, minutes }: Wanted): Ahead | null {
  const offset = -new Date(now).getTimezoneOffset();
  const today = localDay(now, offset);
  const { of } = memory.value;
  const may = askable(lesson.id);
  const name = `${lesson.id} ${of.asked} ${today} ${minutes} ${may.length}`;
  const [, setReady] = useState('');
  useEffect(() => {
    if (reckoned.has(name)) return;
    const isNear = lessonAt !== null && lessonAt - now <= FARTHEST;
    const at = Math.max(isNear ? lessonAt : now + 7 * DAY, tomorrowOf(now));
    const sittings = sittingsUntil(at, of.days.has(today) ? now + DAY : now);
    if (sittings.length === 0) return;
    const round = { goal: { minutes }, lesson: lessonAt };
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isLeft = false;
    void import('../../practice/ahead.ts').then(({ knownAfter }) => {
      const plan = { askable: may, sittings, round, offset };
      const playing = knownAfter(itemsOfLesson(lesson.id), of, plan, at);
      // A round at a time, so that the screen answers meanwhile.
      const play = () => {
        if (isLeft) return;
        const { done, value } = playing.next();
        if (!done) {
          timer = setTimeout(play);
          return;
        }
        reckoned.set(name, { known: value, at, rounds: sittings.length });
        setReady(name);
      };
      play();
    });
    return () => {
      isLeft = true;
      clearTimeout(timer);
    };
  }, [name]);
  return reckoned.get(name) ?? null;
}

/** One each day before a time, from a first one on, ms. */
function sittingsUntil(end: number, first: number): number[] {
  const count = Math.max(0, Math.ceil((end - first) / DAY));
  return Array.from({ length: count }, (_, day) => first + day * DAY);
}
