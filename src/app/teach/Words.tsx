import { MOST } from '../../decks/deck.ts';
import { usualTitle } from '../../making/draft.ts';
import { dayAfter } from '../days.ts';
import { change, draft } from './kept/form.ts';

/** What the lesson says: its title, a note, the day of the next one. */
export function Words() {
  const { key, title, note, lessonDay } = draft.value;
  return (
    <>
      <label class="field">
        <span class="label">Title</span>
        <input
          type="text"
          maxLength={MOST.title}
          value={title}
          placeholder={usualTitle(key)}
          onInput={(event) => change({ title: plain(event.currentTarget.value) })}
        />
      </label>
      <label class="field">
        <span class="label">A note to the student</span>
        <textarea
          maxLength={MOST.note}
          rows={2}
          // The browser itself brings only the line that is written in into sight.
          onFocus={(event) => event.currentTarget.scrollIntoView({ block: 'nearest' })}
          value={note}
          onInput={(event) => change({ note: plain(event.currentTarget.value) })}
        />
      </label>
      <label class="field">
        <span class="label">Next lesson</span>
        <input
          type="date"
          min={dayAfter(Date.now(), 0)}
          max="9999-12-31"
          value={lessonDay ?? ''}
          onInput={({ currentTarget: { value } }) => change({ lessonDay: dayOf(value) })}
        />
      </label>
      {lessonDay && lessonDay < dayAfter(Date.now(), 0) && (
        <p class="notice" role="status">
          That day is past: choose another, or none.
        </p>
      )}
    </>
  );
}

/** The day chosen; null where there is none, or its year has five digits. */
const dayOf = (value: string) => (/^\d{4}-\d\d-\d\d$/.test(value) ? value : null);

/** What a keyboard or a paste may bring in that no lesson carries. */
export const plain = (text: string) => text.replaceAll(/(?!\n)[\p{Cc}\p{Cs}]/gu, ' ');
