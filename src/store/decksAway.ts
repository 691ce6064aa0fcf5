import { promisifyRequest } from 'idb-keyval';
import { store, stored } from './device.ts';
import type { StoredDeck } from './decks.ts';

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
