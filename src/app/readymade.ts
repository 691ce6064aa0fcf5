import { KINDS } from '../cards/index.ts';
import { deckId, readDeck, writeDeck } from '../decks/document.ts';
import type { WrittenDeck } from './state.ts';

/** A deck that comes with the app. */
export interface Readymade extends WrittenDeck {
  /** What it asks; no string set, `5–4`, is broken after its dash. */
  readonly words: string;
}

const files = import.meta.glob<unknown>('../../drills/*.json', { eager: true, import: 'default' });

/**
 * The decks that come with the app, in the order of their files' names. Read and checked once, as the page is built:
 * what the page gets of this file is what it exports (`host/evaluated.ts`).
 */
export const READYMADE: readonly Readymade[] = Object.keys(files)
  .toSorted()
  .map((file) => {
    const read = readDeck(files[file]);
    if ('fault' in read) throw new Error(`${file}: ${read.fault}`);
    const { deck } = read;
    const words = deck.drills.map((drill) => KINDS[drill.kind].words.drill(drill)).join('; ');
    return {
      id: deckId(deck),
      deck,
      document: writeDeck(deck),
      words: words.replaceAll('–', '–\u2060'),
    };
  });
