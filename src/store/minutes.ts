import { promisifyRequest } from 'idb-keyval';
import { store, stored, under } from './device.ts';

/** A free minute on the device. What its document holds is for the app to say. */
export interface StoredMinute {
  /** The lesson's id. */
  readonly lesson: string;
  /** When it was over, ms. */
  readonly at: number;
  /** JSON. */
  readonly document: unknown;
}

/** All of them, the oldest first. @throws StoreTrouble */
export async function listMinutes(): Promise<StoredMinute[]> {
  const all = await store('readonly', (one) =>
    promisifyRequest<StoredMinute[]>(one.getAll(under('minute'))),
  );
  return all.toSorted((a, b) => a.at - b.at);
}

/** Keeps a minute, in place of what it was before. @throws StoreTrouble */
export function keepMinute(minute: StoredMinute): Promise<void> {
  return store('readwrite', (all) => {
    all.put(minute, keyOf(minute));
    return stored(all);
  });
}

/** Takes a minute off the device. @throws StoreTrouble */
export function removeMinute(minute: Pick<StoredMinute, 'lesson' | 'at'>): Promise<void> {
  return store('readwrite', (all) => {
    all.delete(keyOf(minute));
    return stored(all);
  });
}

/** Takes in minutes of a backup that are not here. Gives how many were taken. @throws StoreTrouble */
export function takeMinutes(minutes: readonly StoredMinute[]): Promise<number> {
  return store('readwrite', async (all) => {
    let taken = 0;
    for (const minute of minutes) {
      const key = keyOf(minute);
      if ((await promisifyRequest(all.count(key))) > 0) continue;
      all.put(minute, key);
      taken++;
    }
    await stored(all);
    return taken;
  });
}

function keyOf({ lesson, at }: Pick<StoredMinute, 'lesson' | 'at'>): IDBValidKey {
  return ['minute', lesson, at];
}
