import { dayName } from '../days.ts';
import { dayAfter } from '../tomorrow.ts';
import { change, draft } from './kept/openDraft.ts';

/** Lessons mostly come again in a week or two. */
const WEEKS = [7, 14] as const;

/** The day of the next lesson: in a tap, or any day at all. */
export function LessonDay() {
  const { lessonDay } = draft.value;
  const now = Date.now();
  return (
    <>
      <div class="groups">
        {WEEKS.map((days) => {
          const day = dayAfter(now, days);
          return (
            <button
              key={days}
              type="button"
              class="button small"
              aria-pressed={lessonDay === day}
              onClick={() => change({ lessonDay: day })}
            >
              in {days} days
            </button>
          );
        })}
        <button
          type="button"
          class="button small"
          aria-pressed={lessonDay === null}
          onClick={() => change({ lessonDay: null })}
        >
          not set
        </button>
      </div>
      <label class="field">
        <span class="label">Next lesson{lessonDay && ` · ${dayName(lessonDay, now)}`}</span>
        <input
          type="date"
          min={dayAfter(now, 0)}
          max="9999-12-31"
          value={lessonDay ?? ''}
          onInput={({ currentTarget: { value } }) => change({ lessonDay: dayOf(value) })}
        />
      </label>
    </>
  );
}

/** The day chosen; null where there is none, or its year has five digits. */
const dayOf = (value: string) => (/^\d{4}-\d\d-\d\d$/.test(value) ? value : null);
