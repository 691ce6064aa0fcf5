import { isTimeDrill, type Deck, type Drill } from './deck.ts';
import { KIND_NAMES, sinceOf } from './kinds.ts';

/** The version of the deck document in which a drill first says which shapes it asks for. */
export const SHAPES_SINCE = 4;

/** That which first had the rhythm of a phrase among the figures. */
export const PHRASE_SINCE = 3;

/** The newest version of the document that this program reads: it writes the first that has all of a deck. */
export const DOCUMENT_VERSION = Math.max(PHRASE_SINCE, SHAPES_SINCE, ...KIND_NAMES.map(sinceOf));

/** The first version of the document that has all that a deck asks for: an older program says that it needs a newer one. */
export function versionOf({ drills }: Pick<Deck, 'drills'>): number {
  return Math.max(1, ...drills.map(drillSince));
}

function drillSince(drill: Drill): number {
  const words = [
    'shapes' in drill ? SHAPES_SINCE : 1,
    isTimeDrill(drill) && drill.figures.includes('phrase') ? PHRASE_SINCE : 1,
  ];
  return Math.max(sinceOf(drill.kind), ...words);
}
