import { replay } from '../../memory/memory.ts';
import { readBackup, writeBackup } from '../../store/backup.ts';
import { keepDeck, listDecks } from '../../store/decks.ts';
import { log, memory, readLessons, tell } from '../state.ts';

/** The whole log and the lessons as a file's text. */
export async function backupText(now: number): Promise<string> {
  const { reviews, aside } = log.value!;
  const decks = (await tell(listDecks())) ?? [];
  return writeBackup({ reviews, aside, decks }, now);
}

/**
 * Takes in a file: reviews as a union with those that are here, lessons that are not here yet. Tells how many reviews
 * were new.
 * @throws BackupFault, and then nothing has changed
 */
export async function takeBackup(text: string): Promise<number> {
  const backup = readBackup(text);
  const added = (await tell(log.value!.merge(backup))) ?? 0;
  memory.value = { of: replay(log.value!.reviews) };
  const here = new Set(((await tell(listDecks())) ?? []).map(({ id }) => id));
  for (const { id, document, added: since } of backup.decks) {
    if (!here.has(id)) await tell(keepDeck(id, document, since));
  }
  await readLessons();
  return added;
}

/** Erases everything on this device and begins anew. The student has been asked twice. */
export async function eraseAll(): Promise<void> {
  await tell(log.value!.erase());
  location.hash = '';
  location.reload();
}
