import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';
import { Silence, StoreTrouble } from './trouble.ts';

let base: UseStore | null = null;

/** How long the device may take until it answers, until it has finished a write, and until it is asked again after it did not, ms. */
const PATIENCE = { answer: 4000, finish: 10_000, rest: 10_000 };

let silentSince = -Infinity;

/**
 * The one database on the device, opened on first use. Its keys: `device`; `['log', device, chunk]`; `['deck', id]`;
 * `['report', sender, deck]`, with a number behind for one beside another; `['draft', id]`; `['minute', lesson, at]`;
 * `current`, `open draft`, `settings`, `round`, `questions`, `timings`.
 *
 * A write that has resolved survives a battery dying in that moment: strict durability costs a few ms more than
 * relaxed, well inside the half second before a verdict.
 *
 * Where `run` throws, nothing of what it wrote is kept. A store that does not answer is not waited for: whoever asks is
 * told so after a few seconds, and then at once for a while.
 *
 * @throws StoreTrouble where the browser refuses, the device is full, or the store does not answer
 */
export const store: UseStore = async (mode, run) => {
  try {
    if (performance.now() - silentSince < PATIENCE.rest) throw new Silence();
    const all = await within(PATIENCE.answer, begun(mode));
    try {
      return await run(all);
    } catch (error) {
      undo(all.transaction);
      throw error;
    }
  } catch (error) {
    throw new StoreTrouble(error);
  }
};

/** A transaction in which the store has answered. */
async function begun(mode: IDBTransactionMode): Promise<IDBObjectStore> {
  base ??= createStore('skipwise', 'everything');
  const database = await base('readonly', (all) => all.transaction.db);
  const transaction = database.transaction('everything', mode, { durability: 'strict' });
  const all = transaction.objectStore('everything');
  await promisifyRequest(all.getKey('device'));
  return all;
}

/** What comes of it within so many ms in which the page is awake. @throws Silence */
function within<T>(ms: number, coming: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    let timer: ReturnType<typeof setTimeout>;
    const wait = () => {
      const due = performance.now() + ms;
      timer = setTimeout(() => {
        // A phone that slept wakes with all that was due at once: the store gets its time anew.
        if (performance.now() > due + ASLEEP) return wait();
        silentSince = performance.now();
        // The next to ask opens it anew.
        base = null;
        reject(new Silence());
      }, ms);
    };
    wait();
    coming.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/** So late no timer comes unless the page slept, ms. */
const ASLEEP = 2000;

function undo(transaction: IDBTransaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already: the browser itself undid it, or there was nothing to undo.
  }
}

/** Resolves once all that a transaction writes is on the device. */
export function stored({ transaction }: IDBObjectStore): Promise<void> {
  const done = new Promise<void>((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    transaction.addEventListener('abort', () => reject(transaction.error));
  });
  return within(PATIENCE.finish, done);
}

/** All keys that begin so, in their order. */
export function under(...first: IDBValidKey[]): IDBKeyRange {
  return IDBKeyRange.bound(first, [...first, []]);
}
