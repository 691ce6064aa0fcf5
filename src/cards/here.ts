import { isPhraseDrill, isTimeDrill, type Deck, type Drill } from '../decks/deck.ts';
import type { KindName } from '../decks/kinds.ts';
import type { Item } from '../practice/item.ts';
import { hasSevenNotes } from '../theory/scale.ts';
import type { Kind } from './kind.ts';
import { place } from './place/index.ts';
import { spot } from './spot/index.ts';
import { rules as trace } from './trace/rules.ts';

/** Every kind of card by its name. */
export type Kinds = { readonly [K in KindName]: Kind & { readonly name: K } };

/**
 * The kinds of card that are here: all of them where `index.ts` was imported. The page begins with two for the eye, and
 * with as much of a third as a plain lesson is counted and told of by; all others come once the first card is shown.
 */
export const KINDS = { spot, place, trace } as Partial<Record<KindName, unknown>> as Kinds;

/** Whether as much of a kind is here as its items take, and its words. */
export function isCounted(kind: KindName): boolean {
  return kind in KINDS;
}

/** Whether all of a kind is here, so that its cards can be drawn. */
export function isHere(kind: KindName): boolean {
  return KINDS[kind]?.ask !== undefined;
}

/** Adds what came. */
export function bring(kinds: Kinds): void {
  Object.assign(KINDS, kinds);
}

/** Whether a kind of card is asked only with the guitar in hand. */
export function wantsGuitar(kind: KindName): boolean {
  return KINDS[kind].needs.includes('guitar');
}

/** Every item that a deck's drills cover, each once; none of drills of chords in a key that stacks no chords. */
export function itemsOf(deck: Deck): Item[] {
  const byId = new Map<string, Item>();
  for (const [number, drill] of deck.drills.entries()) {
    if (stacksChords(drill) && !hasSevenNotes(deck.key.scale)) continue;
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

function stacksChords(drill: Drill): boolean {
  return !isPhraseDrill(drill) && !isTimeDrill(drill);
}
