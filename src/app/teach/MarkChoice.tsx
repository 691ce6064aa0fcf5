import type { Mark } from '../../decks/deck.ts';
import type { Item } from '../../practice/item.ts';
import { itemPlace } from '../deckWords.ts';
import { change, draft } from './draft.ts';

const WORDS: readonly [Mark, string][] = [
  [1, 'easy'],
  [2, 'rather easy'],
  [3, 'in the middle'],
  [4, 'rather hard'],
  [5, 'hard'],
];

/** How hard single items are: learned from reports, and for the teacher to change.  */
export function MarkChoice({ items }: { items: readonly Item[] }) {
  const { marks } = draft.value;
  const marked = items.filter(({ id }) => marks[id]);
  if (marked.length === 0) return null;
  const choose = (id: string, mark: number) => change({ marks: { ...marks, [id]: mark as Mark } });
  return (
    <details class="marks">
      <summary>
        {marked.length} {marked.length === 1 ? 'item is' : 'items are'} marked easy or hard, from
        reports
      </summary>
      <ul>
        {marked.map((item) => (
          <li key={item.id}>
            <label>
              <span>{itemPlace(item)}</span>
              <select
                value={marks[item.id]}
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
    </details>
  );
}
