import { promisifyRequest } from 'idb-keyval';
import { store, stored, under } from './device.ts';
import { load, save } from './single.ts';

/** A lesson that a teacher makes on this device, finished or not. Its document is kept as it came, as a deck's is. */
export interface StoredDraft {
  /** Drawn once. */
  readonly id: string;
  /** JSON. */
  readonly document: unknown;
  /** When it was changed last, ms. */
  readonly changed: number;
  /** Put away: out of sight, and nothing else. */
  readonly away: boolean;
  /** The decks that were made of it, by their ids, and when each was shared, ms; the last one last. */
  readonly shared: readonly Shared[];
}

export interface Shared {
  readonly deck: string;
  readonly at: number;
}

/** All of them, the one changed last first. @throws StoreTrouble */
export async function listDrafts(): Promise<StoredDraft[]> {
  const drafts = await store('readonly', (all) =>
    promisifyRequest<StoredDraft[]>(all.getAll(under('draft'))),
  );
  return drafts.toSorted((a, b) => b.changed - a.changed);
}

const channel =
  typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('skipwise drafts');

/** Calls back when another tab has changed a draft that is kept here. Returns what ends that. */
export function watchDrafts(news: () => void): () => void {
  channel?.addEventListener('message', news);
  return () => channel?.removeEventListener('message', news);
}

/** Keeps a draft as it is now. @throws StoreTrouble */
export async function keepDraft(draft: StoredDraft): Promise<void> {
  await store('readwrite', (all) => {
    all.put(draft, ['draft', draft.id]);
    return stored(all);
  });
  channel?.postMessage(draft.id);
}

/**
 * Takes in drafts of a backup: those that are not here, or are here as they were before. Gives how many were taken.
 *
 * @throws StoreTrouble
 */
export async function takeDrafts(drafts: readonly StoredDraft[]): Promise<number> {
  const taken = await store('readwrite', async (all) => {
    let count = 0;
    for (const draft of drafts) {
      const key = ['draft', draft.id];
      const here = await promisifyRequest<StoredDraft | undefined>(all.get(key));
      if (here && here.changed >= draft.changed) continue;
      all.put(draft, key);
      count++;
    }
    await stored(all);
    return count;
  });
  if (taken > 0) channel?.postMessage('backup');
  return taken;
}

/** The id of the draft that is open, or null. @throws StoreTrouble */
export async function openDraft(): Promise<string | null> {
  const id = await load('open draft');
  return typeof id === 'string' ? id : null;
}

/** Makes a draft the one that is open; null where none of those kept is. @throws StoreTrouble */
export function makeOpen(id: string | null): Promise<void> {
  return save('open draft', id);
}
