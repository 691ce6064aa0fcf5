import { promisifyRequest } from 'idb-keyval';
import { store, stored, under } from './device.ts';
import { load, save } from './single.ts';

/** A deck on the device. Its document is kept as it came: what is in it is not this room's business. */
export interface StoredDeck {
  readonly id: string;
  /** JSON. */
  readonly document: unknown;
  /** When it came, ms. */
  readonly added: number;
  /** Put away: out of sight, its history untouched. */
  readonly away: boolean;
}

/** All decks on the device, the newest first, whatever lies there. @throws StoreTrouble */
export async function listDecks(): Promise<StoredDeck[]> {
  const [keys, values] = await store('readonly', (all) =>
    Promise.all([
      promisifyRequest(all.getAllKeys(under('deck'))) as Promise<IDBValidKey[][]>,
      promisifyRequest<unknown[]>(all.getAll(under('deck'))),
    ]),
  );
  const decks = values.map((value, k) => {
    const { document, added, away } = (value ?? {}) as Partial<StoredDeck>;
    return { id: String(keys[k]![1]), document, added: Number(added) || 0, away: away === true };
  });
  return decks.toSorted((a, b) => b.added - a.added);
}

/** Keeps a deck; one of the same id is replaced, and is no longer put away. @throws StoreTrouble */
export async function keepDeck(id: string, document: unknown, now: number): Promise<StoredDeck> {
  const deck = { id, document, added: now, away: false };
  await store('readwrite', (all) => {
    all.put(deck, ['deck', id]);
    return stored(all);
  });
  return deck;
}

/** The id of the deck in use, or null. @throws StoreTrouble */
export async function currentDeck(): Promise<string | null> {
  const id = await load('current');
  return typeof id === 'string' ? id : null;
}

/** Makes a deck the one in use. @throws StoreTrouble */
export function makeCurrent(id: string): Promise<void> {
  return save('current', id);
}
