/** Lessons on the device: in which order they come, and what becomes of one that is put away. */
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { beforeEach, expect, it, vi } from 'vitest';

let decks: typeof import('../../src/store/decks.ts') &
  typeof import('../../src/store/decksAway.ts');
beforeEach(async () => {
  vi.resetModules();
  Object.assign(globalThis, { indexedDB: new IDBFactory(), IDBKeyRange });
  decks = {
    ...(await import('../../src/store/decks.ts')),
    ...(await import('../../src/store/decksAway.ts')),
  };
});

const ids = async () => (await decks.listDecks()).map(({ id, away }) => (away ? `(${id})` : id));

it('the one that came last comes first, whatever it is called', async () => {
  await decks.keepDeck('b', { title: 'one' }, 5);
  await decks.keepDeck('c', {}, 9);
  await decks.keepDeck('a', {}, 7);
  expect(await ids()).toEqual(['c', 'a', 'b']);
  // Opened again it is the last that came.
  await decks.keepDeck('b', { title: 'one' }, 11);
  expect(await ids()).toEqual(['b', 'c', 'a']);
  expect((await decks.listDecks())[0]).toEqual({
    id: 'b',
    document: { title: 'one' },
    added: 11,
    away: false,
  });
});

it('one that is put away stays, comes back, and is deleted only by its name', async () => {
  await decks.keepDeck('a', {}, 1);
  await decks.keepDeck('b', {}, 2);
  await decks.putAway('a');
  expect(await ids()).toEqual(['b', '(a)']);
  await decks.takeBack('a');
  expect(await ids()).toEqual(['b', 'a']);
  await decks.putAway('none');
  await decks.deleteDeck('b');
  expect(await ids()).toEqual(['a']);
});

it('what a backup brings does not take the place of what is here', async () => {
  await decks.keepDeck('a', { here: true }, 3);
  const brought = ['a', 'b'].map((id) => ({ id, document: {}, added: 9, away: true }));
  expect(await decks.takeDecks(brought)).toBe(1);
  expect(await ids()).toEqual(['(b)', 'a']);
  await decks.keepAway('c', {}, 1);
  expect(await ids()).toEqual(['(b)', 'a', '(c)']);
});

it('the one that is open is remembered', async () => {
  expect(await decks.currentDeck()).toBeNull();
  await decks.makeCurrent('b');
  expect(await decks.currentDeck()).toBe('b');
});
