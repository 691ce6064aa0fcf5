import { isPhraseDrill, isTimeDrill, type Deck, type Drill } from '../decks/deck.ts';
import type { KindName } from '../decks/kinds.ts';
import type { Item } from '../practice/item.ts';
import { finished, type Incremental } from '../theory/incremental.ts';
import { hasSevenNotes } from '../theory/scale.ts';
import * as first from './first.ts';
import type { Kind } from './kind.ts';

/** Every kind of card by its name. */
export type Kinds = { readonly [K in KindName]: Kind & { readonly name: K } };

/** The kinds of card that are here: all of them where `index.ts` was imported; they come once the first card is shown. */
export const KINDS = { ...first } as Partial<Record<KindName, unknown>> as Kinds;

/** Whether as much of a kind is here as its items take, and its words. */
export function isCounted(kind: KindName): boolean {
  return kind in KINDS;
}

/** Whether all of a kind is here, so that its cards can be drawn. */
export function isHere(kind: KindName): boolean {
  return KINDS[kind]?.ask !== undefined;
}

/** Reckons beforehand, with pauses, what items of phrases take long for. */
type Prepare = (deck: Deck, drill: Drill) => Incremental<void>;
let prepare: Prepare | undefined;

/** Adds what came, and what all kinds that are drilled from phrases share. */
export function bring(kinds: Kinds, ofPhrases: Prepare): void {
  Object.assign(KINDS, kinds);
  prepare = ofPhrases;
}

/** Whether a kind of card is asked only with the guitar in hand. */
export function wantsGuitar(kind: KindName): boolean {
  return KINDS[kind].needs.includes('guitar');
}

/** Every item that a deck's drills cover, each once; none of drills of chords in a key that stacks no chords. */
export function itemsOf(deck: Deck): Item[] {
  return finished(itemsByStep(deck));
}

/** The same with pauses, none of them long apart: of a long lesson it takes a while. */
export function* itemsByStep(deck: Deck): Incremental<Item[]> {
  const byId = new Map<string, Item>();
  for (const [number, drill] of deck.drills.entries()) {
    if (stacksChords(drill) && !hasSevenNotes(deck.key.scale)) continue;
    const kind = KINDS[drill.kind];
    for (const part of inParts(drill, deck)) {
      if (prepare) yield* prepare(deck, part);
      for (const item of kind.items(deck, part)) {
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
      yield;
    }
  }
  return [...byId.values()];
}

/** A drill as several, each of one phrase, or of one degree and size, whose items are in the same order. */
function inParts(drill: Drill, { phrases: { length } }: Deck): Drill[] {
  if (isTimeDrill(drill)) return [drill];
  if (isPhraseDrill(drill)) {
    const { phrases = Array.from({ length }, (_, i) => i + 1) } = drill;
    return phrases.map((number) => ({ ...drill, phrases: [number] }));
  }
  return drill.sizes.flatMap((size) =>
    drill.degrees.map((degree) => ({ ...drill, sizes: [size], degrees: [degree] })),
  );
}

function stacksChords(drill: Drill): boolean {
  return !isPhraseDrill(drill) && !isTimeDrill(drill);
}
