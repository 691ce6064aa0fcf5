import { promisifyRequest } from 'idb-keyval';
import { store, stored } from './device.ts';

/** Whether the device was ever given an id, or does not say: where not, there is no log on it. */
export function isUsed(): Promise<boolean> {
  return load('device').then(
    (id) => id !== null,
    () => true,
  );
}

/** A single JSON document that the device keeps. */
type Name = 'device' | 'settings' | 'round' | 'current' | 'questions' | 'timings' | 'open draft';

/** What was kept last, as it was kept: to be checked by whoever reads it. Null where there is nothing. @throws StoreTrouble */
export async function load(name: Name): Promise<unknown> {
  const found = await store('readonly', (all) => promisifyRequest<unknown>(all.get(name)));
  return found ?? null;
}

/**
 * Changes it by what it was, in one step, for another window may have changed it too. Gives what it is now.
 *
 * @throws StoreTrouble
 */
export function changeStored<T>(name: Name, by: (before: unknown) => T): Promise<T> {
  return store('readwrite', async (all) => {
    const after = by((await promisifyRequest<unknown>(all.get(name))) ?? null);
    all.put(after, name);
    await stored(all);
    return after;
  });
}

/** Replaces it; resolves once it is on the device. @throws StoreTrouble */
export function save(name: Name, document: unknown): Promise<void> {
  return store('readwrite', (all) => {
    all.put(document, name);
    return stored(all);
  });
}
