import { itemOf } from '../../cards/index.ts';
import { readId } from '../../decks/readId.ts';
import { instrumentId } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { keyName } from '../../theory/key.ts';
import { parentKey } from '../../theory/scale.ts';
import { itemsOfLesson, memory, type Lesson } from '../state.ts';

/** What the screen is about: the lesson's deck, or everything asked in its key on its instrument. */
export type Scope = 'lesson' | 'key';

/** The items in it. */
export function itemsIn(scope: Scope, { id, deck }: Lesson): readonly Item[] {
  if (scope === 'lesson') return itemsOfLesson(id);
  const [key, instrument] = [keyName(parentKey(deck.key)), instrumentId(deck.instrument)];
  return [...memory.value.of.items.keys()].flatMap((asked) => {
    const head = readId(asked)?.head;
    const inScope =
      head && keyName(head.key) === key && instrumentId(head.instrument) === instrument;
    return (inScope && itemOf(asked)) || [];
  });
}
