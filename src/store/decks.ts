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

/** Keeps a deck put away; one of the same id stays as it is. @throws StoreTrouble */
export async function keepAway(id: string, document: unknown, now: number): Promise<void> {
  await takeDecks([{ id, document, added: now, away: true }]);
}

/** Takes in the decks of a backup that are not here, put away or not as they were. Gives how many were taken. @throws StoreTrouble */
export function takeDecks(decks: readonly StoredDeck[]): Promise<number> {
  return store('readwrite', async (all) => {
    let taken = 0;
    for (const deck of decks) {
      const key = ['deck', deck.id];
      if (await promisifyRequest(all.getKey(key))) continue;
      all.put(deck, key);
      taken++;
    }
    await stored(all);
    return taken;
  });
}

/** Puts a deck out of sight; its history stays. @throws StoreTrouble */
export function putAway(id: string): Promise<void> {
  return setAway(id, true);
}

/** Takes back a deck that was put away. @throws StoreTrouble */
export function takeBack(id: string): Promise<void> {
  return setAway(id, false);
}

/** Deletes a deck; its history stays. The caller has asked twice. @throws StoreTrouble */
export async function deleteDeck(id: string): Promise<void> {
  await store('readwrite', (all) => {
    all.delete(['deck', id]);
    return stored(all);
  });
}

function setAway(id: string, away: boolean): Promise<void> {
  return store('readwrite', async (all) => {
    const deck = await promisifyRequest<StoredDeck | undefined>(all.get(['deck', id]));
    if (deck) all.put({ ...deck, away }, ['deck', id]);
    await stored(all);
  });
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
