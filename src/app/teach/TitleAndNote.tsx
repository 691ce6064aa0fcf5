import { useState } from 'preact/hooks';
import { MOST } from '../../decks/deck.ts';
import { Written } from '../../parts/Written.tsx';
import { titleOf, usualTitle } from '../../making/draft.ts';
import { change, draft } from './kept/openDraft.ts';

/** What the lesson says: its title and a note. */
export function TitleAndNote() {
  const { key, title, note } = draft.value;
  const [open, setOpen] = useState(false);
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Title and note · <Written text={titleOf(draft.value)} />
      </summary>
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
    </details>
  );
}

/** What a keyboard or a paste may bring in that no lesson carries. */
export const plain = (text: string) => text.replaceAll(/(?!\n)[\p{Cc}\p{Cs}]/gu, ' ');
