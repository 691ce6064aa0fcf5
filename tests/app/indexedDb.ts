/** What fake-indexeddb says less of than it has: its classes, to have them fail. */
import * as fake from 'fake-indexeddb';

interface Class<Method extends string> {
  readonly prototype: Record<Method, (...of: unknown[]) => unknown>;
}

export const FDBObjectStore = fake.IDBObjectStore as unknown as Class<'put'>;
export const FDBDatabase = fake.IDBDatabase as unknown as Class<'transaction'>;
