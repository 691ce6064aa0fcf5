import { Unbroken } from '../../parts/Written.tsx';
import { useState } from 'preact/hooks';
import type { Mark } from '../../decks/deck.ts';
import type { Item } from '../../practice/item.ts';
import { itemPlace } from '../deckWords.ts';
import { change, draft } from './kept/openDraft.ts';

const WORDS: readonly [Mark, string][] = [
  [1, 'easy'],
  [2, 'rather easy'],
  [3, 'in the middle'],
  [4, 'rather hard'],
  [5, 'hard'],
];

/** How hard the marked items of the lesson are: learned from reports or said by the teacher, who can change them. */
export function MarkChoice({ items }: { items: readonly Item[] }) {
  const { marks } = draft.value;
  const marked = items.filter(({ id }) => marks[id]);
  if (marked.length === 0) return null;
  return (
    <details class="fold">
      <summary>
        {marked.length} {marked.length === 1 ? 'item is' : 'items are'} marked easy or hard
      </summary>
      <MarkList items={marked} />
    </details>
  );
}

/** So many items are listed at once: as many as one scrolls through. */
const LISTED = 20;

/** How hard any item of a drill is, found by its words. */
export function MarkSearch({ items }: { items: readonly Item[] }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>How hard single items are</summary>
      {open && <Search items={items} />}
    </details>
  );
}

function Search({ items }: { items: readonly Item[] }) {
  const [wanted, setWanted] = useState('');
  const words = wanted.replaceAll('-', '–').split(/\s+/).filter(Boolean);
  const found = items.filter((item) => {
    const parts = itemPlace(item).split(/[ ,]+/);
    return words.every((word) => parts.some((part) => part.startsWith(word)));
  });
  return (
    <>
      <p class="soft">Of the new items, easy ones come first and hard ones last.</p>
      <label class="field">
        <span class="label">Find, like ii 5–4</span>
        <input
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          maxLength={60}
          value={wanted}
          onInput={(event) => setWanted(event.currentTarget.value)}
        />
      </label>
      <MarkList items={found.slice(0, LISTED)} />
      <p class="soft" role="status">
        {found.length === 0
          ? 'No item has all these words.'
          : found.length > LISTED &&
            `${LISTED} of ${found.length} are listed: find the others by their words.`}
      </p>
    </>
  );
}

function MarkList({ items }: { items: readonly Item[] }) {
  const { marks } = draft.value;
  const choose = (id: string, mark: number) => change({ marks: { ...marks, [id]: mark as Mark } });
  return (
    <ul class="marks">
      {items.map((item) => (
        <li key={item.id}>
          <label>
            <span>
              <Unbroken text={itemPlace(item)} />
            </span>
            <select
              value={marks[item.id] ?? 3}
              onChange={(event) => choose(item.id, Number(event.currentTarget.value))}
            >
              {WORDS.map(([mark, words]) => (
                <option key={mark} value={mark}>
                  {words}
                </option>
              ))}
            </select>
          </label>
        </li>
      ))}
    </ul>
  );
}
