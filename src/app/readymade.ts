import type { Deck } from '../decks/deck.ts';

const files = import.meta.glob<unknown>('../../drills/*.json', { import: 'default' });

/** The decks that come with the app, in the order of their titles. */
export async function readymade(): Promise<Deck[]> {
  const { readDeck } = await import('../decks/document.ts');
  const documents = await Promise.all(Object.values(files).map((load) => load()));
  return documents
    .map((document) => {
      const read = readDeck(document);
      if ('fault' in read) throw new Error(read.fault);
      return read.deck;
    })
    .toSorted((a, b) => a.title.localeCompare(b.title));
}
