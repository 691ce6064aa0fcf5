import { createStore, type UseStore } from 'idb-keyval';
import { StoreTrouble } from './trouble.ts';

let base: UseStore | null = null;

/**
 * The one database on the device, opened on first use. Its keys: `device`; `['log', device, chunk]`; `['deck', id]`;
 * `['report', sender, deck]`; `['draft', id]`; `['minute', lesson, at]`; `current`, `open draft`, `settings`, `round`, `questions`, `timings`.
 *
 * A write that has resolved survives a battery dying in that moment: strict durability costs a few ms more than
 * relaxed, well inside the half second before a verdict.
 *
 * Where `run` throws, nothing of what it wrote is kept.
 *
 * @throws StoreTrouble where the browser refuses or the device is full
 */
export const store: UseStore = async (mode, run) => {
  try {
    base ??= createStore('skipwise', 'everything');
    const database = await base('readonly', (all) => all.transaction.db);
    const transaction = database.transaction('everything', mode, { durability: 'strict' });
    try {
      return await run(transaction.objectStore('everything'));
    } catch (error) {
      undo(transaction);
      throw error;
    }
  } catch (error) {
    throw new StoreTrouble(error);
  }
};

function undo(transaction: IDBTransaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already: the browser itself undid it, or there was nothing to undo.
  }
}

/** Resolves once all that a transaction writes is on the device. */
export function stored({ transaction }: IDBObjectStore): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    transaction.addEventListener('abort', () => reject(transaction.error));
  });
}

/** All keys that begin so, in their order. */
export function under(...first: IDBValidKey[]): IDBKeyRange {
  return IDBKeyRange.bound(first, [...first, []]);
}

/** 64 random bits in the letters and figures of base 36. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint32Array(2))].map((bits) => bits.toString(36)).join('');
}
