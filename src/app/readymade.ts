import { useEffect, useState } from 'preact/hooks';
import type { Deck } from '../decks/deck.ts';

const files = import.meta.glob<unknown>('../../drills/*.json', { import: 'default' });

/** The decks that come with the app, in the order of their files' names. */
async function readymade(): Promise<Deck[]> {
  const { readDeck } = await import('../decks/document.ts');
  const inOrder = Object.keys(files).toSorted();
  const documents = await Promise.all(inOrder.map((file) => files[file]!()));
  return documents.map((document) => {
    const read = readDeck(document);
    if ('fault' in read) throw new Error(read.fault);
    return read.deck;
  });
}

/** The same for a screen: none until they were fetched. */
export function useReadymade(): readonly Deck[] {
  const [decks, setDecks] = useState<readonly Deck[]>([]);
  useEffect(() => void readymade().then(setDecks), []);
  return decks;
}
