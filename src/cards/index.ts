import { isPhraseDrill, type Deck, type KindName } from '../decks/deck.ts';
import type { Item } from '../practice/item.ts';
import { parseKey } from '../theory/key.ts';
import { hasSevenNotes } from '../theory/scale.ts';
import type { Kind } from './kind.ts';
import { fill } from './fill/index.ts';
import { follow } from './follow/index.ts';
import { order } from './order/index.ts';
import { outline } from './outline/index.ts';
import { place } from './place/index.ts';
import { spot } from './spot/index.ts';
import { trace } from './trace/index.ts';
import { vary } from './vary/index.ts';

/** Every kind of card; a new kind is a folder here and a line in this list. */
export const KINDS = {
  spot,
  place,
  trace,
  outline,
  follow,
  order,
  vary,
  fill,
} as unknown as Record<KindName, Kind>;

/** Every item that a deck's drills cover, each once; none of drills of chords in a key that stacks no chords. */
export function itemsOf(deck: Deck): Item[] {
  const byId = new Map<string, Item>();
  for (const [number, drill] of deck.drills.entries()) {
    if (!isPhraseDrill(drill) && !hasSevenNotes(deck.key.scale)) continue;
    for (const item of KINDS[drill.kind].items(deck, drill)) {
      if (byId.has(item.id)) continue;
      const mark = deck.marks?.[item.id];
      const { instrument } = deck;
      byId.set(item.id, {
        ...item,
        instrument,
        drill: number,
        ...(mark !== undefined && { mark }),
      });
    }
  }
  return [...byId.values()];
}

/** The item that an id names, or null where no kind knows it. */
export function itemOf(id: string): Item | null {
  const [kind = '', keyText = ''] = id.split(':');
  const key = parseKey(keyText);
  if (!key || !hasSevenNotes(key.scale)) return null;
  return Object.hasOwn(KINDS, kind) ? KINDS[kind as KindName].item(id) : null;
}
